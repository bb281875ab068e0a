import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Preview } from "../src/api.ts";
import { accessible, launch, leave, type SizeName, shot, sizes, type Visit, visit } from "./browser.ts";
import * as photo from "./photo.ts";
import { Program } from "./program.ts";

const program = new Program();
let browser: Browser;

beforeAll(async () => {
  browser = await launch();
  await program.start();
});

afterAll(async () => {
  await browser.close();
  await program.end();
});

async function toLever(v: Visit): Promise<void> {
  await v.page.locator(".card").first().waitFor();
  await v.page.goto(`${program.base}#/build/lever`);
  await v.page.getByRole("heading", { name: "Lever" }).waitFor();
}

const choose = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType, buffer });

/** unsteady returns how far a finger under the loupe misses, up to half a px of the photo each way: Lehmer's generator, so that every run misses alike. */
let seed = 1;
function unsteady(): number {
  seed = (seed * 48271) % 2147483647; // multiplier: Park, Miller, Stockmeyer 1993
  return seed / 2147483647 - 0.5;
}

/** tap puts a finger on the place of the photo, px of the photo. */
async function tap(v: Visit, exact: [number, number]): Promise<void> {
  const [right, down] = [exact[0] + unsteady(), exact[1] + unsteady()];
  const image = (await v.page.locator(".photo-board image").boundingBox())!;
  const scale = image.width / photo.width;
  const [x, y] = [image.x + right * scale, image.y + down * scale];
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

const next = (page: Page) => page.getByRole("button", { name: "Next" }).click();

async function type(page: Page, label: string, value: number): Promise<void> {
  const field = page.getByRole("textbox", { name: label });
  await field.fill(String(value));
  await field.blur();
}

describe.each(Object.keys(sizes) as SizeName[])("building on a %s", (size) => {
  test("a lever from a photo comes out true to its lengths and its force", async () => {
    const v = await visit(browser, size, program.address);
    await toLever(v);
    await choose(v.page, "lever.png", "image/png", await photo.photograph(v.page));
    await v.page.locator(".photo-board image").waitFor();
    for (const p of photo.rim(8)) await tap(v, photo.seen(p));
    await accessible(v.page);
    await shot(v, "build-scale");
    await next(v.page);
    const near = v.page.getByText("Which side of the machine was nearer to the camera?");
    const plumb = v.page.getByRole("heading", { name: "Plumb line" });
    await plumb.or(near).first().waitFor();
    if (await near.isVisible()) {
      // the camera was turned so that what lies to the right is further off
      await v.page.getByRole("radio", { name: "Left" }).check({ force: true });
      await next(v.page);
      await plumb.waitFor();
    }
    await tap(v, photo.seen([-0.3, 1.7]));
    await tap(v, photo.seen([-0.3, 0.6]));
    await shot(v, "build-plumb");
    await next(v.page);
    await v.page.getByRole("heading", { name: "Where does the arm turn?" }).waitFor();
    for (const name of ["axle", "horn", "grip", "balance"]) await tap(v, photo.seen(photo.lever[name]!));
    await accessible(v.page);
    await shot(v, "build-points");
    await next(v.page);
    await v.page.getByRole("textbox", { name: "Its name" }).fill("Photographed lever");
    await type(v.page, "How much is on it?", photo.plates);
    await type(v.page, "What does the arm weigh?", photo.armMass);
    await type(v.page, "How far does the arm turn?", photo.turn);
    await shot(v, "build-values");
    await next(v.page);
    await v.page.locator(".build-preview .ribbon").waitFor();
    await accessible(v.page);
    await shot(v, "build-look");
    await v.page.getByRole("button", { name: "Put it in the room" }).click();
    await v.page.locator(".drawing .ribbon").waitFor();
    await v.page.locator(".backdrop img").waitFor();
    await shot(v, "build-done");
    await held(v.page);
    await leave(v);
  });

  test("what is no photo is refused with a cure, and nothing is lost", async () => {
    const v = await visit(browser, size, program.address);
    await toLever(v);
    await choose(v.page, "notes.jpg", "image/jpeg", Buffer.from("not a photo at all"));
    const alert = v.page.getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toContain("Choose a JPEG or PNG");
    await accessible(v.page);
    await shot(v, "build-refused");
    await choose(v.page, "lever.png", "image/png", await photo.photograph(v.page));
    await v.page.locator(".photo-board image").waitFor();
    // both ends of the known length in one place
    await v.page.getByRole("radio", { name: "A length" }).check({ force: true });
    await tap(v, [600, 500]);
    await tap(v, [700, 500]);
    await type(v.page, "Length", 0);
    await next(v.page);
    await alert.waitFor();
    // four corners in a line
    await v.page.getByRole("radio", { name: "A rectangle" }).check({ force: true });
    for (const right of [300, 600, 900, 1200]) await tap(v, [right, 700]);
    await next(v.page);
    await alert.waitFor();
    await shot(v, "build-corners");
    await leave(v);
  });

  test("a lever from the tape", async () => {
    const v = await visit(browser, size, program.address);
    await toLever(v);
    await v.page.getByRole("radio", { name: "With the tape" }).check({ force: true });
    await v.page.locator(".build-preview .ribbon").waitFor();
    await type(v.page, "horn, forward", 600);
    await expect.poll(() => v.page.locator(".verdict").textContent()).toContain("60");
    await accessible(v.page);
    await shot(v, "build-tape");
    await v.page.getByRole("textbox", { name: "Its name" }).fill("Taped lever");
    await v.page.getByRole("button", { name: "Put it in the room" }).click();
    await v.page.getByRole("heading", { name: "Taped lever" }).waitFor();
    await leave(v);
  });
});

const gravity = 9.80665; // m/s², 3rd CGPM (1901)

/** held holds the stored machine against the lever that was photographed: lengths within 1 %, the curve within 3 %. */
async function held(page: Page): Promise<void> {
  const id = new URL(page.url()).hash.split("/").at(-1)!;
  const p = (await page.evaluate(
    (sheet) =>
      fetch("/api/preview", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ sheet, look: { structure: true } }),
      }).then((r) => r.json()),
    id,
  )) as Preview;
  const at = (name: string) => p.structure!.points.find((q) => q.name === name)!.at;
  const long = (a: [number, number], b: [number, number]): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const { lever } = photo;
  for (const [a, b] of [
    ["axle", "horn"],
    ["axle", "grip"],
    ["horn", "grip"],
  ] as const) {
    const error = long(at(a), at(b)) / long(lever[a]!, lever[b]!) - 1;
    console.log(`${a} to ${b}: ${(100 * error).toFixed(2)} % off`);
    expect(Math.abs(error)).toBeLessThan(0.01);
  }
  // A weight m at horizontal distance x from the axle asks m·g·x of moment; the force
  // square to the arm at the grip, distance r from the axle, is the sum over r.
  const c = p.curve!;
  const r = long(lever.axle!, lever.grip!);
  c.driver.forEach((angle, k) => {
    const x = (name: string): number => {
      const [dx, dy] = [lever[name]![0] - lever.axle![0], lever[name]![1] - lever.axle![1]];
      return dx * Math.cos(angle) - dy * Math.sin(angle);
    };
    const truth = (gravity * (photo.plates * x("horn") + photo.armMass * x("balance"))) / r;
    expect(Math.abs(c.hold[k]! / truth - 1)).toBeLessThan(0.03);
  });
  expect(Math.abs(c.driver.at(-1)! - c.driver[0]!)).toBeCloseTo((photo.turn * Math.PI) / 180, 3);
}
