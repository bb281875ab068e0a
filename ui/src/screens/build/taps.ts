/** The steps of building from a photo, what taps on it mean in each, and what each still needs. */

import type { Family, PhotoSide, Pixel, Surveyed } from "../../api.ts";
import type { words } from "../../words.ts";
import { type Answers, begun, tapsFor, tapsOf, wanting } from "./answers.ts";
import type { Mark, Outline, PhotoBoardProps } from "./photoboard.tsx";

export type StepName = keyof typeof words.build.steps;
export type Change = (part: Partial<Answers>) => void;

const mostCam = 60; // places round a cam

/** stepsOf returns the steps the family and the photo need, in order: which side was nearer is asked if it decides. */
export const stepsOf = (family: Family, sides: readonly PhotoSide[]): StepName[] => [
  "scale",
  ...(sides.length ? (["near"] as const) : []),
  "upright",
  "points",
  ...(family.cam ? (["cam"] as const) : []),
  "values",
  "done",
];

/** missing returns how many answers the step still needs. */
export function missing(step: StepName, family: Family, a: Answers): number {
  switch (step) {
    case "scale":
      return begun(a).reduce((sum, s) => sum + wanting(s), 0) + (begun(a).length ? 0 : 1);
    case "near":
      return a.near === null ? 1 : 0;
    case "upright":
      return a[a.upright].length === 1 ? 1 : 0;
    case "points":
      return family.points.filter((p, i) => !p.optional && !a.points[i]).length;
    case "cam":
      return a.cam.length ? Math.max(0, (family.cam?.least ?? 0) - a.cam.length) : 0;
  }
  return 0;
}

/** Board is what the photo shows and takes in a step. */
export type Board = Omit<PhotoBoardProps, "photo">;

/** boardFor returns the board of a step; what was measured is drawn where it fits what is tapped. */
export function boardFor(step: StepName, family: Family, a: Answers, surveyed: Surveyed | null, change: Change): Board {
  switch (step) {
    case "scale":
      return scaleBoard(a, surveyed, change);
    case "near":
      return { marks: [], outlines: sizeOutlines(a, surveyed), more: false, place() {}, move() {} };
    case "upright": {
      const line = a[a.upright];
      return { ...listed(line, 2, (taps) => change({ [a.upright]: taps })), outlines: [{ at: line, closed: false }] };
    }
    case "cam": {
      const edge = surveyed?.edge.length ? surveyed.edge : null;
      const outlines = [{ at: edge ?? a.cam, closed: edge !== null }];
      return { ...listed(a.cam, mostCam, (cam) => change({ cam })), outlines };
    }
  }
  return pointBoard(step, family, a, surveyed, change);
}

function scaleBoard(a: Answers, surveyed: Surveyed | null, change: Change): Board {
  const size = a.sizes[a.size]!;
  const set = (taps: Pixel[]) => {
    const tapped = { ...size, taps: { ...size.taps, [size.kind]: taps } };
    change({ sizes: a.sizes.map((s, i) => (i === a.size ? tapped : s)) });
  };
  return { ...listed(tapsOf(size), tapsFor(size.kind)[1], set), outlines: sizeOutlines(a, surveyed) };
}

/** sizeOutlines draws known sizes: plates as they were found, before that through the taps. */
function sizeOutlines(a: Answers, surveyed: Surveyed | null): Outline[] {
  const plates = begun(a).filter((s) => s.kind === "plate");
  return begun(a).map((s): Outline => {
    const rim = s.kind === "plate" ? surveyed?.rims[plates.indexOf(s)] : undefined;
    return rim ? { at: rim, closed: true } : { at: tapsOf(s), closed: s.kind === "rectangle" && !wanting(s) };
  });
}

function pointBoard(step: StepName, family: Family, a: Answers, surveyed: Surveyed | null, change: Change): Board {
  const tapped = a.points.flatMap((at, i) => (at ? [{ i, at, name: family.points[i]!.name }] : []));
  const next = a.points.indexOf(null);
  const set = (i: number, at: Pixel) => change({ points: a.points.map((old, k) => (k === i ? at : old)) });
  return {
    marks: tapped,
    outlines: step === "values" && surveyed?.edge.length ? [{ at: surveyed.edge, closed: true }] : [],
    more: step === "points" && next >= 0,
    place: (at) => set(next, at),
    move: (k, at) => set(tapped[k]!.i, at),
  };
}

const crowd = 4; // marks; of more, only the last shows its number

/** listed lets taps fill and move a plain list, numbered from 1. */
function listed(taps: Pixel[], most: number, set: (taps: Pixel[]) => void) {
  return {
    marks: taps.map((at, i): Mark => {
      const quiet = most > crowd && i !== taps.length - 1;
      return { at, name: String(i + 1), quiet };
    }),
    more: taps.length < most,
    place: (at: Pixel) => set([...taps, at]),
    move: (i: number, at: Pixel) => set(taps.map((old, k) => (k === i ? at : old))),
  };
}

/** lastTaken returns the change that takes back what was tapped last in the step; null if nothing was. */
export function lastTaken(step: StepName, a: Answers): Partial<Answers> | null {
  const shorter = (taps: Pixel[]) => taps.slice(0, -1);
  switch (step) {
    case "scale": {
      const size = a.sizes[a.size]!;
      const taps = { ...size.taps, [size.kind]: shorter(tapsOf(size)) };
      return tapsOf(size).length ? { sizes: a.sizes.map((s, i) => (i === a.size ? { ...size, taps } : s)) } : null;
    }
    case "upright":
      return a[a.upright].length ? { [a.upright]: shorter(a[a.upright]) } : null;
    case "points": {
      const last = a.points.map((p) => p !== null).lastIndexOf(true);
      return last >= 0 ? { points: a.points.map((p, i) => (i === last ? null : p)) } : null;
    }
    case "cam":
      return a.cam.length ? { cam: shorter(a.cam) } : null;
  }
  return null;
}
