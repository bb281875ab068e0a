/** A hand that builds a machine from a photo. */

import type { Page } from "playwright-core";
import type { Preview } from "../src/api.ts";
import type { Visit } from "./browser.ts";
import * as photo from "./photo.ts";

/** to leads to the questions of a family. */
export async function to(v: Visit, base: string, family: string, heading: string): Promise<void> {
  await v.page.locator(".card").first().waitFor();
  await v.page.goto(`${base}#/build/${family}`);
  await v.page.getByRole("heading", { name: heading }).waitFor();
}

export const choose = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType, buffer });

/** unsteady returns how far a finger under the loupe misses, up to half a px of the photo each way: Lehmer's generator, so that every run misses alike. */
let seed = 1;
function unsteady(): number {
  seed = (seed * 48271) % 2147483647; // multiplier: Park, Miller, Stockmeyer 1993
  return seed / 2147483647 - 0.5;
}

/** where returns the place on the screen that shows a px of the photo. */
async function where(v: Visit, [right, down]: photo.Place): Promise<photo.Place> {
  const image = (await v.page.locator(".photo-board image").boundingBox())!;
  const scale = image.width / photo.width;
  return [image.x + right * scale, image.y + down * scale];
}

/** tap puts a finger on a px of the photo, or nearly. */
export async function tap(v: Visit, exact: photo.Place): Promise<void> {
  const [x, y] = await where(v, [exact[0] + unsteady(), exact[1] + unsteady()]);
  if (v.size === "desk") {
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    await v.page.mouse.up();
  } else {
    const session = await v.context.newCDPSession(v.page);
    await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y }] });
    await session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await session.detach();
  }
}

/** nearer comes nearer to a px of the photo: with two fingers that spread, or with the wheel. */
export async function nearer(v: Visit, at: photo.Place): Promise<void> {
  const [x, y] = await where(v, at);
  if (v.size === "desk") {
    await v.page.mouse.move(x, y);
    for (let i = 0; i < 4; i++) await v.page.mouse.wheel(0, -250);
    await v.page.waitForTimeout(100);
    return;
  }
  const session = await v.context.newCDPSession(v.page);
  const fingers = (apart: number) => [
    { x: x - apart, y, id: 0 },
    { x: x + apart, y, id: 1 },
  ];
  await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: fingers(15) });
  for (let apart = 20; apart <= 90; apart += 10) {
    await session.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: fingers(apart) });
    await v.page.waitForTimeout(16);
  }
  await session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await session.detach();
}

export const next = (page: Page) => page.getByRole("button", { name: /^(Next|Skip)$/ }).click();

export async function type(page: Page, label: string, value: number): Promise<void> {
  const field = page.getByRole("textbox", { name: label });
  await field.fill(String(value));
  await field.blur();
}

/** kept returns what the stored machine on the screen does. */
export async function kept(page: Page): Promise<Preview> {
  const id = new URL(page.url()).hash.split("/").at(-1)!;
  return (await page.evaluate(
    (sheet) =>
      fetch("/api/preview", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ sheet, look: { structure: true } }),
      }).then((r) => r.json()),
    id,
  )) as Preview;
}

/** lengthsOff returns the greatest relative error of a distance between two points at least 0.15 m apart, after telling it. */
export function lengthsOff(p: Preview, truth: Record<string, photo.Place>): number {
  const far = (a: photo.Place, b: photo.Place): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const got = new Map(p.structure!.points.map((q) => [q.name, q.at]));
  const names = Object.keys(truth).filter((n) => got.has(n));
  let worst = 0;
  for (const a of names) {
    for (const b of names) {
      const long = far(truth[a]!, truth[b]!);
      if (a < b && long >= 0.15) worst = Math.max(worst, Math.abs(far(got.get(a)!, got.get(b)!) / long - 1));
    }
  }
  console.log(`${p.name}: ${names.length} points, lengths at most ${(100 * worst).toFixed(2)} % off`);
  return worst;
}
