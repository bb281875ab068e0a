/** Fingers on the drawing, one and two, as the browser gets them from the glass; then the whole way without finger or mouse. */

import type { CDPSession, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { leave, open, type SizeName, shot, sizes, type Visit, visit, watched } from "./browser.ts";
import { house } from "./house.ts";

type Place = [number, number];

const at = house();

/** touchable opens the program where fingers are felt, on the desk too. */
async function touchable(size: SizeName): Promise<Visit> {
  const context = await at.browser.newContext({ ...sizes[size], hasTouch: true });
  return watched(context, size, at.program.address);
}

/** Hand puts fingers on the glass and moves them. */
class Hand {
  private constructor(
    private readonly page: Page,
    private readonly session: CDPSession,
  ) {}

  static async of(v: Visit): Promise<Hand> {
    return new Hand(v.page, await v.context.newCDPSession(v.page));
  }

  private send(type: "touchStart" | "touchMove" | "touchEnd" | "touchCancel", at: Place[]) {
    return this.session.send("Input.dispatchTouchEvent", { type, touchPoints: at.map(([x, y], id) => ({ x, y, id })) });
  }

  down = (at: Place[]) => this.send("touchStart", at);
  lift = () => this.send("touchEnd", []);
  interrupt = () => this.send("touchCancel", []);

  /** slide moves all fingers evenly from where they are to where they go. */
  async slide(from: Place[], to: Place[], steps = 10): Promise<void> {
    for (let i = 1; i <= steps; i++) {
      const t = i / steps;
      await this.send(
        "touchMove",
        from.map(([x, y], k) => [x + (to[k]![0] - x) * t, y + (to[k]![1] - y) * t]),
      );
      await this.page.waitForTimeout(16);
    }
  }
}

const alter = (page: Page) => page.getByRole("radio", { name: "Alter it" }).check({ force: true });
const undo = (page: Page) => page.getByRole("button", { name: "Undo" });

/** ring returns the middle of a point's ring on the screen. */
async function ring(page: Page, name: string): Promise<Place> {
  const box = (await page.locator(`[data-handle="point ${name}"] .ring`).boundingBox())!;
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** told returns where a point is by its label, mm. */
async function told(page: Page, name: string): Promise<Place> {
  const label = await page.locator(`[data-handle="point ${name}"]`).getAttribute("aria-label");
  const [, forward, up] = /: (-?\d+)\smm forward, (-?\d+)\smm up/.exec(label!)!;
  return [Number(forward), Number(up)];
}

const minus = (a: Place, b: Place): Place => [a[0] - b[0], a[1] - b[1]];

function near(got: Place, want: Place, within: number): void {
  expect(Math.hypot(...minus(got, want)), `${got} is not ${want}`).toBeLessThan(within);
}

describe.each(Object.keys(sizes) as SizeName[])("fingers on a %s", (size) => {
  test("two come nearer and shift the view; nothing of the machine is altered", async () => {
    const v = await touchable(size);
    await open(v.page, "Bow press");
    await alter(v.page);
    const hand = await Hand.of(v);
    const axis = await ring(v.page, "axle");
    const horn = await ring(v.page, "horn");
    const middle: Place = [(axis[0] + horn[0]) / 2, (axis[1] + horn[1]) / 2];

    // Fingers spread from 40 px to 72 px to each side magnify by 72/40, and hold what lies between them. One begins on a handle.
    const beside = (d: number): Place[] => [
      [horn[0] - d + 40, horn[1]],
      [horn[0] + d + 40, horn[1]],
    ];
    await hand.down(beside(40));
    await hand.slide(beside(40), beside(72));
    await hand.lift();
    const still: Place = [horn[0] + 40, horn[1]];
    const k = 72 / 40;
    const spread = (p: Place): Place => [still[0] + k * (p[0] - still[0]), still[1] + k * (p[1] - still[1])];
    near(await ring(v.page, "horn"), spread(horn), 1.5);
    near(await ring(v.page, "axle"), spread(axis), 1.5);
    await shot(v, "pinched");

    // Both fingers together shift it by as much as they move.
    const at: Place[] = [middle, [middle[0] + 60, middle[1] + 20]];
    const by: Place = [-30, 45];
    const before = await ring(v.page, "horn");
    await hand.down(at);
    await hand.slide(
      at,
      at.map(([x, y]) => [x + by[0], y + by[1]]),
    );
    await hand.lift();
    near(await ring(v.page, "horn"), [before[0] + by[0], before[1] + by[1]], 1.5);

    expect(await undo(v.page).isEnabled()).toBe(false);
    await v.page.getByRole("button", { name: "Show all" }).tap();
    near(await ring(v.page, "horn"), horn, 1);
    near(await ring(v.page, "axle"), axis, 1);
    await leave(v);
  });

  test("one takes a point a long way, and the loupe shows beside it what it hides", async () => {
    const v = await touchable(size);
    await open(v.page, "Bow press");
    await alter(v.page);
    const hand = await Hand.of(v);
    const horn = await ring(v.page, "horn");
    const drawing = (await v.page.locator("svg.drawing").boundingBox())!;
    const label = await told(v.page, "horn");
    const scale = (await v.page.locator(".rule-line svg").first().boundingBox())!.width / 200; // px for each mm: it shows 20 cm
    const glass = v.page.locator(".loupe .frame");
    const way: Place[] = [
      [horn[0] + 40, horn[1] - 30],
      [horn[0] + 10, horn[1] - 60],
      [horn[0] + 30, horn[1] + 20],
    ];
    await hand.down([horn]);
    let from = horn;
    for (const [i, to] of way.entries()) {
      await hand.slide([from], [to], 25);
      from = to;
      const box = (await glass.boundingBox())!;
      const middle: Place = [box.x + box.width / 2, box.y + box.height / 2];
      expect(Math.hypot(...minus(middle, to))).toBeGreaterThan(box.width / 2); // the finger does not cover it
      expect(box.x).toBeGreaterThanOrEqual(drawing.x);
      expect(box.x + box.width).toBeLessThanOrEqual(drawing.x + drawing.width);
      const reading = (await v.page.locator(".handles .reading").boundingBox())!;
      expect(reading.x + reading.width).toBeLessThanOrEqual(drawing.x + drawing.width);
      if (i === 0) await shot(v, "loupe");
    }
    await hand.lift();
    expect(await glass.count()).toBe(0);
    await expect.poll(() => undo(v.page).isEnabled()).toBe(true);
    const [x0, y0] = label;
    const [x1, y1] = await told(v.page, "horn");
    near([x1 - x0, y1 - y0], [(from[0] - horn[0]) / scale, (horn[1] - from[1]) / scale], 2); // mm, each told to 1 mm
    await undo(v.page).tap();
    await expect.poll(() => undo(v.page).isEnabled()).toBe(false);
    await expect.poll(async () => Math.hypot(...minus(await ring(v.page, "horn"), horn))).toBeLessThan(1);
    await leave(v);
  });

  test("one that the system takes away puts the point back", async () => {
    const v = await touchable(size);
    await open(v.page, "Bow press");
    await alter(v.page);
    const hand = await Hand.of(v);
    const horn = await ring(v.page, "horn");
    await hand.down([horn]);
    await hand.slide([horn], [[horn[0] + 30, horn[1] - 20]]);
    await hand.interrupt();
    await expect.poll(async () => Math.hypot(...minus(await ring(v.page, "horn"), horn))).toBeLessThan(1);
    expect(await undo(v.page).isEnabled()).toBe(false);
    await leave(v);
  });
});

/** tabTo presses Tab until what has the focus answers to the name; the way must end within so many stops. */
async function tabTo(page: Page, name: RegExp, most = 120): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => {
      const e = document.activeElement as HTMLElement;
      const input = e as HTMLInputElement;
      return e.getAttribute("aria-label") ?? input.labels?.[0]?.textContent ?? e.textContent ?? "";
    });
    if (name.test(here.trim())) return;
  }
  throw new Error(`no Tab leads to ${name}`);
}

describe.each(Object.keys(sizes) as SizeName[])("the keyboard alone, on a %s", (size) => {
  test("opens a machine, moves a point, undoes it, and explains the stroke", async () => {
    const v = await visit(at.browser, size, at.program.address);
    const { page } = v;
    await page.locator(".card").first().waitFor();
    await tabTo(page, /^Bow press/);
    await page.keyboard.press("Enter");
    await page.locator(".drawing .ribbon").waitFor();
    await tabTo(page, /^Work it$/);
    await page.keyboard.press("ArrowRight");
    await tabTo(page, /^horn: /);
    const horn = page.locator('[data-handle="point horn"]');
    const label = await horn.getAttribute("aria-label");
    await page.keyboard.press("Shift+ArrowUp");
    await page.keyboard.press("ArrowUp");
    await shot(v, "keyboard"); // the focus must be seen
    await page.keyboard.press("Enter");
    await expect.poll(() => undo(page).isEnabled()).toBe(true);
    const up = (text: string | null): number => Number(/forward, (-?\d+)/.exec(text ?? "")![1]);
    await expect.poll(async () => up(await horn.getAttribute("aria-label")) - up(label)).toBe(11);
    await page.keyboard.press("Control+z");
    await expect.poll(() => horn.getAttribute("aria-label")).toBe(label);
    await expect.poll(() => undo(page).isEnabled()).toBe(false);
    await tabTo(page, /^Explain/);
    await page.keyboard.press("Enter");
    await page.locator(".explain-figure svg").waitFor();
    const first = await page.locator(".explain-caption h2").textContent();
    await tabTo(page, /^Next$/);
    await page.keyboard.press("Enter");
    await expect.poll(() => page.locator(".explain-caption h2").textContent()).not.toBe(first);
    await leave(v);
  });
});
