import { readFileSync, statSync } from "node:fs";
import type { Download, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { accessible, leave, open, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

async function toExplanation(page: Page, machine: string): Promise<void> {
  await open(page, machine);
  await page.goto(page.url().replace("#/machine/", "#/explain/"));
  await page.locator(".explain-figure svg").waitFor();
}

async function taken(page: Page, name: string): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByText(name, { exact: true }).click()]);
  return download;
}

/** firstBytes returns the file's first n bytes as Latin-1 text. */
const firstBytes = async (d: Download, n: number): Promise<string> =>
  readFileSync(await d.path())
    .subarray(0, n)
    .toString("latin1");

describe.each(Object.keys(sizes) as SizeName[])("an explanation on a %s", (size) => {
  test("leads step by step through the stroke", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await toExplanation(v.page, "Feathering curl");
    await accessible(v.page);
    const next = v.page.getByRole("button", { name: "Next" });
    const titles: (string | null)[] = [];
    for (let i = 1; ; i++) {
      titles.push(await v.page.locator(".explain-caption h2").textContent());
      await shot(v, `explain-${i}`);
      if (await next.isDisabled()) break;
      await next.click();
    }
    expect(new Set(titles).size).toBe(titles.length);
    expect(titles.length).toBeGreaterThanOrEqual(5);
    await v.page.locator(".explain-words .plot").waitFor(); // it ends with the curve
    await accessible(v.page);
    await leave(v);
  });

  test("goes out as one page that works without program or network", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await toExplanation(v.page, "Bow press");
    const file = await (await taken(v.page, "Page for a client")).path();
    expect(statSync(file).size).toBeLessThan(1_000_000);
    const offline = await at.browser.newContext({ ...sizes[size], offline: true });
    const page = await offline.newPage();
    const asked: string[] = [];
    page.on("request", (r) => asked.push(r.url()));
    await page.setContent(readFileSync(file, "utf8"));
    await page.locator(".explain-figure svg").waitFor();
    const slider = page.getByRole("slider");
    await slider.fill("0");
    const start = await page.locator(".explain-scrub output").textContent();
    await slider.fill(await slider.evaluate((e: HTMLInputElement) => e.max));
    const end = await page.locator(".explain-scrub output").textContent();
    expect(end).not.toBe(start);
    await page.waitForTimeout(300); // the stroke that was being shown stays where the hand has put it
    expect(await page.locator(".explain-scrub output").textContent()).toBe(end);
    await page.screenshot({ path: `e2e/shots/leaflet-${size}.png` });
    await accessible(page);
    expect(asked).toEqual([]);
    await offline.close();
    await leave(v);
  });

  test("goes out as pictures and film", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await toExplanation(v.page, "Bow press");
    // signatures: GIF89a specification; PNG, RFC 2083 3.1; PDF, ISO 32000-1 7.5.2; EBML, RFC 8794 11.2.1
    expect(await firstBytes(await taken(v.page, "Moving picture (GIF)"), 6)).toBe("GIF89a");
    expect(await firstBytes(await taken(v.page, "Picture (PNG)"), 8)).toBe("\x89PNG\r\n\x1a\n");
    const drawing = readFileSync(await (await taken(v.page, "Drawing (SVG)")).path(), "utf8");
    expect(drawing).toMatch(/^<svg [\s\S]*<\/svg>$/);
    expect(drawing).not.toContain("var("); // drawing programs know no variables
    expect(await firstBytes(await taken(v.page, "Report (PDF)"), 5)).toBe("%PDF-");
    expect(await firstBytes(await taken(v.page, "Film (WebM)"), 4)).toBe("\x1aE\xdf\xa3");
    await leave(v);
  });

  test("shows the whole person, and takes them along", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the engine room" });
    await toExplanation(v.page, "Keelson squat");
    const frame = (await v.page.locator(".explain-figure").boundingBox())!;
    const body = (await v.page.locator(".explain-figure .body").boundingBox())!;
    expect(body.y).toBeGreaterThan(frame.y);
    expect(body.y + body.height).toBeLessThan(frame.y + frame.height);
    const drawing = await (await taken(v.page, "Drawing (SVG)")).path();
    expect(readFileSync(drawing, "utf8")).toContain('class="body"');
    await leave(v);
  });

  test("has a text ready to be sent", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await toExplanation(v.page, "Bow press");
    const message = v.page.getByRole("textbox", { name: "Text to send" });
    const text = await message.inputValue();
    expect(text).toContain("Bow press");
    expect(text).toContain("every number is for one arm");
    expect(text).not.toMatch(/left out|lift ratio|\bJ\b/i);
    expect(await v.page.locator(".explain-scrub output").textContent()).toContain("one arm");
    await v.page.locator(".message").scrollIntoViewIfNeeded();
    await shot(v, "explain-message");
    await v.page.getByRole("button", { name: "Copy" }).click();
    await expect.poll(() => v.page.locator(".message [role=status]").textContent()).not.toBe("");
    await leave(v);
  });
});
