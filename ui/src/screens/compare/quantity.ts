/** What the curves of a comparison show. */

import type { ComparedCurve, Comparison } from "../../api.ts";
import type { Axis } from "../../parts/chart.tsx";
import { units } from "../../state/taste.ts";
import { trainee } from "../../state/trainee.ts";
import { over, ownPeak, shown } from "./state.ts";

/** Quantity is what the curves show: its columns, and the axis it is read from. */
export interface Quantity {
  column: (item: ComparedCurve) => (number | null)[];
  axis: Axis;
  byShare: boolean; // there is no column by distance
  ofMachine: boolean; // a force, not what it asks of a person
}

export function quantity(c: Comparison): Quantity {
  const u = units.value;
  // only the unit: what is shown is named beside the chart, and a phone has no room for more
  const percentAxis: Axis = { perUnit: 0.01, unit: "%", title: "%" };
  if (trainee.value && shown.value === "effort") {
    return { column: (i) => i.effort, axis: percentAxis, byShare: true, ofMachine: false };
  }
  if (trainee.value && jointsOf(c).includes(shown.value)) {
    const joint = shown.value;
    const column = (i: ComparedCurve) => i.joints.find((j) => j.joint === joint)?.moment ?? [];
    return {
      column,
      axis: { perUnit: 1, unit: "N·m", title: "N·m" },
      byShare: true,
      ofMachine: false,
    };
  }
  const byShare = over.value === "share";
  const own = (i: ComparedCurve) => (byShare ? i.byShare : i.byTravel);
  if (!ownPeak.value) return { column: own, axis: { ...u.force, title: u.force.unit }, byShare, ofMachine: true };
  const scaled = (i: ComparedCurve) => own(i).map((y) => (y === null ? null : y / (i.readings?.peak.force || 1)));
  return { column: scaled, axis: percentAxis, byShare, ofMachine: true };
}

/** jointsOf lists the joint axes at which any of the machines asks for a moment. */
export const jointsOf = (c: Comparison): string[] => [...new Set(c.items.flatMap((i) => i.joints.map((j) => j.joint)))];
