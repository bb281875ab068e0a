/** Which layers of the figure a step of an explanation shows. */

import type { ExplainStep, Shown } from "../api.ts";
import type { Layer } from "../parts/figure/stage.ts";

const layersOf: Record<Shown, Layer[]> = {
  machine: [],
  axis: ["axis"],
  gravity: ["gravity"],
  "load arm": ["loadArm"],
  "contact arm": ["contactArm", "forces"],
  rope: ["rope"],
  "cam radius": ["rope"],
  travels: ["travels"],
  ribbon: ["ribbon", "band"],
  curve: [],
};

/** layersFor returns the layers of a step; names are left to steps that explain little else. */
export function layersFor(step: ExplainStep): Set<Layer> {
  const out = new Set<Layer>(step.show.flatMap((s) => layersOf[s] ?? []));
  if (!step.show.includes("travels")) out.add("names");
  return out;
}
