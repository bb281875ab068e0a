/** What a chart is drawn on, and what reads it: thirds, scales and the cursor. */

import { type Axes, ticksX, ticksY, xAt, yAt } from "../drawing/chart.ts";
import { fixed } from "../units.ts";
import { words } from "../words.ts";
import type { Axis } from "./chart.tsx";

export function Thirds({ axes }: { axes: Axes }) {
  const { left, right, top, bottom } = axes.box;
  const wide = (right - left) / 3;
  return (
    <g class="chart-thirds">
      {words.thirds.map((name, i) => (
        <g key={name}>
          {i !== 1 && <rect x={left + i * wide} y={top} width={Math.max(0, wide)} height={Math.max(0, bottom - top)} />}
          <text x={left + (i + 0.5) * wide} y={top - 8}>
            {name}
          </text>
        </g>
      ))}
    </g>
  );
}

export function Scales({ axes, x, y: yAxis }: { axes: Axes; x: Axis; y: Axis }) {
  const { left, right, top, bottom } = axes.box;
  const ys = ticksY(axes);
  const digits = (values: number[]): number => (values.some((v) => Math.abs(v - Math.round(v)) > 1e-6) ? 1 : 0);
  const xs = ticksX(axes);
  return (
    <g class="chart-scales">
      {ys.map((y) => (
        <g key={y}>
          <path class={y === 0 ? "axis" : "rule"} d={`M${left} ${yAt(axes, y).toFixed(1)}H${right}`} />
          <text class="y" x={left - 6} y={yAt(axes, y) + 4}>
            {fixed(y, digits(ys))}
          </text>
        </g>
      ))}
      {xs.map((x) => (
        <text class="x" x={xAt(axes, x)} y={bottom + 16} key={x}>
          {fixed(x, digits(xs))}
        </text>
      ))}
      <text class="title-y" x={4} y={top - 8}>
        {yAxis.title}
      </text>
      <text class="title-x" x={right} y={bottom + 31}>
        {x.title}
      </text>
    </g>
  );
}

interface CursorProps {
  axes: Axes;
  x: number;
  ys: (number | null)[];
  looks: string[]; // of the series, in the same order
  unit: string;
  gap: string;
}

/** Cursor crosses the curves and reads them; with several the numbers stand in the legend. */
export function Cursor({ axes, x, ys, looks, unit, gap }: CursorProps) {
  const px = xAt(axes, x);
  const height = (y: number): number => Math.max(axes.box.top, Math.min(axes.box.bottom, yAt(axes, y)));
  return (
    <g class="cursor">
      <path d={`M${px.toFixed(1)} ${axes.box.top}V${axes.box.bottom}`} />
      {ys.map((y, i) => y !== null && <circle class={looks[i] ?? ""} cx={px} cy={height(y)} r={5} key={i} />)}
      {ys.length === 1 && (
        <CursorText
          axes={axes}
          px={px}
          py={height(ys[0] ?? axes.y[0])}
          text={ys[0] === null ? gap : `${fixed(ys[0]!, Math.abs(ys[0]!) < 10 ? 1 : 0)} ${unit}`}
        />
      )}
    </g>
  );
}

function CursorText({ axes, px, py, text }: { axes: Axes; px: number; py: number; text: string }) {
  const right = px > axes.box.right - 64;
  const above = py > axes.box.top + 26;
  return (
    <text class="halo" x={right ? px - 9 : px + 9} y={above ? py - 10 : py + 22} text-anchor={right ? "end" : "start"}>
      {text}
    </text>
  );
}
