import { describe, expect, it } from "vitest";
import type { Curve } from "../src/api.ts";
import {
  above,
  at,
  below,
  ceiling,
  edge,
  fitWith,
  type Laid,
  middleOf,
  mostCan,
  type Ribbon,
  ribbonOf,
  runs,
  sure,
} from "../src/drawing/ribbon.ts";

/** curve returns a curve along a straight path of 1 m with the given lifting forces. */
function curve(lift: (number | null)[]): Curve {
  const n = lift.length - 1;
  return {
    travel: lift.map((_, k) => k / n),
    driver: [],
    driverUnit: "m",
    contact: lift.map((_, k): [number, number] => [k / n, 0]),
    normal: lift.map((): [number, number] => [0, -1]),
    hold: lift,
    lift,
    lower: lift,
    loadTravel: [],
    liftRatio: [],
    mass: [],
    gap: [],
    rubs: true,
  };
}

const laid = (r: Ribbon): Laid => ({ ribbon: r, view: { scale: 100, origin: [10, 200] }, perNewton: 0.5, full: 120 });

describe("a ribbon", () => {
  it("is parted at the thirds of the travel, not of the positions", () => {
    const c = curve([1, 1, 1, 1, 1, 1, 1]);
    c.travel = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.9];
    expect(ribbonOf(c, "lifting", null).thirds).toEqual([3, 5]);
  });
  it("stands square to the path, as wide as the force, on the side of the normal", () => {
    const r = ribbonOf(curve([100, 100]), "lifting", null);
    expect(edge(laid(r), 0, 0)).toEqual([10, 200]);
    expect(edge(laid(r), 1, 100)).toEqual([110, 250]); // the normal points down, on the screen too
  });
  it("ends at its full width however large the force", () => {
    const r = ribbonOf(curve([1e6, 100]), "lifting", null);
    expect(edge(laid(r), 0, 1e6)[1]).toBe(200 + 120 * 0.5);
    expect(edge(laid(r), 0, -1e6)[1]).toBe(200 - 120 * 0.5);
  });
  it("wears a band of its own phase only", () => {
    const c = curve([100, 100]);
    const band = { low: [90, 90], high: [110, 110] };
    expect(ribbonOf(c, "lifting", { phase: "lifting", ...band }).high).toEqual([110, 110]);
    expect(ribbonOf(c, "lifting", { phase: "holding", ...band }).high).toEqual([100, 100]);
    expect(ribbonOf({ ...c, rubs: false }, "lifting", { phase: "holding", ...band }).high).toEqual([110, 110]);
  });
  it("is parted by gaps", () => {
    const { force } = ribbonOf(curve([1, 2, null, 4, 5, null, 7]), "lifting", null);
    expect(runs(force)).toEqual([
      [0, 2],
      [3, 5],
    ]); // one place by itself has no length to be drawn along
  });
  it("is sure up to the end of the band nearer to nothing", () => {
    expect(sure(10, 20)).toBe(10);
    expect(sure(-20, -10)).toBe(-10);
    expect(sure(-5, 5)).toBe(0);
  });
});

describe("what a person can produce", () => {
  const can = [50, 150, Number.NaN, 250, 300, 350, 90];
  it("is parted at a bound", () => {
    expect(below(can, 200)).toEqual([50, 150, Number.NaN, Number.NaN, Number.NaN, Number.NaN, 90]);
    expect(above(can, 200)).toEqual([Number.NaN, Number.NaN, Number.NaN, 250, 300, 350, Number.NaN]);
  });
  it("is named in the middle of its longest stretch", () => {
    expect(middleOf(can)).toBe(5); // of the positions 3 to 6
    expect(middleOf([Number.NaN, Number.NaN])).toBeUndefined();
  });
  it("has room in the picture as far out as it is drawn", () => {
    const r: Ribbon = { ...ribbonOf(curve([100, 100]), "lifting", null), canMost: [1e6, Number.NaN] };
    const size = { width: 900, height: 300 };
    const view = fitWith({ low: [0, 0], high: [1, 1] }, r, 60, 100, size, 10);
    const [, down] = edge({ ribbon: r, view, perNewton: 0.6, full: mostCan * 100 }, 0, 1e6);
    expect(down).toBeGreaterThan(275); // it hangs below the machine, so it is what decides
    expect(down).toBeLessThan(295); // the margin is 10 px; the fit is found in rounds
  });
});

describe("the ceiling of a ribbon", () => {
  it("is its greatest force", () => {
    expect(ceiling(ribbonOf(curve([10, 30, 20]), "lifting", null))).toBe(30);
  });
  it("leaves a spike standing out: three times what nine places in ten keep below", () => {
    const forces = [...Array.from({ length: 19 }, () => 100), 1e6];
    expect(ceiling(ribbonOf(curve(forces), "lifting", null))).toBe(300);
  });
  it("is never nothing", () => {
    expect(ceiling(ribbonOf(curve([null, null]), "lifting", null))).toBe(1);
    expect(ceiling(ribbonOf(curve([0, 0]), "lifting", null))).toBe(1);
  });
});

describe("a place of the travel", () => {
  it("is the nearest position, both ends included", () => {
    const travel = [0, 1, 2, 3, 4];
    expect([0, 0.1, 0.13, 0.5, 1].map((share) => at(travel, share))).toEqual([0, 0, 1, 2, 4]);
    expect(at([0], 1)).toBe(0);
  });
});
