/** Places and directions in the plane, m in the ground frame or px on the screen. */

import type { Place, Pose } from "../api.ts";

export type { Place };

export const add = (a: Place, b: Place): Place => [a[0] + b[0], a[1] + b[1]];
export const sub = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1]];
export const times = (a: Place, k: number): Place => [a[0] * k, a[1] * k];
export const lerp = (a: Place, b: Place, t: number): Place => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
export const length = (a: Place): number => Math.hypot(a[0], a[1]);
export const distance = (a: Place, b: Place): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** unit returns the direction of a, or [0, 0] if it has none. */
export function unit(a: Place): Place {
  const l = length(a);
  return l > 0 ? [a[0] / l, a[1] / l] : [0, 0];
}

/** moved returns a mover of places given at the measured pose to where they are in the given pose. */
export function moved(pose: Pose): (p: Place) => Place {
  const c = Math.cos(pose.turn);
  const s = Math.sin(pose.turn);
  return (p) => [pose.x + c * p[0] - s * p[1], pose.y + s * p[0] + c * p[1]];
}

/** back returns the mover that takes places of the given pose to where they are at the measured pose. */
export function back(pose: Pose): (p: Place) => Place {
  const turned = moved({ x: 0, y: 0, turn: -pose.turn });
  return (p) => turned([p[0] - pose.x, p[1] - pose.y]);
}

/** nearest returns the index of the place nearest to p, or -1 if there is none. */
export function nearest(places: readonly Place[], p: Place): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  places.forEach((q, i) => {
    const d = distance(p, q);
    if (d < least) [best, least] = [i, d];
  });
  return best;
}

/** Box is an upright rectangle, low corner and high corner. */
export interface Box {
  low: Place;
  high: Place;
}

/** around returns the smallest box that holds the places, or null without any. */
export function around(places: Iterable<Place>): Box | null {
  let box: Box | null = null;
  for (const p of places) {
    box = box
      ? {
          low: [Math.min(box.low[0], p[0]), Math.min(box.low[1], p[1])],
          high: [Math.max(box.high[0], p[0]), Math.max(box.high[1], p[1])],
        }
      : { low: p, high: p };
  }
  return box;
}
