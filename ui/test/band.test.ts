import { expect, test } from "vitest";
import type { Band, Curve } from "../src/api.ts";
import { bandAbout } from "../src/drawing/band.ts";

const curve = (travel: number[], lift: (number | null)[]): Curve => ({ travel, lift }) as Curve;

test("a band keeps its width at the same share of the travel", () => {
  const before = curve([0, 0.5, 1], [100, 200, 300]);
  const band = { phase: "lifting", low: [90, 180, 270], high: [110, 225, 330] } as unknown as Band;
  const now = curve(
    [0, 0.25, 0.5, 0.75, 1].map((s) => 2 * s),
    [50, 60, 70, null, 90],
  );
  const b = bandAbout(band, before, now);
  // start ±10, middle -20 +25, end ±30, whatever the force has become
  expect([b.low[0], b.high[0]]).toEqual([40, 60]);
  expect([b.low[2], b.high[2]]).toEqual([50, 95]);
  expect([b.low[4], b.high[4]]).toEqual([60, 120]);
  expect([b.low[3], b.high[3]]).toEqual([null, null]); // no force, no band
  expect(b.low.length).toBe(5);
});
