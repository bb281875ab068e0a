/** Where the ground frame lies on the screen. */

import { type Box, distance, lerp, type Place } from "./place.ts";

/** View takes m (x forward, y up) to px (right, down): scale px for each m, origin in px. */
export interface View {
  scale: number;
  origin: Place;
}

export interface Size {
  width: number;
  height: number;
}

/** onScreen returns where p (m) is on the screen, px. */
export const onScreen = (v: View, p: Place): Place => [v.origin[0] + p[0] * v.scale, v.origin[1] - p[1] * v.scale];

/** onGround returns the place in m that q (px) shows. */
export const onGround = (v: View, q: Place): Place => [(q[0] - v.origin[0]) / v.scale, (v.origin[1] - q[1]) / v.scale];

/** fit returns the view that shows the box as large as it goes, centred, with an edge of margin px. */
export function fit(box: Box, size: Size, margin: number): View {
  const wide = Math.max(box.high[0] - box.low[0], 1e-3);
  const tall = Math.max(box.high[1] - box.low[1], 1e-3);
  const room: Size = { width: Math.max(size.width - 2 * margin, 1), height: Math.max(size.height - 2 * margin, 1) };
  const scale = Math.min(room.width / wide, room.height / tall);
  const middle = lerp(box.low, box.high, 0.5);
  return { scale, origin: [size.width / 2 - middle[0] * scale, size.height / 2 + middle[1] * scale] };
}

/** zoomed returns the view magnified by the factor with the place under q (px) held still. */
export function zoomed(v: View, q: Place, factor: number): View {
  return { scale: v.scale * factor, origin: lerp(q, v.origin, factor) };
}

/** panned returns the view shifted by (right, down) px. */
export const panned = (v: View, by: Place): View => ({ ...v, origin: [v.origin[0] + by[0], v.origin[1] + by[1]] });

/** pinched returns the view after two fingers moved from one pair of places to another, px. */
export function pinched(v: View, from: [Place, Place], to: [Place, Place]): View {
  const before = Math.max(distance(from[0], from[1]), 1);
  const middle = lerp(from[0], from[1], 0.5);
  const now = lerp(to[0], to[1], 0.5);
  const scaled = zoomed(v, middle, distance(to[0], to[1]) / before);
  return panned(scaled, [now[0] - middle[0], now[1] - middle[1]]);
}

/** within returns a magnification kept between a quarter and twelve times that of the fitted view. */
export function within(v: View, fitted: View, q: Place): View {
  const factor = v.scale / fitted.scale;
  const kept = Math.min(12, Math.max(0.25, factor));
  return kept === factor ? v : zoomed(v, q, kept / factor);
}
