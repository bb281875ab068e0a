import { describe, expect, it } from "vitest";
import { area, head, polygon, polyline, segment } from "../src/drawing/path.ts";
import { rounded, step, ticks } from "../src/drawing/ticks.ts";

describe("ticks", () => {
  it("parts a span by the least round step that is enough", () => {
    expect(step(360, 4)).toBe(100);
    expect(step(41.9, 9)).toBe(5);
    expect(step(0.9, 4)).toBe(0.25);
    expect(step(0, 4)).toBe(1);
  });
  it("stand at multiples of the step, both ends included", () => {
    expect(ticks(0, 400, 4)).toEqual([0, 100, 200, 300, 400]);
    expect(ticks(-1, 1, 2)).toEqual([-1, 0, 1]);
  });
  it("hold nought, so that lengths do not mislead", () => {
    expect(rounded([223, 361], 4)).toEqual([0, 400]);
    expect(rounded([-50, -10], 5)[1]).toBeCloseTo(0);
  });
});

describe("paths", () => {
  it("go through the places in order", () => {
    expect(segment([0, 0], [3, 4])).toBe("M0.0 0.0L3.0 4.0");
    expect(polyline([])).toBe("");
    expect(
      polygon([
        [0, 0],
        [1, 0],
        [1, 1],
      ]),
    ).toBe("M0.0 0.0L1.0 0.0L1.0 1.0Z");
  });
  it("enclose what lies between two lines", () => {
    expect(
      area(
        [
          [0, 0],
          [1, 0],
        ],
        [
          [0, 2],
          [1, 2],
        ],
      ),
    ).toBe("M0.0 0.0L1.0 0.0L1.0 2.0L0.0 2.0Z");
  });
  it("end in a head with its tip at the tip", () => {
    expect(head([0, 0], [10, 0], 5).startsWith("M10.0 0.0")).toBe(true);
  });
});
