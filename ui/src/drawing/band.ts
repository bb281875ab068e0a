/** The error band while something moves under the finger. */

import type { Band, Curve } from "../api.ts";
import { at, column } from "./ribbon.ts";

/**
 * bandAbout lays the band of the curve before about the curve now, as wide as it
 * was at the same share of the travel. It stands in for the band of the curve
 * now until that is computed, when the finger rests.
 */
export function bandAbout(band: Band, before: Curve, now: Curve): Band {
  const was = column(before, band.phase);
  const is = column(now, band.phase);
  const long = now.travel.at(-1) || 1;
  const low: (number | null)[] = [];
  const high: (number | null)[] = [];
  now.travel.forEach((s, k) => {
    const j = at(before.travel, s / long);
    const [f, g] = [is[k] ?? null, was[j] ?? null];
    const [l, h] = [band.low[j] ?? null, band.high[j] ?? null];
    const known = f !== null && g !== null && l !== null && h !== null;
    low.push(known ? f + l - g : null);
    high.push(known ? f + h - g : null);
  });
  return { ...band, low, high };
}
