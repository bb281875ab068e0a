/** What has been answered while a machine is built, and the requests it makes. */

import type { Build, Family, NamedNumber, NamedPlace, Photo, PhotoSide, Pixel, Survey, Surveyed } from "../../api.ts";

export type ScaleKind = "plate" | "line" | "rectangle";

/** Answers is everything tapped and typed; lengths in m. */
export interface Answers {
  photo: Photo | null;
  scale: ScaleKind;
  scaleTaps: Pixel[];
  diameter: number;
  length: number;
  width: number;
  height: number;
  plus: number;
  nearer: number; // how far what is known stands in front of the plane of motion
  near: PhotoSide | "";
  plumb: Pixel[];
  mirror: boolean;
  points: (Pixel | null)[]; // by the family's questions; null is not answered
  cam: Pixel[];
  values: NamedNumber[];
  name: string;
}

/** blank returns answers to a family's questions before any is given: a competition plate is 450 mm. */
export function blank(family: Family, name: string): Answers {
  return {
    photo: null,
    scale: "plate",
    scaleTaps: [],
    diameter: 0.45,
    length: 1,
    width: 0.6,
    height: 0.4,
    plus: 0.002,
    nearer: 0,
    near: "",
    plumb: [],
    mirror: false,
    points: family.points.map(() => null),
    cam: [],
    values: family.values.map((v) => ({ name: v.name, value: v.usual, plus: 0 })),
    name,
  };
}

/** scaleNeeds returns how many taps the kind of scale needs at least and takes at most. */
export function scaleNeeds(kind: ScaleKind): [number, number] {
  if (kind === "line") return [2, 2];
  return kind === "rectangle" ? [4, 4] : [5, 12];
}

/** surveyOf returns the request that measures everything tapped. */
export function surveyOf(a: Answers): Survey {
  if (!a.photo) throw new Error("no photo to measure on");
  const tapped = a.points.filter((p): p is Pixel => p !== null);
  const survey: Survey = {
    width: a.photo.width,
    height: a.photo.height,
    mirror: a.mirror,
    points: tapped,
  };
  const taps = a.scaleTaps;
  if (a.scale === "plate") survey.plate = { rim: taps, diameter: a.diameter, plus: a.plus, nearer: a.nearer };
  else if (a.scale === "line")
    survey.scale = { from: taps[0]!, to: taps[1]!, length: a.length, plus: a.plus, nearer: a.nearer };
  else
    survey.rectangle = {
      corners: taps.slice(0, 4) as [Pixel, Pixel, Pixel, Pixel],
      width: a.width,
      height: a.height,
      plus: a.plus,
      nearer: a.nearer,
    };
  if (a.near) survey.near = a.near;
  if (a.cam.length) survey.outline = a.cam;
  if (a.plumb.length === 2) survey.plumb = [a.plumb[0]!, a.plumb[1]!];
  if (tapped[0]) survey.origin = tapped[0];
  return survey;
}

/** buildOf returns the request that makes the sheet, from what was measured by surveyOf. */
export function buildOf(family: Family, a: Answers, surveyed: Surveyed, measured: string): Build {
  const points: NamedPlace[] = [];
  let i = 0;
  family.points.forEach((asked, k) => {
    if (a.points[k] === null) return;
    const place = surveyed.places[i++];
    if (place) points.push({ name: asked.name, at: place.at, plus: place.plus });
  });
  return {
    name: a.name,
    points,
    values: a.values,
    ...(surveyed.outline.length ? { cam: surveyed.outline } : {}),
    measured,
    look: { frames: "all", structure: true },
  };
}
