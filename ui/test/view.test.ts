import { describe, expect, it } from "vitest";
import { capsule } from "../src/drawing/capsule.ts";
import { type Plane, product, through } from "../src/drawing/homography.ts";
import { place, widthOf } from "../src/drawing/labels.ts";
import { around, moved, nearest } from "../src/drawing/place.ts";
import { fit, onGround, onScreen, pinched, within, zoomed } from "../src/drawing/view.ts";

const size = { width: 400, height: 300 };

describe("a view", () => {
  const view = fit({ low: [0, 0], high: [2, 1] }, size, 20);
  it("shows the box as large as it goes, in the middle, up as up", () => {
    expect(view.scale).toBe(180); // 360 px for 2 m; the height would allow 260
    expect(onScreen(view, [1, 0.5])).toEqual([200, 150]);
    expect(onScreen(view, [1, 1])[1]).toBeLessThan(150);
  });
  it("finds the ground again under every px", () => {
    const p = onGround(view, onScreen(view, [0.37, -2.1]));
    expect(p[0]).toBeCloseTo(0.37, 12);
    expect(p[1]).toBeCloseTo(-2.1, 12);
  });
  it("holds the place under the finger while it magnifies", () => {
    const under = onGround(view, [70, 90]);
    const p = onScreen(zoomed(view, [70, 90], 3), under);
    expect(p[0]).toBeCloseTo(70, 9);
    expect(p[1]).toBeCloseTo(90, 9);
  });
  it("follows two fingers with the places under them", () => {
    const from: [[number, number], [number, number]] = [
      [100, 100],
      [200, 100],
    ];
    const to: [[number, number], [number, number]] = [
      [90, 120],
      [290, 120],
    ];
    const after = pinched(view, from, to);
    for (const i of [0, 1] as const) {
      const p = onScreen(after, onGround(view, from[i]));
      expect(p[0]).toBeCloseTo(to[i][0], 9);
      expect(p[1]).toBeCloseTo(to[i][1], 9);
    }
  });
  it("is magnified twelve times at most", () => {
    expect(within(zoomed(view, [0, 0], 40), view, [0, 0]).scale / view.scale).toBeCloseTo(12, 9);
  });
});

describe("places", () => {
  it("move with their link: turned about the origin, then shifted", () => {
    const p = moved({ x: 1, y: 2, turn: Math.PI / 2 })([3, 0]);
    expect(p[0]).toBeCloseTo(1, 12);
    expect(p[1]).toBeCloseTo(5, 12);
  });
  it("have a nearest and a box, unless there are none", () => {
    expect(
      nearest(
        [
          [0, 0],
          [5, 5],
        ],
        [4, 4],
      ),
    ).toBe(1);
    expect(nearest([], [4, 4])).toBe(-1);
    expect(around([])).toBeNull();
    expect(
      around([
        [1, 5],
        [3, -1],
      ]),
    ).toEqual({ low: [1, -1], high: [3, 5] });
  });
});

describe("mappings of the plane", () => {
  it("are done one after the other", () => {
    const turn: Plane = [0, -1, 0, 1, 0, 0, 0, 0, 1]; // a quarter turn
    const lean: Plane = [1, 0, 4, 0, 1, 2, 0.1, 0.2, 1];
    const p: [number, number] = [2, 3];
    const [x, y] = through(product(lean, turn), p);
    const [u, v] = through(lean, through(turn, p));
    expect(x).toBeCloseTo(u, 12);
    expect(y).toBeCloseTo(v, 12);
  });
});

describe("labels", () => {
  it("keep off each other, off what is avoided, and within the picture", () => {
    const all = [0, 1, 2, 3].map((i) => ({ at: [200, 150] as [number, number], text: `label ${i}`, role: "ink" }));
    const placed = place(all, size, [[220, 150]]);
    expect(placed.length).toBe(4);
    const boxes = placed.map((l) => ({ l: l.x, r: l.x + widthOf(l.text), t: l.y - 12, b: l.y + 3 }));
    boxes.forEach((a, i) => {
      expect(a.l).toBeGreaterThanOrEqual(0);
      expect(a.l > 220 || a.r < 220 || a.t > 150 || a.b < 150).toBe(true);
      for (const b of boxes.slice(i + 1)) expect(a.r <= b.l || b.r <= a.l || a.b <= b.t || b.b <= a.t).toBe(true);
    });
  });
  it("are left out where there is no room", () => {
    expect(
      place([{ at: [10, 10], text: "far too long for this", role: "ink" }], { width: 60, height: 20 }, []),
    ).toEqual([]);
  });
});

describe("a body segment", () => {
  it("is touched by its outer tangents", () => {
    // Discs of 3 and 1 at a distance of 4: the tangent leaves at arccos((3 - 1) / 4) = 60 degrees.
    const d = capsule([0, 0], 3, [4, 0], 1);
    expect(d.startsWith(`M${(3 * Math.cos(Math.PI / 3)).toFixed(1)} ${(3 * Math.sin(Math.PI / 3)).toFixed(1)}`)).toBe(
      true,
    );
  });
  it("is one disc if the other lies within it", () => {
    expect(capsule([0, 0], 5, [1, 0], 2).match(/a5\.0/g)?.length).toBe(2);
  });
});
