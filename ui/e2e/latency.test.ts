/** Measures, and prints, how long the page takes from a move of the finger to the changed drawing. Nothing is held against the clock. */

import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drag, launch, leave, open, visit } from "./browser.ts";
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

test.each([
  ["Bow press", "point horn"],
  ["Feathering curl", "point grip"],
  ["Gate squat", "point horn"],
])("dragging on %s", async (machine, handle) => {
  const v = await visit(browser, "desk", program.address);
  await open(v.page, machine);
  await v.page.getByRole("radio", { name: "Alter it" }).check({ force: true });
  await drag(v, `[data-handle="${handle}"] .ring`, [12, 6], 80);
  for (const measure of ["steelyard:drag", "steelyard:shown"]) {
    const times = await v.page.evaluate((m) => performance.getEntriesByName(m).map((e) => e.duration), measure);
    times.sort((a, b) => a - b);
    const at = (share: number): string => times[Math.floor(share * (times.length - 1))]!.toFixed(1);
    console.log(`${machine}, ${handle}, ${measure}: ${times.length} moves, median ${at(0.5)} ms, p95 ${at(0.95)} ms`);
    expect(times.length).toBeGreaterThan(10);
  }
  await leave(v);
});
