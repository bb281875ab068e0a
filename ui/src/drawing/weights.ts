/** The shapes of loads whose size no sheet tells. For the eye only. */

import type { Weight } from "../api.ts";
import type { Box, Place } from "./place.ts";

const stackWide = 0.26; // m
const stackHeight = 0.006; // m for each kg
const stackLeast = 0.1;
const stackMost = 0.7;
export const stackPlate = 0.03;

/** stackBox returns the block of a weight stack that hangs from the place, m. */
export function stackBox(w: Weight, at: Place): Box {
  const tall = Math.min(Math.max(stackHeight * w.mass, stackLeast), stackMost);
  return { low: [at[0] - stackWide / 2, at[1] - tall], high: [at[0] + stackWide / 2, at[1]] };
}

/** stackOnScreen returns the block of a stack that hangs from the place in px. */
export function stackOnScreen(w: Weight, at: Place, scale: number): Box {
  const box = stackBox(w, [0, 0]);
  const wide = (box.high[0] - box.low[0]) * scale;
  const left = at[0] + box.low[0] * scale;
  return { low: [left, at[1]], high: [left + wide, at[1] + (box.high[1] - box.low[1]) * scale] };
}
