/** The plain curve: where its axes, columns and cursor lie, px. */

import { area, polyline } from "./path.ts";
import type { Place } from "./place.ts";
import { runs } from "./ribbon.ts";
import { type Range, rounded, ticks } from "./ticks.ts";
import type { Size } from "./view.ts";

/** Axes map x and y in the units shown to px within the box. */
export interface Axes {
  box: { left: number; top: number; right: number; bottom: number };
  x: Range;
  y: Range;
}

export const margin = { left: 46, top: 24, right: 12, bottom: 36 };

/** axesFor returns axes in the size over the ranges; y is widened to round numbers that hold 0. */
export function axesFor(size: Size, x: Range, y: Range): Axes {
  const box = {
    left: margin.left,
    top: margin.top,
    right: size.width - margin.right,
    bottom: size.height - margin.bottom,
  };
  return { box, x, y: rounded(y, yTicks(box.bottom - box.top)) };
}

const yTicks = (tall: number): number => Math.max(2, Math.min(6, Math.floor(tall / 34)));

export const xAt = (a: Axes, x: number): number =>
  a.box.left + ((x - a.x[0]) / (a.x[1] - a.x[0] || 1)) * (a.box.right - a.box.left);
export const yAt = (a: Axes, y: number): number =>
  a.box.bottom - ((y - a.y[0]) / (a.y[1] - a.y[0] || 1)) * (a.box.bottom - a.box.top);

/** shareAt returns which share of the x range lies under the px, kept within 0 and 1. */
export const shareAt = (a: Axes, px: number): number =>
  Math.min(1, Math.max(0, (px - a.box.left) / (a.box.right - a.box.left || 1)));

export const ticksX = (a: Axes): number[] =>
  ticks(a.x[0], a.x[1], Math.max(2, Math.floor((a.box.right - a.box.left) / 60)));
export const ticksY = (a: Axes): number[] => ticks(a.y[0], a.y[1], yTicks(a.box.bottom - a.box.top));

/** clipped keeps what leaves the axes just outside them, so that a spike cannot run over the page. */
function clipped(a: Axes, y: number): number {
  return Math.max(a.box.top - 40, Math.min(a.box.bottom + 40, yAt(a, y)));
}

/** line returns the path of a column; NaN parts it. */
export function line(a: Axes, xs: readonly number[], ys: readonly number[]): string {
  return runs(ys)
    .map(([from, to]) => polyline(places(a, xs, ys, from, to)))
    .join("");
}

/** between returns the area between two columns with the same gaps. */
export function between(a: Axes, xs: readonly number[], low: readonly number[], high: readonly number[]): string {
  return runs(low)
    .map(([from, to]) => area(places(a, xs, low, from, to), places(a, xs, high, from, to)))
    .join("");
}

function places(a: Axes, xs: readonly number[], ys: readonly number[], from: number, to: number): Place[] {
  const out: Place[] = [];
  for (let k = from; k < to; k++) out.push([xAt(a, xs[k]!), clipped(a, ys[k]!)]);
  return out;
}

/** spread returns the range of several columns; a spike counts up to the ceiling. */
export function spread(columns: readonly (readonly number[])[], most: number): Range {
  let [low, high] = [0, 0];
  for (const column of columns) {
    for (const y of column) {
      if (Number.isNaN(y)) continue;
      low = Math.min(low, Math.max(y, -most));
      high = Math.max(high, Math.min(y, most));
    }
  }
  return [low, high];
}

/** held returns the range an axis keeps: the one it had, unless the new one leaves it or fills less than half. */
export function held(before: Range | null, now: Range): Range {
  if (!before) return now;
  const leaves = now[0] < before[0] || now[1] > before[1];
  const small = now[1] - now[0] < 0.5 * (before[1] - before[0]);
  return leaves || small ? now : before;
}
