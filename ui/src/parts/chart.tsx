/** The ordinary curve over travel, with thirds, band, cursor and read-out under finger or mouse. */

import { useId, useMemo, useRef } from "preact/hooks";
import { type Axes, axesFor, between, held, line, shareAt, spread, xAt, yAt } from "../drawing/chart.ts";
import { widthOf } from "../drawing/labels.ts";
import { diamond } from "../drawing/path.ts";
import { above, middleOf } from "../drawing/ribbon.ts";
import type { Range } from "../drawing/ticks.ts";
import type { Size } from "../drawing/view.ts";
import type { Units } from "../units.ts";
import { words } from "../words.ts";
import { Cursor, Scales, Thirds } from "./chartpaper.tsx";
import { useSize } from "./size.ts";

/** Series is a column by position; NaN is a gap. */
export interface Series {
  name: string;
  look: string; // class: "lift", "lower", "hold", "before", "series-1", …
  x: number[];
  y: number[];
  beyond?: (most: number) => string; // says that it runs off the top, in words; most as in the series
}

/** Axis tells what one of the axes shows: so many of what the series hold make one of its unit. */
export interface Axis {
  perUnit: number;
  unit: string;
  title: string;
}

export interface ChartProps {
  series: Series[]; // the first is the one that is read
  band: { low: number[]; high: number[] } | null; // of the first
  crosses?: { x: number; y: number }[]; // measured
  diamond?: { x: number; y: number } | null; // the sticking point
  cursor: { x: number; readings: (number | null)[]; gap?: string }; // a reading for each series that is read there; what stands for none
  length: number; // of the x axis, as in the series
  most: number; // to which the y axis goes at most, as in the series
  x: Axis;
  y: Axis;
  label: string;
  scrub?: (share: number) => void;
}

/** axesOf returns the axes of a force over a travel. */
export const axesOf = (u: Units): { x: Axis; y: Axis } => ({
  x: { ...u.travel, title: words.chart.travel(u.travel.unit) },
  y: { ...u.force, title: u.force.unit },
});

export function Chart(props: ChartProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div class="chart" ref={ref}>
      {size && size.width > 120 && size.height > 80 && <Drawn {...props} size={size} />}
    </div>
  );
}

function Drawn(props: ChartProps & { size: Size }) {
  const { series, band, size } = props;
  const last = useRef<Range | null>(null);
  const columns = series.map((s) => s.y);
  if (band) columns.push(band.low, band.high);
  if (props.crosses) columns.push(props.crosses.map((c) => c.y));
  const range = spread(columns, props.most);
  last.current = held(last.current, range);
  const perForce = props.y.perUnit;
  const axes = useAxes(
    axesFor(
      size,
      [0, props.length / props.x.perUnit],
      [last.current[0] / perForce, (last.current[1] * 1.04) / perForce],
    ),
  );
  const paper = useMemo(
    () => (
      <>
        <Thirds axes={axes} />
        <Scales axes={axes} x={props.x} y={props.y} />
      </>
    ),
    [axes, props.x.title, props.y.title],
  );
  const shown = series.map((s) => ({
    ...s,
    x: s.x.map((x) => x / props.x.perUnit),
    y: s.y.map((y) => y / perForce),
  }));
  const first = shown[0]!;
  const id = useId().replace(/\W/g, "");
  const read = (e: PointerEvent) => {
    if (e.type === "pointermove" && e.pointerType !== "mouse" && !e.buttons) return;
    const left = (e.currentTarget as Element).getBoundingClientRect().left;
    props.scrub?.(shareAt(axes, e.clientX - left));
  };
  return (
    <svg
      class="plot"
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={props.label}
      onPointerDown={read}
      onPointerMove={(e) => e.buttons && read(e)}
    >
      <defs>
        <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="hatch-lift" d="M0 0V6" />
        </pattern>
        <clipPath id={`${id}c`}>
          <rect
            x={axes.box.left}
            y={axes.box.top - 2}
            width={Math.max(0, axes.box.right - axes.box.left + 6)}
            height={Math.max(0, axes.box.bottom - axes.box.top + 4)}
          />
        </clipPath>
      </defs>
      {paper}
      <g clip-path={`url(#${id}c)`}>
        {band && (
          <path
            class="chart-band"
            fill={`url(#${id})`}
            d={between(
              axes,
              first.x,
              band.low.map((y) => y / perForce),
              band.high.map((y) => y / perForce),
            )}
          />
        )}
        {[...shown].reverse().map((s) => (
          <path class={`curve ${s.look}`} d={line(axes, s.x, s.y)} key={s.name} />
        ))}
      </g>
      {props.crosses?.map((c) => {
        const [px, py] = [xAt(axes, c.x / props.x.perUnit), yAt(axes, c.y / perForce)];
        return <path class="cross" d={`M${px - 5} ${py - 5}l10 10M${px - 5} ${py + 5}l10 -10`} key={`${c.x} ${c.y}`} />;
      })}
      {props.diamond && (
        <path
          class="sticking"
          d={diamond(xAt(axes, props.diamond.x / props.x.perUnit), yAt(axes, props.diamond.y / perForce), 7)}
        />
      )}
      {shown.map((s) => (
        <Beyond axes={axes} series={s} perForce={perForce} key={s.name} />
      ))}
      <Cursor
        axes={axes}
        x={props.cursor.x / props.x.perUnit}
        ys={props.cursor.readings.map((y) => (y === null ? null : y / perForce))}
        looks={series.map((s) => s.look)}
        unit={props.y.unit}
        gap={props.cursor.gap ?? words.chart.gap}
      />
    </svg>
  );
}

/** Beyond says at the top edge that a series runs off it. */
function Beyond({ axes, series, perForce }: { axes: Axes; series: Series; perForce: number }) {
  const top = axes.y[1];
  const k = series.beyond && middleOf(above(series.y, top));
  if (k === undefined) return null;
  const text = series.beyond!(top * perForce);
  const half = widthOf(text) / 2;
  const x = Math.max(axes.box.left + half, Math.min(axes.box.right - half, xAt(axes, series.x[k]!)));
  return (
    <text class={`beyond halo ${series.look}`} x={x} y={axes.box.top + 13}>
      {text}
    </text>
  );
}

/** useAxes keeps the axes it was given before, as long as they are the same. */
function useAxes(now: Axes): Axes {
  const kept = useRef(now);
  if (JSON.stringify(kept.current) !== JSON.stringify(now)) kept.current = now;
  return kept.current;
}
