/** The load ribbon: the force drawn along the contact's path, as wide as it is large. */

import type { Band, Curve, PersonOnMachine, Phase } from "../api.ts";
import { add, type Box, type Place, times } from "./place.ts";
import { fit, onGround, onScreen, type Size, type View } from "./view.ts";

/** Ribbon is by position of the curve; NaN where there is no force. */
export interface Ribbon {
  base: Place[]; // m
  side: Place[]; // unit, towards a resisting force
  force: number[]; // N
  low: number[]; // N, of the band; equal to force without one
  high: number[];
  can?: number[]; // N, that the person can produce; NaN where nothing is known
  canMost?: number[]; // N, where nobody was tested: the most it can be; NaN elsewhere
  thirds: [number, number]; // positions where the middle third begins and ends
}

/** spike is how many times the force that nine places in ten keep below is still drawn to scale. */
const spike = 3;

/** column returns the curve's force in the phase. */
export const column = (c: Curve, phase: Phase): (number | null)[] =>
  phase === "lifting" ? c.lift : phase === "lowering" ? c.lower : c.hold;

/** numbers returns a column with NaN at its gaps. */
export const numbers = (column: readonly (number | null)[]): number[] => column.map((f) => f ?? Number.NaN);

/** ribbonOf reads the ribbon off a curve. A band of another phase, or of none, is left out. */
export function ribbonOf(c: Curve, phase: Phase, measured: Pick<Band, "phase" | "low" | "high"> | null): Ribbon {
  const band = measured?.phase === phase || (measured && !c.rubs) ? measured : null;
  const force = numbers(column(c, phase));
  return {
    base: c.contact,
    side: c.normal,
    force,
    low: band ? numbers(band.low).map((f, k) => (Number.isNaN(f) ? force[k]! : f)) : force,
    high: band ? numbers(band.high).map((f, k) => (Number.isNaN(f) ? force[k]! : f)) : force,
    thirds: [at(c.travel, 1 / 3), at(c.travel, 2 / 3)],
  };
}

/** withPerson adds what a person can produce. */
export const withPerson = (r: Ribbon, person: PersonOnMachine | null): Ribbon =>
  person ? { ...r, can: numbers(person.can), canMost: numbers(person.canMost) } : r;

/** at returns the position of the curve nearest to the share (0 to 1) of its travel. */
export function at(travel: readonly number[], share: number): number {
  const wanted = (travel.at(-1) ?? 0) * share;
  let low = 0;
  let high = travel.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (travel[middle]! <= wanted) low = middle;
    else high = middle;
  }
  return high > 0 && travel[high]! - wanted < wanted - travel[low]! ? high : low;
}

/** ceiling returns the force in N that pictures are scaled to: the greatest, unless a spike stands far above the rest. */
export function ceiling(r: Ribbon): number {
  const sizes = r.force
    .map((f, k) => Math.max(Math.abs(f), Math.abs(r.low[k]!), Math.abs(r.high[k]!)))
    .filter((f) => !Number.isNaN(f))
    .sort((a, b) => a - b);
  if (!sizes.length) return 1;
  return Math.max(1, Math.min(sizes.at(-1)!, spike * sizes[Math.floor(0.9 * (sizes.length - 1))]!));
}

/** Laid is a ribbon on the screen: perNewton px wide for each N, no wider than `full` N. */
export interface Laid {
  ribbon: Ribbon;
  view: View;
  perNewton: number;
  full: number;
}

/** edge returns where the ribbon's edge is at position k for the force, px. */
export function edge(l: Laid, k: number, force: number): Place {
  const n = l.ribbon.side[k]!;
  const wide = Math.max(-l.full, Math.min(l.full, force)) * l.perNewton;
  return add(onScreen(l.view, l.ribbon.base[k]!), times([n[0], -n[1]], wide));
}

/** runs returns the stretches [from, to) of positions that have a force. */
export function runs(force: readonly number[]): [number, number][] {
  const out: [number, number][] = [];
  let from = 0;
  for (let k = 0; k <= force.length; k++) {
    if (k === force.length || Number.isNaN(force[k])) {
      if (k > from + 1) out.push([from, k]);
      from = k + 1;
    }
  }
  return out;
}

/** sure returns the part of a force between low and high that is there in any case. */
export const sure = (low: number, high: number): number => (low > 0 ? low : high < 0 ? high : 0);

/** edges returns the edge over the positions from, …, to-1. */
export function edges(l: Laid, [from, to]: [number, number], force: (k: number) => number): Place[] {
  const out: Place[] = [];
  for (let k = from; k < to; k++) out.push(edge(l, k, force(k)));
  return out;
}

/** mostCan is how far beyond the greatest force what a person can produce is still drawn beside the machine. */
export const mostCan = 2;

/** mostCanCharted is the same in a chart, which has more room. */
export const mostCanCharted = 3;

/** above returns the column where it is above the bound, and NaN elsewhere; below the rest of it. */
export const above = (column: readonly number[], bound: number): number[] =>
  column.map((f) => (f > bound ? f : Number.NaN));
export const below = (column: readonly number[], bound: number): number[] =>
  column.map((f) => (f > bound ? Number.NaN : f));

/** middleOf returns the middle position of the longest stretch that has a force, or undefined. */
export function middleOf(column: readonly number[]): number | undefined {
  let longest: [number, number] | undefined;
  for (const run of runs(column)) if (!longest || run[1] - run[0] > longest[1] - longest[0]) longest = run;
  return longest && (longest[0] + longest[1]) >> 1;
}

/** fitWith returns the view that shows the machine's box and a ribbon `wide` px at its widest. */
export function fitWith(machine: Box, ribbon: Ribbon, wide: number, full: number, size: Size, margin: number): View {
  let view = fit(machine, size, margin);
  for (let round = 0; round < 4; round++) {
    const laid: Laid = { ribbon, view, perNewton: wide / full, full };
    const box: Box = { low: [...machine.low], high: [...machine.high] };
    ribbon.base.forEach((_, k) => {
      const loads = [0, ribbon.low[k]!, ribbon.high[k]!].map((f) => edge(laid, k, f));
      const cans = [ribbon.can?.[k], ribbon.canMost?.[k]].map((f) =>
        edge({ ...laid, full: mostCan * full }, k, f ?? 0),
      );
      for (const at of [...loads, ...cans]) {
        if (Number.isNaN(at[0])) continue;
        const p = onGround(view, at);
        box.low = [Math.min(box.low[0], p[0]), Math.min(box.low[1], p[1])];
        box.high = [Math.max(box.high[0], p[0]), Math.max(box.high[1], p[1])];
      }
    });
    view = fit(box, size, margin);
  }
  return view;
}
