import { describe, expect, it } from "vitest";
import type { Edit, Preview } from "../src/api.ts";
import { carried } from "../src/drawing/carried.ts";
import { back, moved } from "../src/drawing/place.ts";

describe("a pose", () => {
  it.each([
    [{ x: 0.3, y: -1.2, turn: 0.7 }, [0.5, 2]],
    [{ x: 0, y: 0, turn: Math.PI }, [1, 0]],
    [{ x: -4, y: 2, turn: -2.9 }, [0, 0]],
  ] as const)("%o is undone by going back", (pose, p) => {
    const q = back(pose)(moved(pose)([p[0], p[1]]));
    expect(q[0]).toBeCloseTo(p[0], 12);
    expect(q[1]).toBeCloseTo(p[1], 12);
  });
});

// An arm turned by a quarter about the origin: what lies at (0, 2) now was at (2, 0) when it was measured.
const quarter = { x: 0, y: 0, turn: Math.PI / 2 };
const still = { x: 0, y: 0, turn: 0 };
const preview = {
  structure: {
    points: [
      { name: "grip", at: [1, 0], links: ["arm"], fixed: false },
      { name: "axle", at: [0, 0], links: ["ground", "arm"], fixed: true },
    ],
  },
  drawing: { links: [{ name: "ground" }, { name: "arm" }] },
  curve: { driver: [0, Math.PI / 2] },
  frames: [
    { position: 0, poses: [still, still] },
    { position: 1, poses: [still, quarter] },
  ],
} as unknown as Preview;

describe("points left by a finger", () => {
  const at = (edits: Edit[]) => carried(preview, edits).structure!.points.map((p) => p.at);
  it("are told in the measured pose", () => {
    const [grip, axle] = at([{ point: { point: "grip", to: [0, 2], driver: Math.PI / 2 } }]);
    expect(grip![0]).toBeCloseTo(2, 12);
    expect(grip![1]).toBeCloseTo(0, 12);
    expect(axle).toEqual([0, 0]);
  });
  it("lie where the last of several drags put them", () => {
    const drag = (x: number): Edit => ({ point: { point: "grip", to: [x, 0], driver: 0 } });
    expect(at([drag(3), drag(4)])[0]).toEqual([4, 0]);
  });
  it("of the ground stay as they were put", () => {
    expect(at([{ point: { point: "axle", to: [0, 1], driver: Math.PI / 2 } }])[1]).toEqual([0, 1]);
  });
});
