import { describe, expect, it } from "vitest";
import type { Family, Photo, Pixel, Surveyed } from "../src/api.ts";
import { type Answers, blank, placesOf, surveyOf, unknownSize } from "../src/screens/build/answers.ts";
import { boardFor, lastTaken, missing, stepsOf } from "../src/screens/build/taps.ts";

const family = {
  id: "lever",
  name: "Lever",
  about: "",
  points: ["axle", "horn", "grip"].map((name) => ({ name, ask: "", hint: "", picture: "", optional: name === "grip" })),
  values: [],
  cam: null,
} as unknown as Family;
const photo: Photo = { id: "x", width: 2000, height: 1500, type: "image/jpeg", bytes: 1, lens: 0.75 };
const ring: Pixel[] = [
  [100, 0],
  [200, 100],
  [100, 200],
  [0, 100],
  [30, 30],
];

/** answered returns answers with a plate tapped round. */
function answered(part: Partial<Answers> = {}): Answers {
  const plate = { ...unknownSize("plate"), taps: { plate: ring, line: [], rectangle: [] } };
  return { ...blank(family, "Mine"), photo, sizes: [plate], ...part };
}

describe("what is sent of a photo", () => {
  it("is the lens the camera noted, unless the photo was cropped", () => {
    expect(surveyOf(answered())).toMatchObject({ lens: 0.75 });
    expect(surveyOf(answered()).cropped).toBeUndefined();
    const cropped = surveyOf(answered({ cropped: true }));
    expect(cropped.cropped).toBe(true);
    expect(cropped.lens).toBeUndefined();
  });
  it("is each known size by its kind, but none that was only begun by name", () => {
    const line = { ...unknownSize("line"), taps: { plate: [], line: ring.slice(0, 2), rectangle: ring.slice(0, 4) } };
    const s = surveyOf(answered({ sizes: [...answered().sizes, line, unknownSize("rectangle")] }));
    expect(s.plates).toMatchObject([{ rim: ring, diameter: 0.45 }]);
    expect(s.lines).toMatchObject([{ from: [100, 0], to: [200, 100], length: 1 }]);
    expect(s.rectangles).toEqual([]);
  });
  it("is the plumb line or the level one, whichever is chosen, once it has two ends", () => {
    const two: Pixel[] = [
      [1, 2],
      [3, 4],
    ];
    const plumb = surveyOf(answered({ plumb: two, level: two }));
    expect([plumb.plumb, plumb.level]).toEqual([two, undefined]);
    const level = surveyOf(answered({ upright: "level", plumb: two, level: two }));
    expect([level.plumb, level.level]).toEqual([undefined, two]);
    expect(surveyOf(answered({ plumb: two.slice(0, 1) })).plumb).toBeUndefined();
  });
  it("is the nearer side only if it is one", () => {
    expect(surveyOf(answered({ near: "left" })).near).toBe("left");
    expect(surveyOf(answered({ near: "straight" })).near).toBeUndefined();
  });
});

describe("the steps", () => {
  it("ask for the nearer side only if it decides, and for a cam only if there is one", () => {
    expect(stepsOf(family, [])).toEqual(["scale", "upright", "points", "values", "done"]);
    expect(stepsOf(family, ["left", "right"])[1]).toBe("near");
    expect(stepsOf({ ...family, cam: {} } as Family, [])[3]).toBe("cam");
  });
  it("are left when nothing is missing: an optional point may be", () => {
    expect(missing("scale", family, blank(family, ""))).toBe(5);
    expect(missing("scale", family, answered())).toBe(0);
    expect(missing("near", family, answered())).toBe(1);
    expect(missing("near", family, answered({ near: "straight" }))).toBe(0);
    expect(missing("points", family, answered({ points: [[1, 1], null, null] }))).toBe(1);
    expect(missing("points", family, answered({ points: [[1, 1], [2, 2], null] }))).toBe(0);
  });
  it("keep the taps of a kind while another is tried", () => {
    let a = answered();
    const change = (part: Partial<Answers>) => (a = { ...a, ...part });
    change({ sizes: [{ ...a.sizes[0]!, kind: "line" }] });
    boardFor("scale", family, a, null, change).place([7, 7]);
    expect(boardFor("scale", family, a, null, change).marks.map((m) => m.at)).toEqual([[7, 7]]);
    change({ sizes: [{ ...a.sizes[0]!, kind: "plate" }] });
    expect(boardFor("scale", family, a, null, change).marks.map((m) => m.at)).toEqual(ring);
    change(lastTaken("scale", a)!);
    expect(a.sizes[0]!.taps.plate).toEqual(ring.slice(0, 4));
  });
});

it("gives each tapped point the place measured for it", () => {
  const at = (x: number) => ({ at: [x, 0], plus: [0.001, 0.002] });
  const surveyed = { places: [at(1), at(2)] } as unknown as Surveyed;
  const places = placesOf(family, { answers: answered({ points: [[1, 1], null, [2, 2]] }), surveyed });
  expect(places.map((p) => [p.name, p.at[0]])).toEqual([
    ["axle", 1],
    ["grip", 2],
  ]);
});
