import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessible, drag, leave, open, type SizeName, shot, sizes, visit, watched } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

const forceHere = async (page: Page): Promise<number> =>
  Number(/[\d.]+/.exec((await page.locator(".here-text strong").textContent())!)![0]);

const alter = (page: Page) => page.getByRole("radio", { name: "Alter it" }).check({ force: true });

async function tab(page: Page, name: string): Promise<void> {
  await page.getByRole("tab", { name }).click();
}

describe.each(Object.keys(sizes) as SizeName[])("a machine on a %s", (size) => {
  test("shows ribbon, curve and reading; the stroke moves them together", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    const start = await forceHere(v.page);
    await v.page.getByRole("slider", { name: "Place in the travel" }).fill("100");
    const end = await forceHere(v.page);
    // The plates hang in front of the axis and swing up and out: a plate on a lever
    // loads most where its horizontal distance from the axis is greatest.
    expect(end).toBeGreaterThan(1.3 * start);
    expect(await v.page.locator(".plot .cursor text").textContent()).toBe(`${end} N`);
    await accessible(v.page);
    await shot(v, "machine");
    for (const name of ["Set", "Measure", "Why", "Sheet"]) {
      await tab(v.page, name);
      await accessible(v.page);
      await shot(v, `machine-${name.toLowerCase()}`);
    }
    await leave(v);
  });

  test("a dragged point changes the curve at once, stays, and is undone after a restart", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    const before = await forceHere(v.page);
    await alter(v.page);
    await drag(v, '[data-handle="point horn"] .ring', [36, 0]);
    const undo = v.page.getByRole("button", { name: "Undo" });
    await expect.poll(() => undo.isEnabled()).toBe(true);
    const after = await forceHere(v.page);
    expect(after).toBeGreaterThan(before * 1.02); // the load hangs further out
    await accessible(v.page);
    await shot(v, "machine-altered");

    await at.program.stop();
    await at.program.start();
    await v.page.reload();
    await v.page.locator(".drawing .ribbon").waitFor();
    expect(await forceHere(v.page)).toBe(after);
    await undo.click();
    await expect.poll(() => forceHere(v.page)).toBe(before);
    await leave(v);
  });

  test("the keyboard moves a point by a millimetre, and Escape restores it", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    await alter(v.page);
    const horn = v.page.locator('[data-handle="point horn"]');
    const label = await horn.getAttribute("aria-label");
    await horn.focus();
    for (let i = 0; i < 3; i++) await v.page.keyboard.press("Shift+ArrowRight");
    await v.page.keyboard.press("ArrowRight");
    const forward = (text: string | null): number => Number(/: (-?\d+)/.exec(text ?? "")![1]);
    expect(forward(await horn.getAttribute("aria-label")) - forward(label)).toBe(31);
    await v.page.locator(".curve.before").first().waitFor();
    await v.page.keyboard.press("Escape");
    await expect.poll(() => horn.getAttribute("aria-label")).toBe(label);
    expect(await v.page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(false);
    await leave(v);
  });

  test("a number is typed with its unit, refused in words, and kept with Enter", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    await tab(v.page, "Measure");
    const field = v.page.getByRole("textbox", { name: "horn, forward", exact: true });
    const text = await field.inputValue();
    await field.fill("a good deal");
    await expect.poll(() => field.getAttribute("aria-invalid")).toBe("true");
    await shot(v, "measure-refused");
    await v.page.keyboard.press("Escape");
    expect(await field.inputValue()).toBe(text);
    await field.fill("29 1/2 in ± 1/4 in");
    await v.page.keyboard.press("Enter");
    await expect.poll(() => v.page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(true);
    expect(await field.inputValue()).toContain("29 1/2 in");
    await v.page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => field.inputValue()).toBe(text);
    await leave(v);
  });

  test("a setting moves the curve and is remembered", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    const before = await forceHere(v.page);
    await tab(v.page, "Set");
    for (let i = 0; i < 4; i++) await v.page.getByRole("button", { name: "plates: more" }).click();
    await expect.poll(() => forceHere(v.page)).toBeGreaterThan(before * 1.1);
    await v.page.reload();
    await v.page.locator(".drawing .ribbon").waitFor();
    await expect.poll(() => forceHere(v.page)).toBeGreaterThan(before * 1.1);
    await leave(v);
  });

  test("a force read off a scale stands on the curve", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    const cross = v.page.locator(".plot .cross");
    expect(await cross.count()).toBe(0);
    await tab(v.page, "Measure");
    const field = v.page.getByRole("textbox", { name: /^Force at/ });
    await field.fill("210");
    await field.blur();
    await v.page.getByRole("button", { name: "Add", exact: true }).click();
    await v.page.getByText(/210\sN read/).waitFor();
    if (size === "phone") await tab(v.page, "Curve");
    await expect.poll(() => cross.count()).toBe(1);
    await shot(v, "machine-scale");
    await v.page.reload();
    await v.page.locator(".drawing .ribbon").waitFor();
    await tab(v.page, "Measure");
    await v.page.getByRole("button", { name: /^Take away/ }).click();
    await expect.poll(() => v.page.getByText(/210\sN read/).count()).toBe(0);
    await leave(v);
  });

  test("two pages that change one thing lose nothing and say so", async () => {
    const one = await visit(at.browser, size, at.program.address);
    await open(one.page, "Catch row");
    // another profile, as another device would be: it hears nothing of the first
    const two = await visit(at.browser, size, at.program.address);
    await open(two.page, "Catch row");
    for (const page of [one.page, two.page]) await tab(page, "Sheet");
    const sheet = (page: Page) => page.getByRole("textbox", { name: "The sheet as text" });
    const text = await sheet(one.page).inputValue();
    await sheet(one.page).fill(text.replace("name: Catch row", "name: Catch row one"));
    await one.page.getByRole("button", { name: "Keep it" }).click();
    await one.page.getByRole("heading", { name: "Catch row one" }).waitFor();
    await sheet(two.page).fill(text.replace("name: Catch row", "name: Catch row two"));
    await two.page.getByRole("button", { name: "Keep it" }).click();
    await two.page.getByRole("dialog").waitFor();
    expect(await two.page.getByRole("dialog").textContent()).toContain("Catch row one");
    await accessible(two.page);
    await shot(two, "conflict");
    await two.page.getByRole("button", { name: "Keep mine" }).click();
    await two.page.getByRole("heading", { name: "Catch row two" }).waitFor();
    await two.page.getByRole("button", { name: "Undo" }).click();
    await two.page.getByRole("heading", { name: "Catch row one" }).waitFor(); // the other's change was not lost
    await two.page.getByRole("button", { name: "Undo" }).click();
    await two.page.getByRole("heading", { name: "Catch row", exact: true }).waitFor();
    await leave(one);
    await leave(two);
  });

  test("two devices that move different points both keep their change", async () => {
    const one = await visit(at.browser, size, at.program.address);
    await open(one.page, "Bow press");
    const two = await visit(at.browser, size, at.program.address);
    await open(two.page, "Bow press");
    await tab(one.page, "Measure");
    await tab(two.page, "Measure");
    const field = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });
    await field(one.page, "horn, forward").fill("701 ± 10 mm");
    await one.page.keyboard.press("Enter");
    await expect.poll(() => one.page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(true);
    await field(two.page, "horn, up").fill("1302 ± 10 mm");
    await two.page.keyboard.press("Enter");
    await expect.poll(() => field(two.page, "horn, forward").inputValue()).toBe("701 ± 10 mm");
    expect(await field(two.page, "horn, up").inputValue()).toBe("1302 ± 10 mm");
    expect(await two.page.locator(".board-head [role=status]").textContent()).not.toBe(""); // it says so
    for (let i = 0; i < 2; i++) {
      await two.page.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => two.page.locator(".machine-head").getAttribute("data-saving")).toBe("no");
    }
    await leave(one);
    await leave(two);
  });

  test("another tab of the same browser follows by itself", async () => {
    const one = await visit(at.browser, size, at.program.address);
    await open(one.page, "Heel raise");
    const two = await watched(one.context, size, one.page.url());
    await two.page.locator(".drawing .ribbon").waitFor();
    await tab(one.page, "Sheet");
    const sheet = one.page.getByRole("textbox", { name: "The sheet as text" });
    await sheet.fill((await sheet.inputValue()).replace("name: Heel raise", "name: Heel raise, new"));
    await one.page.getByRole("button", { name: "Keep it" }).click();
    await two.page.getByRole("heading", { name: "Heel raise, new" }).waitFor();
    await one.page.getByRole("button", { name: "Undo" }).click();
    await two.page.getByRole("heading", { name: "Heel raise", exact: true }).waitFor();
    await leave(one);
    expect(two.faults).toEqual([]);
  });
});
