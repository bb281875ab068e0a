/** A body segment as two discs and the band between their outer tangents. */

import type { Place } from "./place.ts";

/** capsule returns the outline of a segment from a (radius ra) to b (radius rb), px. */
export function capsule(a: Place, ra: number, b: Place, rb: number): string {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const d = Math.hypot(dx, dy);
  if (d <= Math.abs(ra - rb)) return disc(ra >= rb ? a : b, Math.max(ra, rb));
  // An outer tangent touches both circles where their radii make the angle
  // arccos((ra - rb) / d) with the line of centres.
  const along = Math.atan2(dy, dx);
  const off = Math.acos((ra - rb) / d);
  const at = (c: Place, r: number, angle: number): string =>
    `${(c[0] + r * Math.cos(angle)).toFixed(1)} ${(c[1] + r * Math.sin(angle)).toFixed(1)}`;
  const [one, two] = [along + off, along - off];
  const arc = (r: number, large: boolean): string => `A${r.toFixed(1)} ${r.toFixed(1)} 0 ${large ? 1 : 0} 1 `;
  // round a the long way if it is the larger disc, round b the rest
  return `M${at(a, ra, one)}${arc(ra, off < Math.PI / 2)}${at(a, ra, two)}L${at(b, rb, two)}${arc(rb, off > Math.PI / 2)}${at(b, rb, one)}Z`;
}

function disc(c: Place, r: number): string {
  const text = r.toFixed(1);
  return `M${(c[0] - r).toFixed(1)} ${c[1].toFixed(1)}a${text} ${text} 0 1 1 ${(2 * r).toFixed(1)} 0a${text} ${text} 0 1 1 ${(-2 * r).toFixed(1)} 0Z`;
}
