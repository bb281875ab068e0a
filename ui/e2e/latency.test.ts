/** Measures, and prints, how long the page takes from a move of the finger to the changed drawing and curve. Nothing is held against the clock. */

import { expect, test } from "vitest";
import { leave, open, type SizeName, type Visit, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

const moves = 120;

/** stream drags a handle by a mouse, or a finger on the phone, that moves every so many ms, whether the page keeps up or not. */
async function stream(v: Visit, handle: string, every: number): Promise<void> {
  const box = (await v.page.locator(`[data-handle="${handle}"] .ring`).boundingBox())!;
  const session = await v.context.newCDPSession(v.page);
  const send = (what: "Pressed" | "Moved" | "Released", k: number): Promise<unknown> => {
    const [x, y] = [box.x + box.width / 2 + 0.12 * k, box.y + box.height / 2 + 0.06 * k];
    if (v.size === "desk") {
      const buttons = what === "Released" ? 0 : 1;
      return session.send("Input.dispatchMouseEvent", {
        type: `mouse${what}`,
        x,
        y,
        button: "left",
        buttons,
        clickCount: 1,
      });
    }
    const type = ({ Pressed: "touchStart", Moved: "touchMove", Released: "touchEnd" } as const)[what];
    return session.send("Input.dispatchTouchEvent", { type, touchPoints: what === "Released" ? [] : [{ x, y }] });
  };
  await send("Pressed", 0);
  await new Promise((done) => setTimeout(done, 200)); // a hand takes hold before it moves
  await v.page.evaluate(() => performance.clearMeasures());
  const sent: Promise<unknown>[] = [];
  for (let k = 1; k <= moves; k++) {
    sent.push(send("Moved", k));
    await new Promise((done) => setTimeout(done, every));
  }
  await Promise.all(sent);
  await send("Released", moves);
  await session.detach();
}

test.each<[SizeName, string, string]>([
  ["desk", "Bow press", "point horn"],
  ["desk", "Feathering curl", "point grip"],
  ["desk", "Gate squat", "point horn"],
  ["phone", "Bow press", "point horn"],
  ["phone", "Feathering curl", "point grip"],
])("dragging on a %s: %s", async (size, machine, handle) => {
  const v = await visit(at.browser, size, at.program.address);
  await open(v.page, machine);
  await v.page.getByRole("radio", { name: "Alter it" }).check({ force: true });
  for (const every of [33, 16]) {
    await stream(v, handle, every);
    for (const measure of ["steelyard:drag", "steelyard:shown"]) {
      const times = await v.page.evaluate((m) => performance.getEntriesByName(m).map((e) => e.duration), measure);
      times.sort((a, b) => a - b);
      const at = (share: number): string => times[Math.floor(share * (times.length - 1))]!.toFixed(1);
      console.log(
        `${size}, ${machine}, a move each ${every} ms, ${measure}: ${times.length} shown, median ${at(0.5)} ms, p95 ${at(0.95)} ms`,
      );
      expect(times.length).toBeGreaterThan(10);
    }
    await v.page.getByRole("button", { name: "Undo" }).click();
    await v.page.locator('.machine-head[data-saving="no"]').waitFor();
  }
  await leave(v);
});
