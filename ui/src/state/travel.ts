/** Where a repetition stands at a time. */

import type { Stroke } from "../api.ts";

/** travelAt returns how far the contact has come at the time, m; the stroke begins anew after its end. */
export function travelAt(s: Stroke, time: number): number {
  const whole = s.time.at(-1) ?? 0;
  if (!(whole > 0)) return 0;
  const t = time % whole;
  let low = 0;
  let high = s.time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (s.time[middle]! <= t) low = middle;
    else high = middle;
  }
  const [t0, t1] = [s.time[low]!, s.time[high]!];
  const part = t1 > t0 ? (t - t0) / (t1 - t0) : 0;
  return s.travel[low]! + (s.travel[high]! - s.travel[low]!) * part;
}
