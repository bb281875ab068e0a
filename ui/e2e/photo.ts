/** A photo of a lever drawn through a pinhole camera whose place is known. */

import type { Page } from "playwright-core";

type Place = [number, number];

/** The lever at its stop, m, in the plane of motion: axle, horn, grip and balance of the arm. */
export const lever: Record<string, Place> = {
  axle: [0, 1.1],
  horn: [0.52, 1.02],
  grip: [0.71, 1.06],
  balance: [0.31, 1.06],
};
export const plates = 50; // kg
export const armMass = 14; // kg
export const turn = 40; // degrees
export const plateRadius = 0.225; // m, of a competition plate

export const width = 2000; // px
export const height = 1500;

const focal = 0.75 * width; // px
const camera = { at: [0.2, 1.2, 2.4], yaw: 0.1, pitch: -0.06 }; // m and rad: off square by 6 and 3 degrees

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

/** rim returns n places round the rim of the plate on the horn. */
export function rim(n: number): Place[] {
  return Array.from({ length: n }, (_, i): Place => {
    const a = (2 * Math.PI * i) / n;
    return [lever.horn![0] + plateRadius * Math.cos(a), lever.horn![1] + plateRadius * Math.sin(a)];
  });
}

/** photograph draws the picture in the browser and returns it as a PNG. */
export async function photograph(page: Page): Promise<Buffer> {
  const parts = {
    width,
    height,
    plate: rim(90).map(seen),
    arm: [lever.axle!, lever.horn!, lever.grip!].map(seen),
    axle: seen(lever.axle!),
    plumb: [seen([-0.3, 1.7]), seen([-0.3, 0.6])],
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
    path(p.plumb);
    c.lineWidth = 4;
    c.strokeStyle = "#f4f4f4";
    c.stroke();
    path(p.plate);
    c.fillStyle = "#24282c";
    c.fill();
    path(p.arm);
    c.lineWidth = 26;
    c.lineJoin = "round";
    c.strokeStyle = "#5e6f80";
    c.stroke();
    for (const [x, y] of [p.axle, ...p.arm]) {
      c.beginPath();
      c.arc(x!, y!, 9, 0, 7);
      c.fillStyle = "#e8e8e8";
      c.fill();
    }
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer());
    let text = "";
    for (const b of bytes) text += String.fromCharCode(b);
    return btoa(text);
  }, parts);
  return Buffer.from(base64, "base64");
}
