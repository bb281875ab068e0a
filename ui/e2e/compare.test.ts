import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessible, launch, leave, type SizeName, shot, sizes, visit } from "./browser.ts";
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

describe.each(Object.keys(sizes) as SizeName[])("a comparison on a %s", (size) => {
  test("lays picked machines on one axis and says how they differ", async () => {
    const v = await visit(browser, size, program.address);
    await v.page.locator(".card").first().waitFor();
    for (const name of ["Bow press", "Catch row", "Dumb-bell curl"]) {
      await v.page.getByRole("checkbox", { name: `Pick ${name} to compare` }).check();
    }
    await v.page.getByRole("link", { name: "Compare 3" }).click();
    await expect.poll(() => v.page.locator(".plot .curve").count()).toBe(3);
    expect(await v.page.locator(".compare-words li").count()).toBe(2);
    await accessible(v.page);
    await shot(v, "compare");
    await v.page.getByRole("checkbox", { name: "As a share of its own peak" }).check();
    await v.page.getByRole("radio", { name: "distance" }).check({ force: true });
    await accessible(v.page);
    await shot(v, "compare-travel");
    await leave(v);
  });

  test("sets one machine beside itself at another setting", async () => {
    const v = await visit(browser, size, program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.goto(`${program.base}#/compare`);
    for (let i = 0; i < 2; i++) {
      await v.page.getByRole("combobox", { name: "Machine" }).selectOption({ label: "Bow press" });
      await v.page.getByRole("button", { name: "Add" }).click();
    }
    await expect.poll(() => v.page.locator(".plot .curve").count()).toBe(2);
    const legend = v.page.locator(".legend strong");
    expect(await legend.nth(0).textContent()).toBe(await legend.nth(1).textContent());
    await v.page.locator(".compared > li").nth(1).getByText("Set", { exact: true }).click();
    await v.page.locator(".compared > li").nth(1).getByRole("combobox", { name: "plates" }).selectOption("80 kg");
    await expect
      .poll(async () => (await legend.nth(1).textContent()) !== (await legend.nth(0).textContent()))
      .toBe(true);
    await leave(v);
  });
});
