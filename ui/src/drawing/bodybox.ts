/** How far the person reaches while they work the machine. */

import type { Frame } from "../api.ts";
import { around, type Box, type Place } from "./place.ts";

const corners = (p: Place, r: number): Place[] => [
  [p[0] - r, p[1] - r],
  [p[0] + r, p[1] + r],
];

/** withBodies returns the box, m, widened to hold the person in every pose there is of them. */
export function withBodies(box: Box, frames: readonly Frame[]): Box {
  const reach = frames.flatMap((f) =>
    (f.body?.segments ?? []).flatMap((s) => [...corners(s.from, s.near), ...corners(s.to, s.far)]),
  );
  return around([box.low, box.high, ...reach])!;
}
