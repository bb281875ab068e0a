import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessible, launch, leave, type SizeName, shot, sizes, visit } from "./browser.ts";
import { Program } from "./program.ts";

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await launch();
});

afterAll(async () => {
  await browser.close();
});

describe.each(Object.keys(sizes) as SizeName[])("the room on a %s", (size) => {
  beforeAll(async () => {
    program = new Program();
    await program.start();
  });
  afterAll(() => program.end());

  test("the first start shows the demo room, and the key leaves the address", async () => {
    const v = await visit(browser, size, program.address);
    await v.page.locator(".card").first().waitFor();
    expect(await v.page.locator(".card").count()).toBeGreaterThan(20);
    expect(v.page.url()).toBe(`${program.base}#/room`);
    expect(await v.page.locator(".card svg.sign").count()).toBe(await v.page.locator(".card").count());
    await accessible(v.page);
    await shot(v, "room");
    await leave(v);
  });

  test("machines are found by their words and sorted by their load", async () => {
    const v = await visit(browser, size, program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByRole("searchbox").fill("curl");
    const names = await v.page.locator(".card strong").allTextContents();
    expect(names.length).toBeGreaterThan(1);
    await v.page.getByRole("searchbox").fill("");
    await v.page.getByRole("radio", { name: "Heaviest" }).check({ force: true });
    const peaks = (await v.page.locator(".card .faint").allTextContents()).map((t) => Number(/\d+/.exec(t)?.[0]));
    expect(peaks).toEqual([...peaks].sort((a, b) => b - a));
    await leave(v);
  });

  test("the demo room can be taken away, teaches when empty, and comes back", async () => {
    const v = await visit(browser, size, program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByText("More", { exact: true }).click();
    await v.page.getByRole("button", { name: "Take the demo room away" }).click();
    await v.page.getByRole("heading", { name: "The room is empty" }).waitFor();
    await accessible(v.page);
    await shot(v, "room-empty");
    await v.page.getByRole("button", { name: "Bring in the demo room" }).first().click();
    await v.page.locator(".card").first().waitFor();
    await leave(v);
  });

  test("without the key the page says how to come in", async () => {
    const v = await visit(browser, size, program.base);
    await v.page.getByRole("alert").waitFor();
    expect(await v.page.getByRole("alert").textContent()).toContain("address");
    await leave(v);
  });
});
