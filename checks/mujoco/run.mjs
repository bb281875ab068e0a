// Sweeps one neutral case with MuJoCo: reads the case on standard input and
// writes its results on standard output (both formats are in ../case.go).
import { readFileSync } from 'node:fs';
import load from 'mujoco-js';
import { Sweep } from './sweep.mjs';

// timed sweeps the case and returns its rows and the microseconds each took,
// the model being built beforehand.
function timed(mj, c) {
  const sweep = new Sweep(mj, c);
  const start = performance.now();
  const positions = c.at.map((q) => sweep.position(q));
  const micros = ((performance.now() - start) * 1000) / c.at.length;
  sweep.delete();
  return { micros, positions };
}

try {
  const c = JSON.parse(readFileSync(0, 'utf8'));
  const mj = await load();
  mj.FS.mkdir('/case');
  const runs = Array.from({ length: c.repeat ?? 1 }, () => timed(mj, c));
  const micros = Math.min(...runs.map((r) => r.micros));
  console.log(JSON.stringify({ micros, positions: runs[0].positions }));
} catch (e) {
  console.error(`mujoco: ${e.message ?? e}`);
  process.exit(1);
}
