/** Photos of machines drawn through a pinhole camera whose place is known. */

import type { Page } from "playwright-core";

export type Place = [number, number];

export const width = 2000; // px
export const height = 1500;

const focal = 0.75 * width; // px
const camera = { at: [0.2, 1.2, 2.4], yaw: 0.1, pitch: -0.06 }; // m and rad: off square by 6 and 3 degrees, the left nearer

/** seen returns where the camera shows a place of the plane of motion, px right and down. */
export function seen([x, y]: Place): Place {
  const [dx, dy, dz] = [x - camera.at[0]!, y - camera.at[1]!, -camera.at[2]!];
  // turn the world against the camera: first yaw about the upright, then pitch about what is level
  const [cy, sy] = [Math.cos(camera.yaw), Math.sin(camera.yaw)];
  const [rx, rz] = [cy * dx + sy * dz, -sy * dx + cy * dz];
  const [cp, sp] = [Math.cos(camera.pitch), Math.sin(camera.pitch)];
  const [uy, uz] = [cp * dy + sp * rz, -sp * dy + cp * rz];
  const depth = -uz;
  return [width / 2 + (focal * rx) / depth, height / 2 - (focal * uy) / depth];
}

/** around returns n places round a middle, each as far off as radius says for its direction. */
export const around = (mid: Place, radius: (angle: number) => number, n: number): Place[] =>
  Array.from({ length: n }, (_, i): Place => {
    const a = (2 * Math.PI * i) / n;
    return [mid[0] + radius(a) * Math.cos(a), mid[1] + radius(a) * Math.sin(a)];
  });

const plateRadius = 0.225; // m, of a competition plate

/** plate returns n places round the rim of a competition plate. */
export const plate = (mid: Place, n: number): Place[] => around(mid, () => plateRadius, n);

/** The lever at its stop, m, in the plane of motion: axle, horn, grip and balance of the arm. */
export const lever = {
  points: { axle: [0, 1.1], horn: [0.52, 1.02], grip: [0.71, 1.06], balance: [0.31, 1.06] } as Record<string, Place>,
  plumb: [
    [-0.3, 1.7],
    [-0.3, 0.6],
  ] as [Place, Place],
  plates: 50, // kg
  armMass: 14, // kg
  turn: 40, // degrees
};

const snail = (a: number): number => 0.1 + 0.025 * Math.cos(a - 0.5) + 0.005 * Math.cos(2 * a); // m

/** An arm with a cam at its stop, with a plate leaning on the frame and a floor beam of known length. */
export const cam = {
  points: {
    axle: [0.1, 0.9],
    grip: [0.42, 0.85],
    sheave: [-0.6, 1.6],
    "stack top": [-0.65, 0.7],
    "rope touches": [0.1, 1.08],
    "rope end": [0.205, 0.93],
  } as Record<string, Place>,
  outline: (n: number): Place[] => around([0.1, 0.9], snail, n),
  plateAt: [0.7, 0.5] as Place,
  beam: [
    [-0.9, 0.2],
    [1.2, 0.2],
  ] as [Place, Place],
  beamLength: 2100, // mm
  stack: 45, // kg
  armMass: 6, // kg
  sheave: 100, // mm
  turn: 80, // degrees
};

/** Scene is what a photo shows, m: areas below, then bars, cords and dots. */
interface Scene {
  areas: Place[][];
  bars: Place[][];
  cords: Place[][];
  dots: Place[];
}

export const leverScene: Scene = {
  areas: [plate(lever.points.horn!, 90)],
  bars: [[lever.points.axle!, lever.points.horn!, lever.points.grip!]],
  cords: [lever.plumb],
  dots: Object.values(lever.points),
};

export const camScene: Scene = {
  areas: [plate(cam.plateAt, 90), cam.outline(90)],
  bars: [[cam.points.axle!, cam.points.grip!], cam.beam],
  cords: [[cam.points["stack top"]!, cam.points.sheave!, cam.points["rope touches"]!]],
  dots: Object.values(cam.points),
};

/** photograph draws the scene in the browser and returns the picture as a PNG. */
export async function photograph(page: Page, scene: Scene): Promise<Buffer> {
  const through = (paths: Place[][]) => paths.map((p) => p.map(seen));
  const parts = {
    width,
    height,
    areas: through(scene.areas),
    bars: through(scene.bars),
    cords: through(scene.cords),
    dots: scene.dots.map(seen),
  };
  const base64 = await page.evaluate(async (p) => {
    const canvas = new OffscreenCanvas(p.width, p.height);
    const c = canvas.getContext("2d")!;
    c.fillStyle = "#b9b2a6";
    c.fillRect(0, 0, p.width, p.height);
    const path = (places: number[][]) => {
      c.beginPath();
      for (const [x, y] of places) c.lineTo(x!, y!);
    };
    c.fillStyle = "#24282c";
    for (const a of p.areas) {
      path(a);
      c.fill();
    }
    c.lineJoin = "round";
    const stroke = (paths: number[][][], lineWidth: number, colour: string) => {
      c.lineWidth = lineWidth;
      c.strokeStyle = colour;
      for (const s of paths) {
        path(s);
        c.stroke();
      }
    };
    stroke(p.bars, 26, "#5e6f80");
    stroke(p.cords, 4, "#f4f4f4");
    c.fillStyle = "#e8e8e8";
    for (const [x, y] of p.dots) {
      c.beginPath();
      c.arc(x!, y!, 9, 0, 7);
      c.fill();
    }
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer());
    let text = "";
    for (const b of bytes) text += String.fromCharCode(b);
    return btoa(text);
  }, parts);
  return Buffer.from(base64, "base64");
}
