/** Why the curve is as it is, and what is read from it. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Preview, Problem, Progress, Readings } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { Told } from "../../parts/told.tsx";
import { troubleOf, watch } from "../../server/client.ts";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { force, percent, ratio, travel, work } from "../../units.ts";
import { words } from "../../words.ts";
import { CurveTable } from "./curve.tsx";

export function WhyPane({ bench }: { bench: Bench }) {
  const shown = bench.shown.value;
  const frame = bench.frame.value;
  const structure = bench.settled.value?.structure;
  if (!shown) return null;
  const lifting = shown.readings.find((r) => r.phase === "lifting") ?? shown.readings[0];
  return (
    <div class="pane-body prose">
      {shown.words.slice(1).map((w) => (
        <p key={w}>{w}</p>
      ))}
      {frame && (frame.because || frame.gap) && (
        <>
          <h2>{words.why.here}</h2>
          <p>{frame.because || frame.gap}</p>
        </>
      )}
      {frame && frame.shares.length > 1 && <Shares bench={bench} />}
      {lifting && <ReadingList readings={lifting} side={shown.side} />}
      <Thorough bench={bench} />
      <CurveTable bench={bench} />
      {structure && (
        <>
          <Told title={words.why.understood} lines={structure.understood} />
          <Told title={words.why.assumed} lines={structure.assumed} />
          <Told title={words.why.missing} lines={structure.missing} />
        </>
      )}
      <section class="care">
        <h2>{words.why.care}</h2>
        <ul>
          {shown.cautions.map((c) => (
            <li key={c}>{c}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** Shares sets beside each other what each source asks of the contact here. */
function Shares({ bench }: { bench: Bench }) {
  const shares = bench.frame.value!.shares;
  const most = Math.max(...shares.map((s) => Math.abs(s.force)), 1e-9);
  return (
    <>
      <h2>{words.why.shares}</h2>
      <ul class="shares">
        {shares.map((s) => (
          <li key={s.name}>
            <span>{s.name}</span>
            <meter min={0} max={1} value={Math.abs(s.force) / most} aria-label={s.name} />
            <span class="number">{force(units.value, s.force)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

function ReadingList({ readings: r, side }: { readings: Readings; side: string }) {
  const u = units.value;
  const n = words.why.names;
  const rows: [string, string][] = [
    [n.peak, `${force(u, r.peak.force)} ${words.why.at(percent(r.peak.share))}`],
    [n.least, `${force(u, r.least.force)} ${words.why.at(percent(r.least.share))}`],
    [n.start, force(u, r.start.force)],
    [n.end, force(u, r.end.force)],
    [n.mean, force(u, r.mean)],
    ...r.thirds.map((t, i): [string, string] => [words.thirds[i]!, `${force(u, t.mean)}, ${percent(t.share)}`]),
    [n.peakToStart, ratio(r.peakToStart)],
    [n.flatness, ratio(r.flatness)],
    [n.travel, travel(u, r.length)],
    [n.work, work(r.workUp)],
  ];
  if (r.liftRatio) rows.push([n.ratio, ratio(r.liftRatio)]);
  if (r.lost > 0.05) rows.push([n.lost, work(r.lost)]);
  return (
    <>
      <h2>{words.why.readings(side)}</h2>
      <dl class="readings">
        {rows.map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** Thorough asks for the sampled band, tells how far it is, and can be stopped. */
function Thorough({ bench }: { bench: Bench }) {
  const progress = useSignal<Progress | null>(null);
  const result = useSignal<Preview | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const stop = useRef<AbortController | null>(null);
  const settled = bench.settled.value;
  useEffect(() => {
    result.value = null; // of a machine that has changed since
    return () => stop.current?.abort();
  }, [settled?.text, bench.choices.value]);
  if (!settled?.band && !result.value) return null;
  const begin = async () => {
    stop.current = new AbortController();
    progress.value = { done: 0, total: 1 };
    trouble.value = null;
    try {
      const question = { sheet: bench.id, look: bench.look(false) };
      result.value = await watch(
        "POST /api/evaluate",
        { in: question, signal: stop.current.signal },
        (p) => (progress.value = p),
      );
    } catch (err) {
      if (!stop.current.signal.aborted) trouble.value = troubleOf(err);
    } finally {
      progress.value = null;
    }
  };
  const p = progress.value;
  return (
    <div class="thorough">
      {p ? (
        <div class="row">
          <progress max={p.total} value={p.done} aria-label={words.why.thorough} />
          <span>{words.why.progress(p.done, p.total)}</span>
          <button type="button" onClick={() => stop.current?.abort()}>
            {words.cancel}
          </button>
        </div>
      ) : (
        !result.value && (
          <>
            <button type="button" onClick={() => void begin()}>
              {words.why.thorough}
            </button>
            <p class="faint small">{words.why.thoroughHint}</p>
          </>
        )
      )}
      {trouble.value && <TroubleNote problem={trouble.value} />}
      {result.value?.band && <Sampled preview={result.value} />}
    </div>
  );
}

function Sampled({ preview }: { preview: Preview }) {
  const u = units.value;
  const { band, words: said } = preview;
  const peak = band!.ranges.peak;
  return (
    <div class="note" role="status">
      <p>{said[0]}</p>
      {peak && <p>{words.why.sampled(force(u, peak.low), force(u, peak.high))}</p>}
      {band!.failed > 0 && <p>{words.why.failed(band!.failed, band!.draws)}</p>}
    </div>
  );
}
