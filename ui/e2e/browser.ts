/** A browser at the two sizes that count, with what every test asks of a page. */

import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { expect } from "vitest";

/** Without these a browser in a closed network looks for its maker's hosts all the time. */
const quiet = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const sizes = {
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
  desk: { viewport: { width: 1440, height: 900 } },
} as const;

export type SizeName = keyof typeof sizes;

export const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: quiet });

/** Visit is a page that keeps what went wrong on it and where it asked for things. */
export interface Visit {
  page: Page;
  context: BrowserContext;
  faults: string[];
  size: SizeName;
}

/** visit opens the address in a fresh browser profile of the size. */
export async function visit(browser: Browser, size: SizeName, address: string): Promise<Visit> {
  const context = await browser.newContext({ ...sizes[size], acceptDownloads: true });
  return watched(context, size, address);
}

/** watched opens the address in another tab of the context. */
export async function watched(context: BrowserContext, size: SizeName, address: string): Promise<Visit> {
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (err) => faults.push(String(err.stack)));
  page.on("console", (m) => {
    // a refused write is an answer the page shows, not a fault of the page
    if (m.type() === "error" && !/status of 4\d\d/.test(m.text())) faults.push(m.text());
  });
  const home = new URL(address).origin;
  page.on("request", (r) => {
    const at = new URL(r.url());
    if (at.origin !== home && !["blob:", "data:"].includes(at.protocol)) faults.push(`asked ${r.url()}`);
  });
  await page.goto(address);
  return { page, context, faults, size };
}

/** leave ends a visit; nothing may have gone wrong on it. */
export async function leave(v: Visit): Promise<void> {
  await v.context.close();
  expect(v.faults).toEqual([]);
}

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface AxeResult {
  violations: { id: string; help: string; nodes: { html: string; failureSummary: string }[] }[];
}

/** accessible holds the page against every rule axe has, and its width against sideways scrolling. */
export async function accessible(page: Page): Promise<void> {
  if (!(await page.evaluate(() => "axe" in window))) {
    const session = await page.context().newCDPSession(page);
    await session.send("Runtime.evaluate", { expression: axe }); // past the content policy, which allows no such script
    await session.detach();
  }
  const { violations } = await page.evaluate(
    () => (window as unknown as { axe: { run(): Promise<AxeResult> } }).axe.run() as Promise<AxeResult>,
  );
  expect(
    violations.map((v) => `${v.id}: ${v.help}\n${v.nodes.map((n) => `${n.html}\n${n.failureSummary}`).join("\n")}`),
  ).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
}

/** shot keeps a picture of the screen for people to look at. */
export async function shot(v: Visit, name: string): Promise<void> {
  mkdirSync("e2e/shots", { recursive: true });
  await v.page.screenshot({ path: `e2e/shots/${name}-${v.size}.png` });
}

/** open leads from the room to a machine by its name and waits for its drawing. */
export async function open(page: Page, name: string): Promise<void> {
  await page.locator(".card", { hasText: name }).locator("a").click();
  await page.locator(".drawing .ribbon").waitFor();
}

/** drag moves what lies at the middle of the locator by px, with the finger or the mouse. */
export async function drag(v: Visit, selector: string, by: [number, number], steps = 12): Promise<void> {
  const box = (await v.page.locator(selector).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const at = (i: number): [number, number] => [x + (by[0] * i) / steps, y + (by[1] * i) / steps];
  if (v.size === "desk") {
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    for (let i = 1; i <= steps; i++) {
      await v.page.mouse.move(...at(i));
      await v.page.waitForTimeout(16);
    }
    await v.page.mouse.up();
    return;
  }
  const session = await v.context.newCDPSession(v.page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", points: [number, number][]) =>
    session.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([px, py]) => ({ x: px, y: py })) });
  await touch("touchStart", [[x, y]]);
  for (let i = 1; i <= steps; i++) {
    await touch("touchMove", [at(i)]);
    await v.page.waitForTimeout(16);
  }
  await touch("touchEnd", []);
  await session.detach();
}
