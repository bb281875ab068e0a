/** The page while the program, its disk or its files fail: told in a sentence with a cure, and nothing lost. */

import { spawnSync } from "node:child_process";
import { rmSync, statfsSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessible, drag, launch, leave, open, type SizeName, shot, sizes, type Visit, visit } from "./browser.ts";
import { Program } from "./program.ts";

/** smallDisk puts a disk of 8 MB in the place of the data folder, seen by the program alone. */
const smallDisk = (folder: string): string[] => [
  "unshare",
  "--map-root-user",
  "--mount",
  "sh",
  "-c",
  `mount -t tmpfs -o size=8m none ${folder} && exec "$@"`,
  "sh",
];
const mountable = spawnSync("unshare", ["--map-root-user", "--mount", "mount", "-t", "tmpfs", "none", tmpdir()]);

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});

afterAll(() => browser.close());

const alter = (page: Page) => page.getByRole("radio", { name: "Alter it" }).check({ force: true });
const horn = (page: Page) => page.locator('[data-handle="point horn"]');
const where = (page: Page) => horn(page).getAttribute("aria-label");
const alert = (page: Page) => page.locator(".machine-screen > [role=alert]");
const stored = (page: Page) =>
  expect.poll(() => page.locator(".machine-head").getAttribute("data-saving"), { timeout: 10_000 }).toBe("no");

async function again(page: Page): Promise<void> {
  await page.reload();
  await page.locator(".drawing .ribbon").waitFor();
  await alter(page);
}

/** expectOnly ends a visit on which nothing but these complaints of the browser itself may have come up. */
async function expectOnly(v: Visit, complaint: RegExp): Promise<void> {
  v.faults = v.faults.filter((f) => !complaint.test(f));
  await leave(v);
}

describe.each(Object.keys(sizes) as SizeName[])("trouble on a %s", (size) => {
  test.skipIf(mountable.status !== 0)(
    `a full disk is told, the change stays on the screen and is stored when there is room${mountable.status ? " (this system lets us mount no small disk)" : ""}`,
    async () => {
      const program = new Program();
      try {
        await program.start(smallDisk(program.data));
        const v = await visit(browser, size, program.address);
        await open(v.page, "Bow press");
        await alter(v.page);
        const first = await where(v.page);
        await drag(v, '[data-handle="point horn"] .ring', [24, 0]);
        await expect.poll(() => v.page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(true);
        const acknowledged = await where(v.page);
        expect(acknowledged).not.toBe(first);

        const filler = fill(`/proc/${program.pid}/root${program.data}`);
        await drag(v, '[data-handle="point horn"] .ring', [0, -24]);
        await alert(v.page).waitFor();
        const said = await alert(v.page).textContent();
        expect(said).toMatch(/horn: -?[\d.]+\smm forward, [\d.]+\smm up/); // what, with value
        expect(said).toMatch(/steelyard\.db cannot grow: the disk is full/); // where, and the limit
        expect(said).toContain("make room on the disk"); // the cure
        await expect.poll(() => where(v.page)).not.toBe(acknowledged); // still on the screen
        const tried = await where(v.page);
        await accessible(v.page);
        await shot(v, "disk-full");

        await again(v.page); // the machine as it was acknowledged is there, and the change is remembered
        await alert(v.page).waitFor();
        await expect.poll(() => where(v.page)).toBe(tried);

        rmSync(filler);
        await v.page.getByRole("button", { name: "Store it now" }).click();
        await alert(v.page).waitFor({ state: "detached" });
        await again(v.page);
        await expect.poll(() => where(v.page)).toBe(tried);
        await v.page.getByRole("button", { name: "Undo" }).click();
        await expect.poll(() => where(v.page)).toBe(acknowledged);
        await v.page.getByRole("button", { name: "Undo" }).click();
        await expect.poll(() => where(v.page)).toBe(first);
        await expectOnly(v, /status of 503/);
      } finally {
        await program.end();
      }
    },
  );

  test("a program that was stopped is told, and stores the change when it runs again", async () => {
    const program = new Program();
    try {
      await program.start();
      const v = await visit(browser, size, program.address);
      await open(v.page, "Bow press");
      await alter(v.page);
      const first = await where(v.page);
      await horn(v.page).focus();
      await v.page.keyboard.press("Shift+ArrowRight");
      await expect.poll(() => v.page.locator(".curve.before").count()).toBeGreaterThan(0);
      const tried = await where(v.page);

      await program.stop();
      await v.page.keyboard.press("Enter");
      await v.page.getByRole("button", { name: "Store it now" }).waitFor();
      expect(await alert(v.page).textContent()).toMatch(/horn: .*The program does not answer.*start it again/);
      expect(await where(v.page)).toBe(tried);
      await shot(v, "stopped");
      const forward = (text: string | null): number => Number(/: (-?\d+)/.exec(text ?? "")![1]);
      // what is altered while nobody answers is not lost either
      await horn(v.page).focus();
      await v.page.keyboard.press("Shift+ArrowRight");
      await v.page.keyboard.press("Enter");
      await stored(v.page);
      await expect.poll(async () => forward(await where(v.page)) - forward(first)).toBe(20);

      await program.start();
      await v.page.getByRole("button", { name: "Store it now" }).click();
      await alert(v.page).waitFor({ state: "detached" });
      await expect.poll(async () => forward(await where(v.page)) - forward(first)).toBe(20);
      await again(v.page);
      expect(forward(await where(v.page)) - forward(first)).toBe(20);
      await expectOnly(v, /ERR_CONNECTION_REFUSED/);
    } finally {
      await program.end();
    }
  });

  test("a change that could not be stored can be given up, and a text stays in its field", async () => {
    const program = new Program();
    try {
      await program.start();
      const v = await visit(browser, size, program.address);
      await open(v.page, "Bow press");
      const name = v.page.getByRole("heading", { level: 1 });
      await v.page.getByRole("tab", { name: "Sheet" }).click();
      const sheet = v.page.getByRole("textbox", { name: "The sheet as text" });
      const text = (await sheet.inputValue()).replace("name: Bow press", "name: Bow press, new");
      await sheet.fill(text);
      await program.stop();
      await v.page.getByRole("button", { name: "Keep it" }).click();
      await alert(v.page).waitFor();
      expect(await sheet.inputValue()).toBe(text);
      await v.page.getByRole("tab", { name: "Measure" }).click();
      const field = v.page.getByRole("textbox", { name: "horn, forward", exact: true });
      const before = await field.inputValue();
      await field.fill("701 ± 10 mm");
      await v.page.keyboard.press("Enter");
      await v.page.getByRole("button", { name: "Give it up" }).waitFor();
      expect(await alert(v.page).textContent()).toContain("horn, forward: 701 ± 10 mm");
      await program.start();
      await v.page.getByRole("button", { name: "Give it up" }).click();
      await alert(v.page).waitFor({ state: "detached" });
      expect(await field.inputValue()).toBe(before);
      await v.page.getByRole("tab", { name: "Sheet" }).click();
      expect(await sheet.inputValue()).toBe(text);
      await v.page.getByRole("button", { name: "Keep it" }).click();
      await expect.poll(() => name.textContent()).toBe("Bow press, new");
      await expectOnly(v, /ERR_CONNECTION_REFUSED/);
    } finally {
      await program.end();
    }
  });

  test("two devices that alter the same number are both heard, and one decides", async () => {
    const program = new Program();
    try {
      await program.start();
      const one = await visit(browser, size, program.address);
      await open(one.page, "Bow press");
      const two = await visit(browser, size, program.address);
      await open(two.page, "Bow press");
      const field = (page: Page) => page.getByRole("textbox", { name: "horn, up", exact: true });
      for (const page of [one.page, two.page]) await page.getByRole("tab", { name: "Measure" }).click();
      const first = await field(one.page).inputValue();
      await field(one.page).fill("1301 ± 10 mm");
      await one.page.keyboard.press("Enter");
      await expect.poll(() => one.page.getByRole("button", { name: "Undo" }).isEnabled()).toBe(true);
      await field(two.page).fill("1302 ± 10 mm");
      await two.page.keyboard.press("Enter");
      const dialog = two.page.getByRole("dialog");
      await dialog.waitFor();
      expect(await dialog.textContent()).toMatch(/1301 ± 10 mm[\s\S]*1302 ± 10 mm/);
      await shot(two, "same-number");
      await two.page.getByRole("button", { name: "Keep the other" }).click();
      await expect.poll(() => field(two.page).inputValue()).toBe("1301 ± 10 mm");
      await two.page.getByRole("button", { name: "Undo" }).click();
      await expect.poll(() => field(two.page).inputValue()).toBe(first);
      await leave(one);
      await leave(two);
    } finally {
      await program.end();
    }
  });

  test("a damaged archive brings nothing and says so", async () => {
    const program = new Program();
    const damaged = join(tmpdir(), `steelyard damaged ${size}.zip`);
    try {
      await program.start();
      const v = await visit(browser, size, program.address);
      await v.page.locator(".card").first().waitFor();
      const before = await v.page.locator(".card").count();
      const whole = await v.page.request.get(new URL("api/export.zip", program.base).href);
      const bytes = await whole.body();
      writeFileSync(damaged, bytes.subarray(0, bytes.length - 400)); // cut short, as by a lost connection
      await v.page.getByText("More", { exact: true }).click();
      await v.page.locator("input[type=file]").setInputFiles(damaged);
      await v.page.getByRole("alert").waitFor();
      expect(await v.page.getByRole("alert").textContent()).toMatch(
        /cut short, so nothing was taken from it; use another copy/,
      );
      await accessible(v.page);
      await shot(v, "damaged-archive");
      await v.page.getByRole("button", { name: "Try again" }).click(); // reads the room anew
      await v.page.getByRole("alert").waitFor({ state: "detached" });
      expect(await v.page.locator(".card").count()).toBe(before);
      await leave(v);
    } finally {
      rmSync(damaged, { force: true });
      await program.end();
    }
  });
});

test.skipIf(mountable.status !== 0)("a read-only folder is told before anything is opened", () => {
  const program = new Program();
  const line = [...smallDisk(program.data), process.env.STEELYARD!, "serve", "--data", program.data];
  line[5] = line[5]!.replace("size=8m", "size=8m,ro");
  const { status, stdout, stderr } = spawnSync(line[0]!, line.slice(1), { encoding: "utf8" });
  rmSync(program.data, { recursive: true });
  expect([status, stdout]).toEqual([1, ""]);
  expect(stderr).toMatch(
    /steelyard\.db (may not be written to|cannot be opened or made); .*writable for you, or name another/,
  );
});

/** fill takes up all the room there is in the folder and returns the file that does. */
function fill(folder: string): string {
  const file = join(folder, "filler");
  const { bavail, bsize } = statfsSync(folder);
  writeFileSync(file, Buffer.alloc(bavail * bsize));
  return file;
}
