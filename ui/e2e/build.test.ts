import { describe, expect, test } from "vitest";
import type { Preview } from "../src/api.ts";
import { accessible, leave, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";
import { lever, leverScene, photograph, plate, seen } from "./photo.ts";
import { choose, kept, lengthsOff, next, tap, to, type } from "./tapping.ts";

const at = house();

describe.each(Object.keys(sizes) as SizeName[])("building a lever on a %s", (size) => {
  test("from one plate and the side that was nearer, true to its lengths and its force", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await to(v, at.program.base, "lever", "Lever");
    await choose(v.page, "lever.png", "image/png", await photograph(v.page, leverScene));
    await v.page.locator(".photo-board image").waitFor();
    for (const p of plate(lever.points.horn!, 8)) await tap(v, seen(p));
    await v.page.getByRole("button", { name: "Add another known size" }).waitFor();
    await accessible(v.page);
    await shot(v, "build-scale");
    await next(v.page);
    await v.page.getByRole("group", { name: "Which side of the photo was nearer to you?" }).waitFor();
    expect(await v.page.locator(".picture-choice svg").count()).toBe(3);
    expect(await v.page.getByRole("button", { name: "Next" }).isDisabled()).toBe(true);
    await v.page.getByRole("radio", { name: "The left" }).check({ force: true });
    await accessible(v.page);
    await shot(v, "build-near");
    await next(v.page);
    await v.page.getByRole("heading", { name: "Which way is up?" }).waitFor();
    for (const p of lever.plumb) await tap(v, seen(p));
    await accessible(v.page);
    await shot(v, "build-upright");
    await next(v.page);
    await v.page.getByRole("heading", { name: "Where does the arm turn?" }).waitFor();
    for (const name of ["axle", "horn", "grip", "balance"]) await tap(v, seen(lever.points[name]!));
    await expect.poll(() => v.page.locator(".asked", { hasText: "good to ±" }).count()).toBe(1);
    await v.page.locator(".asked li", { hasText: "balance" }).getByText("good to ±").waitFor();
    await accessible(v.page);
    await shot(v, "build-points");
    await next(v.page);
    await v.page.getByRole("textbox", { name: "Its name" }).fill("Photographed lever");
    await type(v.page, "How much is on it?", lever.plates);
    await type(v.page, "What does the arm weigh?", lever.armMass);
    await type(v.page, "How far does the arm turn?", lever.turn);
    await shot(v, "build-values");
    await next(v.page);
    await v.page.locator(".build-preview .ribbon").waitFor();
    await accessible(v.page);
    await shot(v, "build-look");
    await v.page.getByRole("button", { name: "Put it in the room" }).click();
    await v.page.locator(".drawing .ribbon").waitFor();
    await v.page.locator(".backdrop img").waitFor();
    await shot(v, "build-done");
    held(await kept(v.page));
    await leave(v);
  });

  test("from the tape", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await to(v, at.program.base, "lever", "Lever");
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
function held(p: Preview): void {
  expect(lengthsOff(p, lever.points)).toBeLessThan(0.01);
  // A weight m at horizontal distance x from the axle asks m·g·x of moment; the force
  // square to the arm at the grip, distance r from the axle, is the sum over r.
  const c = p.curve!;
  const axle = lever.points.axle!;
  const from = (name: string) => [lever.points[name]![0] - axle[0], lever.points[name]![1] - axle[1]] as const;
  const r = Math.hypot(...from("grip"));
  c.driver.forEach((angle, k) => {
    const x = (name: string): number => from(name)[0] * Math.cos(angle) - from(name)[1] * Math.sin(angle);
    const truth = (gravity * (lever.plates * x("horn") + lever.armMass * x("balance"))) / r;
    expect(Math.abs(c.hold[k]! / truth - 1)).toBeLessThan(0.03);
  });
  expect(Math.abs(c.driver.at(-1)! - c.driver[0]!)).toBeCloseTo((lever.turn * Math.PI) / 180, 3);
}
