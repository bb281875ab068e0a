import type { Axis } from "../../parts/chart.tsx";
import type { Units } from "../../units.ts";
import { words } from "../../words.ts";

/** axesOfEffort returns the axes of effort in percent over a travel. */
export const axesOfEffort = (u: Units): { x: Axis; y: Axis } => ({
  x: { ...u.travel, title: words.chart.travel(u.travel.unit) },
  y: { perUnit: 0.01, unit: "%", title: words.person.effortAxis },
});
