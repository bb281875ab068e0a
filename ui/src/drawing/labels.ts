/** Places short texts beside what they name, clear of each other. */

import { type Box, distance, type Place } from "./place.ts";
import type { Size } from "./view.ts";

export interface Label {
  at: Place; // px, what is named
  text: string;
  role: string; // of its colour
  bold?: boolean;
}

export interface PlacedLabel extends Label {
  x: number; // of the text's left end, px
  y: number; // of its baseline
  lead: boolean; // it stands so far off that a line must lead to it
}

export const textHeight = 15; // px, of a line at 13 px
const em = 13;

/** widthOf estimates the width of a label in px: what a face of middling width takes. */
export const widthOf = (text: string, bold = false): number => text.length * em * (bold ? 0.72 : 0.56) + 4;

/** away lists where a label may stand: direction from what it names, and how far. */
const away: [number, number, number][] = [10, 22, 44, 70].flatMap((d) =>
  [
    [1, 0],
    [-1, 0],
    [0.7, -0.8],
    [-0.7, -0.8],
    [0.7, 0.8],
    [-0.7, 0.8],
    [0, -1],
    [0, 1],
  ].map(([x, y]): [number, number, number] => [x! * d, y! * d, d]),
);

/**
 * place sets the labels in order. Each takes the first place that is within
 * the size, off every label before it, off the boxes already written in and off
 * the avoided places; a label with no such place is left out.
 */
export function place(
  labels: readonly Label[],
  size: Size,
  avoid: readonly Place[],
  written: readonly Box[] = [],
): PlacedLabel[] {
  const taken: Box[] = [...written];
  const out: PlacedLabel[] = [];
  for (const label of labels) {
    const wide = widthOf(label.text, label.bold);
    for (const [dx, dy, d] of away) {
      const x = label.at[0] + dx - (dx < -1 ? wide : Math.abs(dx) <= 1 ? wide / 2 : 0);
      const y = label.at[1] + dy + textHeight * 0.35;
      const box: Box = { low: [x - 2, y - textHeight * 0.85], high: [x + wide + 2, y + textHeight * 0.25] };
      if (!inside(box, size) || taken.some((b) => crosses(b, box)) || avoid.some((p) => holds(box, p))) continue;
      taken.push(box);
      out.push({ ...label, x, y, lead: d > 30 });
      break;
    }
  }
  return out;
}

export const inside = (b: Box, s: Size): boolean =>
  b.low[0] >= 0 && b.low[1] >= 0 && b.high[0] <= s.width && b.high[1] <= s.height;

export const crosses = (a: Box, b: Box): boolean =>
  a.low[0] < b.high[0] && b.low[0] < a.high[0] && a.low[1] < b.high[1] && b.low[1] < a.high[1];

const holds = (b: Box, p: Place): boolean => p[0] > b.low[0] && p[0] < b.high[0] && p[1] > b.low[1] && p[1] < b.high[1];

/** throughout returns places every `gap` px all over the box, for labels to keep off. */
export function throughout(b: Box, gap = 10): Place[] {
  const out: Place[] = [];
  for (let y = b.low[1]; y <= b.high[1]; y += gap) out.push(...along([b.low[0], y], [b.high[0], y], gap));
  return out;
}

/** along returns places every `gap` px on the way from a to b, for labels to keep off. */
export function along(a: Place, b: Place, gap = 10): Place[] {
  const n = Math.max(1, Math.ceil(distance(a, b) / gap));
  return Array.from(
    { length: n + 1 },
    (_, i): Place => [a[0] + ((b[0] - a[0]) * i) / n, a[1] + ((b[1] - a[1]) * i) / n],
  );
}
