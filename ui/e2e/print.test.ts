/** Printing a machine, an explanation and the room: on both sizes of paper, light even from a dark screen, without an empty sheet. */

import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { leave, open, type SizeName, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

/** printed prints the page and returns how many sheets that takes: the page objects of ISO 32000-1, 7.7.3.3. */
async function printed(page: Page, name: string, format: string): Promise<number> {
  mkdirSync("e2e/shots", { recursive: true });
  const pdf = await page.pdf({ path: `e2e/shots/print-${name}-${format}.pdf`, format, preferCSSPageSize: false });
  return pdf.toString("latin1").match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;
}

/** onPaper returns the colours that paper gets. */
async function onPaper(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  const colours = await page.evaluate(() => {
    const root = getComputedStyle(document.documentElement);
    return [root.backgroundColor, root.color];
  });
  await page.emulateMedia({ media: null, colorScheme: "dark" });
  return colours;
}

const black = "rgb(0, 0, 0)";
const white = "rgb(255, 255, 255)";

describe.each(Object.keys(sizes) as SizeName[])("print from a %s at night", (size) => {
  test.each(["A4", "Letter"])("on %s", async (format) => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.emulateMedia({ colorScheme: "dark" });
    await v.page.locator(".card").first().waitFor();
    expect(await onPaper(v.page)).toEqual([white, black]);
    const room = await printed(v.page, `room-${size}`, format);
    await open(v.page, "Bow press");
    const machine = await printed(v.page, `machine-${size}`, format);
    await v.page.goto(v.page.url().replace("#/machine/", "#/explain/"));
    await v.page.locator(".explain-figure svg").waitFor();
    const explain = await printed(v.page, `explain-${size}`, format);
    expect({ room, machine, explain }).toEqual({ room: 2, machine: 1, explain: 1 });
    // a reader who chose the dark look gets light paper too
    await v.page.evaluate(() => {
      document.documentElement.dataset.theme = "dark";
    });
    expect(await onPaper(v.page)).toEqual([white, black]);
    await leave(v);
  });
});
