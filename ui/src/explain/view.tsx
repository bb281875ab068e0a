/**
 * The presentation of one stroke, step by step: figure, caption, and a slider
 * to move the machine. It needs no server, so that it can travel in one file.
 */

import { useEffect, useRef, useState } from "preact/hooks";
import type { Curve, ExplainStep, Explanation, Frame, Preview } from "../api.ts";
import { withBodies } from "../drawing/bodybox.ts";
import { at, ceiling, fitWith, type Laid, numbers, ribbonOf } from "../drawing/ribbon.ts";
import type { Size, View } from "../drawing/view.ts";
import { axesOf, Chart } from "../parts/chart.tsx";
import { Figure } from "../parts/figure/figure.tsx";
import type { Layer, Stage } from "../parts/figure/stage.ts";
import { useSize } from "../parts/size.ts";
import { force, held, mass, percent, type Units } from "../units.ts";
import { words } from "../words.ts";
import { layersFor } from "./show.ts";

const strokeTime = 2600; // ms, in which a step moves through the whole travel
export interface Stroke {
  step: number;
  position: number;
}

/** stageFor lays the preview out in the size at one position of its curve. */
export function stageFor(p: Preview, position: number, size: Size, units: Units): Stage | null {
  if (!p.curve || !p.drawing || !p.frames.length) return null;
  const ribbon = ribbonOf(p.curve, "lifting", p.band);
  const full = ceiling(ribbon);
  const wide = 0.19 * Math.min(size.width, size.height);
  const box = withBodies({ low: p.drawing.low, high: p.drawing.high }, p.frames);
  const view: View = fitWith(box, ribbon, wide, full, size, 26);
  const laid: Laid = { ribbon, view, perNewton: wide / full, full };
  return { drawing: p.drawing, frame: frameAt(p.frames, position), laid, view, size, units };
}

const frameAt = (frames: readonly Frame[], position: number): Frame =>
  frames.reduce((best, f) => (Math.abs(f.position - position) < Math.abs(best.position - position) ? f : best));

/** bodyOf returns the person in the stage's pose, if there is one, as the figure wants them. */
export const bodyOf = (s: Stage) => (s.frame.body ? { body: { shape: s.frame.body, stale: false } } : {});

export function ExplainView({ explanation, units }: { explanation: Explanation; units: Units }) {
  const { steps, preview } = explanation;
  const [now, setNow] = useState<Stroke>({ step: 0, position: steps[0]?.position ?? 0 });
  const step = steps[now.step];
  const stop = useMovement(step, now.step, (position) => setNow((n) => ({ ...n, position })));
  if (!step || !preview.curve) return null;
  const to = (i: number) => setNow({ step: i, position: steps[i]!.position });
  const move = (position: number) => {
    stop(); // the hand goes before
    setNow((n) => ({ ...n, position }));
  };
  return (
    <div class="explain-view">
      <FigureBox preview={preview} position={now.position} show={layersFor(step)} units={units} />
      <Scrubber curve={preview.curve} side={preview.side} position={now.position} move={move} units={units} />
      <div class="explain-words">
        <Caption step={step} at={now.step} of={steps.length} to={to} />
        {step.show.includes("curve") && (
          <CurveBox preview={preview} position={now.position} move={move} units={units} />
        )}
      </div>
    </div>
  );
}

/**
 * useMovement moves the machine from where the step begins to where it ends,
 * once, unless motion is unwanted, and returns how to stop it.
 */
function useMovement(step: ExplainStep | undefined, key: number, move: (position: number) => void): () => void {
  const frame = useRef(0);
  const stop = () => cancelAnimationFrame(frame.current);
  useEffect(() => {
    if (!step || step.until === step.position || matchMedia("(prefers-reduced-motion: reduce)").matches) return;
    const begun = performance.now();
    const next = (now: number) => {
      const t = Math.min(1, Math.max(0, (now - begun) / strokeTime));
      if (t < 1) frame.current = requestAnimationFrame(next);
      move(Math.round(step.position + (step.until - step.position) * t));
    };
    frame.current = requestAnimationFrame(next);
    return stop;
  }, [key, step]);
  return stop;
}

interface FigureBoxProps {
  preview: Preview;
  position: number;
  show: ReadonlySet<Layer>;
  units: Units;
}

function FigureBox({ preview, position, show, units }: FigureBoxProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  const stage = size && size.height > 40 ? stageFor(preview, position, size, units) : null;
  return (
    <div class="explain-figure" ref={ref}>
      {stage && (
        <svg
          width={stage.size.width}
          height={stage.size.height}
          viewBox={`0 0 ${stage.size.width} ${stage.size.height}`}
          role="img"
          aria-label={preview.name}
        >
          <Figure stage={stage} show={show} id="explain-unsure" trail={preview.frames} {...bodyOf(stage)} />
        </svg>
      )}
    </div>
  );
}

interface ScrubberProps {
  curve: Curve;
  side: string; // whose the force is; "" if the whole machine's
  position: number;
  move: (position: number) => void;
  units: Units;
}

function Scrubber({ curve, side, position, move, units }: ScrubberProps) {
  const f = curve.lift[position];
  const share = percent((curve.travel[position] ?? 0) / (curve.travel.at(-1) || 1));
  const text = f === null || f === undefined ? words.machine.gapHere : force(units, f);
  return (
    <div class="explain-scrub">
      <input
        type="range"
        min="0"
        max={curve.travel.length - 1}
        value={position}
        aria-label={words.machine.scrub}
        aria-valuetext={[share, text, side].filter(Boolean).join(", ")}
        onInput={(e) => move(Number(e.currentTarget.value))}
      />
      <output>
        {text}
        {side && f !== null && f !== undefined && <span>{side}</span>}
        {f !== null && f !== undefined && f > 0 && <span>{words.machine.heldMass(mass(units, held(f)))}</span>}
      </output>
    </div>
  );
}

interface CaptionProps {
  step: ExplainStep;
  at: number;
  of: number;
  to: (step: number) => void;
}

function Caption({ step, at: i, of, to }: CaptionProps) {
  return (
    <div class="explain-caption">
      <div aria-live="polite">
        <p class="faint small">{words.explain.step(i + 1, of)}</p>
        <h2>{step.title}</h2>
        <p>{step.caption}</p>
      </div>
      <div class="row">
        <button type="button" disabled={i === 0} onClick={() => to(i - 1)}>
          {words.explain.previous}
        </button>
        <button type="button" class="strong" disabled={i === of - 1} onClick={() => to(i + 1)}>
          {words.explain.next}
        </button>
      </div>
    </div>
  );
}

function CurveBox({
  preview,
  position,
  move,
  units,
}: {
  preview: Preview;
  position: number;
  move: (p: number) => void;
  units: Units;
}) {
  const curve = preview.curve!;
  const band = preview.band;
  return (
    <Chart
      series={[{ name: words.phases.lifting, look: "lift", x: curve.travel, y: numbers(curve.lift) }]}
      band={band ? { low: numbers(band.low), high: numbers(band.high) } : null}
      cursor={{ x: curve.travel[position] ?? 0, readings: [curve.lift[position] ?? null] }}
      length={curve.travel.at(-1) ?? 0}
      most={1.1 * ceiling(ribbonOf(curve, "lifting", band))}
      {...axesOf(units)}
      label={words.chart.label(preview.name)}
      scrub={(share) => move(at(curve.travel, share))}
    />
  );
}
