/** Mappings of the plane that keep straight lines straight, row by row, on (x, y, 1). */

import type { Place } from "./place.ts";

/** Plane is a 3×3 matrix, row by row. */
export type Plane = [number, number, number, number, number, number, number, number, number];

/** product returns a·b: b is done first. */
export function product(a: Plane, b: Plane): Plane {
  const out: number[] = [];
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      out.push(a[3 * i]! * b[j]! + a[3 * i + 1]! * b[3 + j]! + a[3 * i + 2]! * b[6 + j]!);
    }
  }
  return out as Plane;
}

/** through returns where the mapping takes p. */
export function through(m: Plane, p: Place): Place {
  const w = m[6] * p[0] + m[7] * p[1] + m[8];
  return [(m[0] * p[0] + m[1] * p[1] + m[2]) / w, (m[3] * p[0] + m[4] * p[1] + m[5]) / w];
}

/** matrix3d writes the mapping as a CSS transform about the upper left corner. */
export function matrix3d(m: Plane): string {
  const [a, b, c, d, e, f, g, h, i] = m.map((x) => x / m[8]) as Plane;
  return `matrix3d(${[a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].join(",")})`;
}
