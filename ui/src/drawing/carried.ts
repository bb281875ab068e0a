/** Where points were left by a finger when nobody was there to compute them. */

import type { Drawing, Edit, Frame, Point, Preview } from "../api.ts";
import { back, nearest, type Place } from "./place.ts";

/** linkOf returns which link of the drawing carries the point; 0, the ground, if none that moves does. */
export function linkOf(p: Point, d: Drawing): number {
  const named = (name: string): number => d.links.findIndex((l) => l.name === name);
  return p.fixed ? 0 : Math.max(0, named(p.links.find((name) => named(name) > 0) ?? ""));
}

/** carried returns the preview with the points that were dragged where the finger left them, for want of a computed one. */
export function carried(p: Preview, edits: readonly Edit[]): Preview {
  const { structure, drawing, curve } = p;
  if (!structure || !drawing || !curve) return p;
  const frameAt = (driver: number): Frame | undefined =>
    p.frames[
      nearest(
        p.frames.map((f): Place => [curve.driver[f.position] ?? 0, 0]),
        [driver, 0],
      )
    ];
  const points = structure.points.map((q) => {
    const drag = edits.filter((e) => e.point?.point === q.name).at(-1)?.point;
    const pose = drag && frameAt(drag.driver ?? 0)?.poses[linkOf(q, drawing)];
    return pose ? { ...q, at: back(pose)(drag.to) } : q;
  });
  return { ...p, structure: { ...structure, points } };
}
