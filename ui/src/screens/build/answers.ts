/** What has been answered while a machine is built, and the requests it makes. */

import type { Build, Family, NamedNumber, NamedPlace, Photo, PhotoSide, Pixel, Survey, Surveyed } from "../../api.ts";

export type SizeKind = "plate" | "line" | "rectangle";

/** KnownSize is something of known size in the photo; lengths in m. */
export interface KnownSize {
  kind: SizeKind;
  taps: Record<SizeKind, Pixel[]>; // kept for each kind, so that trying another loses nothing
  diameter: number;
  length: number;
  width: number;
  height: number;
  plus: number;
  nearer: number; // how far it stands in front of the plane of motion
}

/** Answers is everything tapped and typed. */
export interface Answers {
  photo: Photo | null;
  sizes: KnownSize[];
  size: number; // of these, the one that is being tapped
  cropped: boolean;
  near: PhotoSide | "straight" | null; // null is not answered
  upright: "plumb" | "level";
  plumb: Pixel[];
  level: Pixel[];
  mirror: boolean;
  points: (Pixel | null)[]; // by the family's questions; null is not answered
  cam: Pixel[];
  values: NamedNumber[];
  name: string;
}

export const mostSizes = 5;
export const leastTraced = 5; // places from which on an outline can be shown

/** unknownSize returns something to be tapped and measured: a competition plate is 450 mm across. */
export const unknownSize = (kind: SizeKind): KnownSize => ({
  kind,
  taps: { plate: [], line: [], rectangle: [] },
  diameter: 0.45,
  length: 1,
  width: 0.6,
  height: 0.4,
  plus: 0.002,
  nearer: 0,
});

/** blank returns answers to a family's questions before any is given. */
export function blank(family: Family, name: string): Answers {
  return {
    ...untapped(family),
    values: family.values.map((v) => ({ name: v.name, value: v.usual, plus: 0 })),
    name,
  };
}

/** untapped returns what is answered on a photo before there is one. */
export const untapped = (family: Family): Omit<Answers, "values" | "name"> => ({
  photo: null,
  sizes: [unknownSize("plate")],
  size: 0,
  cropped: false,
  near: null,
  upright: "plumb",
  plumb: [],
  level: [],
  mirror: false,
  points: family.points.map(() => null),
  cam: [],
});

/** tapsFor returns how many taps a kind of known size needs at least and takes at most. */
export function tapsFor(kind: SizeKind): [number, number] {
  if (kind === "line") return [2, 2];
  return kind === "rectangle" ? [4, 4] : [5, 12];
}

/** tapsOf returns the taps of a known size. */
export const tapsOf = (s: KnownSize): Pixel[] => s.taps[s.kind];

/** wanting returns how many taps a known size still needs. */
export const wanting = (s: KnownSize): number => Math.max(0, tapsFor(s.kind)[0] - tapsOf(s).length);

/** begun returns the known sizes that count: all that have been tapped at all, or the only one. */
export const begun = (a: Answers): KnownSize[] =>
  a.sizes.length === 1 ? a.sizes : a.sizes.filter((s) => tapsOf(s).length > 0);

/** surveyOf returns the request that measures everything tapped. */
export function surveyOf(a: Answers): Survey {
  if (!a.photo) throw new Error("no photo to measure on");
  const points = a.points.filter((p): p is Pixel => p !== null);
  const survey: Survey = { width: a.photo.width, height: a.photo.height, mirror: a.mirror, points, ...sizesOf(a) };
  if (a.cropped) survey.cropped = true;
  else if (a.photo.lens) survey.lens = a.photo.lens;
  if (a.near && a.near !== "straight") survey.near = a.near;
  if (a.cam.length >= leastTraced) survey.outline = a.cam;
  const line = a[a.upright];
  if (line.length === 2) survey[a.upright] = [line[0]!, line[1]!];
  if (points[0]) survey.origin = points[0];
  return survey;
}

function sizesOf(a: Answers): Pick<Survey, "lines" | "rectangles" | "plates"> {
  const sizes = begun(a).map((s) => ({ ...s, at: tapsOf(s) }));
  return {
    plates: sizes
      .filter((s) => s.kind === "plate")
      .map(({ at, diameter, plus, nearer }) => ({ rim: at, diameter, plus, nearer })),
    lines: sizes
      .filter((s) => s.kind === "line")
      .map(({ at, length, plus, nearer }) => ({ from: at[0]!, to: at[1]!, length, plus, nearer })),
    rectangles: sizes
      .filter((s) => s.kind === "rectangle")
      .map(({ at, width, height, plus, nearer }) => ({
        corners: at as [Pixel, Pixel, Pixel, Pixel],
        width,
        height,
        plus,
        nearer,
      })),
  };
}

/** Survey with the answers it was made of, whose tapped points are its places in order. */
export interface Measure {
  answers: Answers;
  surveyed: Surveyed;
}

/** placesOf returns the family's points as measured. */
export function placesOf(family: Family, m: Measure): NamedPlace[] {
  const tapped = family.points.filter((_, i) => m.answers.points[i] !== null);
  return tapped.flatMap((p, i) => {
    const place = m.surveyed.places[i];
    return place ? [{ name: p.name, at: place.at, plus: place.plus }] : [];
  });
}

/** buildOf returns the request that makes the sheet. */
export function buildOf(family: Family, m: Measure, how: string): Build {
  return {
    name: m.answers.name,
    points: placesOf(family, m),
    values: m.answers.values,
    ...(m.surveyed.outline.length ? { cam: m.surveyed.outline } : {}),
    measured: how,
    look: { frames: "all", structure: true },
  };
}
