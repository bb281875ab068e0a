import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import type { Build, Preview } from "../src/api.ts";
import { accessible, leave, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";
import { cam, camScene, photograph, plate, seen } from "./photo.ts";
import { choose, kept, lengthsOff, nearer, next, tap, to, type } from "./tapping.ts";

const at = house();

const hostile = `<img src=x onerror="window.hurt=1">`;

describe.each(Object.keys(sizes) as SizeName[])("tracing a cam on a %s", (size) => {
  test("a plate and a length take out the perspective, a level beam sets up, and the cam comes out smooth", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await to(v, at.program.base, "cam", "Arm with a cam");
    await choose(v.page, "cam.png", "image/png", await photograph(v.page, camScene));
    await v.page.locator(".photo-board image").waitFor();
    for (const p of plate(cam.plateAt, 8)) await tap(v, seen(p));
    await v.page.getByRole("button", { name: "Add another known size" }).click();
    for (const p of cam.beam) await tap(v, seen(p));
    await type(v.page, "Length", cam.beamLength);
    await accessible(v.page);
    await shot(v, "cam-scale");
    await next(v.page);
    // the two sizes together leave no question which side was nearer
    await v.page.getByRole("heading", { name: "Which way is up?" }).waitFor();
    await v.page.getByRole("radio", { name: "Something is level" }).check({ force: true });
    for (const p of cam.beam) await tap(v, seen(p));
    await shot(v, "cam-level");
    await next(v.page);
    await v.page.getByRole("heading", { name: "Where does the arm turn?" }).waitFor();
    for (const name of ["axle", "grip", "sheave", "stack top"]) await tap(v, seen(cam.points[name]!));
    await nearer(v, seen(cam.points.axle!)); // the rope meets the cam close to the axle
    for (const name of ["rope touches", "rope end"]) await tap(v, seen(cam.points[name]!));
    await v.page.getByRole("heading", { name: "Every point is tapped" }).waitFor();
    await shot(v, "cam-points");
    await next(v.page);
    await v.page.getByRole("heading", { name: "What is the cam's outline?" }).waitFor();
    await nearer(v, seen(cam.points.axle!));
    for (const p of cam.outline(20)) await tap(v, seen(p));
    await v.page.getByText("20 places").waitFor();
    await v.page.getByText("each good to ±").waitFor();
    await accessible(v.page);
    await shot(v, "cam-outline");
    await next(v.page);
    await v.page.getByRole("textbox", { name: "Its name" }).fill(hostile);
    await type(v.page, "How much of the stack is lifted?", cam.stack);
    await type(v.page, "What do arm and cam weigh?", cam.armMass);
    await type(v.page, "How large is the sheave?", cam.sheave);
    await type(v.page, "How far does the arm turn?", cam.turn);
    await next(v.page);
    await v.page.locator(".build-preview .ribbon").waitFor();
    await accessible(v.page);
    await shot(v, "cam-look");
    await v.page.getByRole("button", { name: "Put it in the room" }).click();
    await v.page.locator(".drawing .ribbon").waitFor();
    await v.page.locator(".backdrop img").waitFor();
    await v.page.getByRole("heading", { name: hostile }).waitFor(); // as text
    expect(await v.page.evaluate(() => "hurt" in window)).toBe(false);
    await shot(v, "cam-done");
    const got = await kept(v.page);
    expect(lengthsOff(got, cam.points)).toBeLessThan(0.01);
    expect(apart(got, await exact(v.page))).toBeLessThan(0.03);
    expect(got.band).not.toBeNull(); // the ± of the taps
    await leave(v);
  }, 120_000);
});

/** exact returns what the machine does built from its true places, as a tape without error would tell them. */
async function exact(page: Page): Promise<Preview> {
  const { "rope touches": touches, ...points } = cam.points;
  const build: Build = {
    name: "Exact",
    points: [...Object.entries(points), ["rope touches", touches!] as const].map(([name, at]) => ({
      name,
      at,
      plus: [0, 0],
    })),
    values: [
      { name: "stack", value: cam.stack, plus: 0 },
      { name: "arm mass", value: cam.armMass, plus: 0 },
      { name: "sheave", value: cam.sheave, plus: 0 },
      { name: "turn", value: cam.turn, plus: 0 },
    ],
    cam: cam.outline(90).map((at) => ({ at, plus: [0, 0] })),
    look: {},
  };
  return (await page.evaluate(
    (body) =>
      fetch("/api/families/cam", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(body),
      }).then((r) => r.json()),
    build,
  )) as Preview;
}

/** apart returns the greatest difference of two holding forces as a share of the mean of the second. */
function apart(got: Preview, want: Preview): number {
  const [a, b] = [got.curve!.hold, want.curve!.hold];
  expect(a.length).toBe(b.length);
  const mean = b.reduce<number>((sum, x) => sum + x! / b.length, 0);
  const worst = Math.max(...b.map((x, i) => Math.abs(a[i]! - x!))) / mean;
  console.log(`cam: curve at most ${(100 * worst).toFixed(2)} % of its mean off`);
  return worst;
}
