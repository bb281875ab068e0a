import { describe, expect, it } from "vitest";
import type { Curve } from "../src/api.ts";
import { at, ceiling, edge, type Laid, type Ribbon, ribbonOf, runs, sure } from "../src/drawing/ribbon.ts";

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
