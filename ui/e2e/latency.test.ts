/** Measures, and prints, how long the page takes from a move of the finger to the changed drawing and curve. Nothing is held against the clock. */

import { expect, test } from "vitest";
import { leave, open, type Visit, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

const moves = 120;

/** stream drags a handle by a mouse that moves every so many ms, whether the page keeps up or not. */
async function stream(v: Visit, handle: string, every: number): Promise<void> {
  const box = (await v.page.locator(`[data-handle="${handle}"] .ring`).boundingBox())!;
  const session = await v.context.newCDPSession(v.page);
  const mouse = (type: "mousePressed" | "mouseMoved" | "mouseReleased", k: number) =>
    session.send("Input.dispatchMouseEvent", {
      type,
      x: box.x + box.width / 2 + 0.12 * k,
      y: box.y + box.height / 2 + 0.06 * k,
      button: "left",
      buttons: type === "mouseReleased" ? 0 : 1,
      clickCount: 1,
    });
  await mouse("mousePressed", 0);
  await new Promise((done) => setTimeout(done, 200)); // a hand takes hold before it moves
  await v.page.evaluate(() => performance.clearMeasures());
  const sent: Promise<unknown>[] = [];
  for (let k = 1; k <= moves; k++) {
    sent.push(mouse("mouseMoved", k));
    await new Promise((done) => setTimeout(done, every));
  }
  await Promise.all(sent);
  await mouse("mouseReleased", moves);
  await session.detach();
}

test.each([
  ["Bow press", "point horn"],
  ["Feathering curl", "point grip"],
  ["Gate squat", "point horn"],
])("dragging on %s", async (machine, handle) => {
  const v = await visit(at.browser, "desk", at.program.address);
  await open(v.page, machine);
  await v.page.getByRole("radio", { name: "Alter it" }).check({ force: true });
  for (const every of [33, 16]) {
    await stream(v, handle, every);
    for (const measure of ["steelyard:drag", "steelyard:shown"]) {
      const times = await v.page.evaluate((m) => performance.getEntriesByName(m).map((e) => e.duration), measure);
      times.sort((a, b) => a - b);
      const at = (share: number): string => times[Math.floor(share * (times.length - 1))]!.toFixed(1);
      console.log(
        `${machine}, a move each ${every} ms, ${measure}: ${times.length} shown, median ${at(0.5)} ms, p95 ${at(0.95)} ms`,
      );
      expect(times.length).toBeGreaterThan(10);
    }
    await v.page.getByRole("button", { name: "Undo" }).click();
    await v.page.locator('.machine-head[data-saving="no"]').waitFor();
  }
  await leave(v);
});
