/** The list of what was changed on a machine, and going back to a step of it. */

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessible, launch, leave, open, type SizeName, shot, sizes, visit } from "./browser.ts";
import { Program } from "./program.ts";

let browser: Browser;
let program: Program;

beforeAll(async () => {
  browser = await launch();
});

afterAll(() => browser.close());

const field = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await page.keyboard.press("Enter");
  await expect.poll(() => page.locator(".machine-head").getAttribute("data-saving")).toBe("no");
}

describe.each(Object.keys(sizes) as SizeName[])("what was changed, on a %s", (size) => {
  beforeAll(async () => {
    program = new Program();
    await program.start();
  });
  afterAll(() => program.end());

  test("teaches when there is nothing yet", async () => {
    const v = await visit(browser, size, program.address);
    await open(v.page, "Catch row");
    await v.page.getByLabel("More about this machine").click();
    await v.page.getByRole("button", { name: "What was changed" }).click();
    const dialog = v.page.getByRole("dialog", { name: "What was changed" });
    await dialog.getByText("Nothing has been changed yet").waitFor();
    await accessible(v.page);
    await shot(v, "history-empty");
    await leave(v);
  });

  test("is told in words, outlives the program, and is gone back to by the keyboard alone", async () => {
    const v = await visit(browser, size, program.address);
    await open(v.page, "Bow press");
    await v.page.getByRole("tab", { name: "Measure" }).click();
    const first = await field(v.page, "horn, up").inputValue();
    await type(v.page, "horn, up", "1301 ± 10 mm");
    await type(v.page, "horn, up", "1355 ± 10 mm");
    await type(v.page, "horn, forward", "712 ± 10");
    await program.stop();
    await program.start();
    await v.page.reload();
    await v.page.locator(".drawing .ribbon").waitFor();

    const more = v.page.getByLabel("More about this machine");
    await more.focus();
    await v.page.keyboard.press("Enter");
    await v.page.getByRole("button", { name: "What was changed" }).focus();
    await v.page.keyboard.press("Enter");
    const dialog = v.page.getByRole("dialog", { name: "What was changed" });
    const told = dialog.locator(".step-told");
    await expect.poll(() => told.count()).toBe(4);
    expect(await told.allTextContents()).toEqual([
      "horn, forward: 690 → 712 ± 10 mm",
      "horn, up: 1301 → 1355 ± 10 mm",
      `horn, up: ${first} → 1301 ± 10 mm`,
      "Put into the room",
    ]);
    expect(await dialog.locator("[aria-current=step]").count()).toBe(1);
    await accessible(v.page);
    await shot(v, "history");

    await v.page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    await expect.poll(() => more.evaluate((e) => e === document.activeElement)).toBe(true);

    await v.page.keyboard.press("Enter");
    await v.page.getByRole("button", { name: "What was changed" }).focus();
    await v.page.keyboard.press("Enter");
    await v.page.getByRole("button", { name: /^Go back here: horn, up: .* → 1301/ }).focus();
    await v.page.keyboard.press("Enter");
    await dialog.waitFor({ state: "detached" });
    await v.page.getByRole("tab", { name: "Measure" }).click();
    await expect.poll(() => field(v.page, "horn, up").inputValue()).toBe("1301 ± 10 mm");
    expect(await field(v.page, "horn, forward").inputValue()).not.toContain("712");
    await v.page.getByRole("button", { name: "Undo" }).click(); // nothing between was lost
    await expect.poll(() => field(v.page, "horn, forward").inputValue()).toContain("712");
    expect(await field(v.page, "horn, up").inputValue()).toBe("1355 ± 10 mm");
    await leave(v);
  });
});
