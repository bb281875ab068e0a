/** SVG path data from places in px. */

import { add, type Place, sub, times, unit } from "./place.ts";

const at = (p: Place): string => `${p[0].toFixed(1)} ${p[1].toFixed(1)}`;

/** polyline returns an open path through the places; empty without any. */
export const polyline = (places: readonly Place[]): string => (places.length ? `M${places.map(at).join("L")}` : "");

/** polygon returns the closed path through the places. */
export const polygon = (places: readonly Place[]): string => (places.length ? `${polyline(places)}Z` : "");

/** area returns the closed path along a and back along b. */
export const area = (a: readonly Place[], b: readonly Place[]): string => polygon([...a, ...[...b].reverse()]);

export const segment = (a: Place, b: Place): string => `M${at(a)}L${at(b)}`;

/** head returns an arrow head of the given size with its tip at `tip`, pointing from `from`. */
export function head(from: Place, tip: Place, size: number): string {
  const u = unit(sub(tip, from));
  const side: Place = [-u[1], u[0]];
  const back = sub(tip, times(u, size));
  return polygon([tip, add(back, times(side, size * 0.42)), sub(back, times(side, size * 0.42))]);
}

/** bracket returns the short strokes of a support below a pin at p, each side s px wide: a foot and its hatching. */
export function bracket(p: Place, s: number): string {
  const [x, y] = p;
  const foot = segment([x - s, y + s * 1.15], [x + s, y + s * 1.15]);
  const legs = polyline([
    [x - s * 0.7, y + s * 1.15],
    [x, y],
    [x + s * 0.7, y + s * 1.15],
  ]);
  const hatch = [-0.7, -0.1, 0.5]
    .map((k) => segment([x + k * s, y + s * 1.15], [x + (k - 0.35) * s, y + s * 1.6]))
    .join("");
  return foot + legs + hatch;
}

/** diamond returns a square that stands on its corner, r px from its middle to each. */
export const diamond = (x: number, y: number, r: number): string =>
  polygon([
    [x, y - r],
    [x + r, y],
    [x, y + r],
    [x - r, y],
  ]);
