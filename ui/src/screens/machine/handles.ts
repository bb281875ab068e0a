/** What of a machine can be taken hold of, and the edit that moving it makes. */

import type { Drawing, Edit, Frame, Structure } from "../../api.ts";
import { linkOf } from "../../drawing/carried.ts";
import { moved, type Place } from "../../drawing/place.ts";

export interface Handle {
  key: string;
  name: string;
  kind: "point" | "vertex";
  at: Place; // m, where the machine stands
  edit: (to: Place, driver: number) => Edit;
}

/** handlesOf lists the points and traced cam vertices where they are in the frame. */
export function handlesOf(s: Structure, d: Drawing, f: Frame): Handle[] {
  const place = (link: number, p: Place): Place => (f.poses[link] ? moved(f.poses[link]!)(p) : p);
  const points = s.points.map((p): Handle => {
    return {
      key: `point ${p.name}`,
      name: p.name,
      kind: "point",
      at: place(linkOf(p, d), p.at),
      edit: (to, driver) => ({ point: { point: p.name, to, driver } }),
    };
  });
  const vertices = s.cams.flatMap((cam) => {
    const wheel = d.wheels.find((w) => w.cam && w.name === cam.name);
    return cam.points.map(
      (p, i): Handle => ({
        key: `cam ${cam.name} ${i + 1}`,
        name: `${cam.name} ${i + 1}`,
        kind: "vertex",
        at: place(wheel?.on ?? 0, p),
        edit: (to, driver) => ({ cam: { cam: cam.name, vertex: i + 1, to, driver } }),
      }),
    );
  });
  return [...vertices, ...points];
}

/** grabbed returns the handle nearest to the place within the reach, both in m; null if there is none. */
export function grabbed(handles: readonly Handle[], at: Place, reach: number): Handle | null {
  let best: Handle | null = null;
  let least = reach;
  for (const h of handles) {
    const d = Math.hypot(h.at[0] - at[0], h.at[1] - at[1]) * (h.kind === "vertex" ? 1.15 : 1);
    if (d <= least) [best, least] = [h, d];
  }
  return best;
}
