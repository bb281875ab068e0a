/** Builds the program once, unless STEELYARD names one that is built. */

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export default function setup(): (() => void) | undefined {
  if (process.env.STEELYARD) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "steelyard-"));
  process.env.STEELYARD = join(folder, "steelyard");
  execFileSync("go", ["build", "-o", process.env.STEELYARD, "./cmd/steelyard"], { cwd: "..", stdio: "inherit" });
  return () => rmSync(folder, { recursive: true });
}
