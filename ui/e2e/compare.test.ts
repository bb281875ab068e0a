import { describe, expect, test } from "vitest";
import { accessible, leave, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

describe.each(Object.keys(sizes) as SizeName[])("a comparison on a %s", (size) => {
  test("lays picked machines on one axis and says how they differ", async () => {
    const v = await visit(at.browser, size, at.program.address);
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
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.goto(`${at.program.base}#/compare`);
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

  test("goes on without a machine that has gone, and says so", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    const id = async (name: string) =>
      (await v.page.locator(".card", { hasText: name }).locator("a").getAttribute("href"))!.split("/").at(-1)!;
    const [one, two] = [await id("Bow press"), await id("Catch row")];
    await v.page.goto(`${at.program.base}#/compare/${one}/no-such-sheet/${two}`);
    await expect.poll(() => v.page.locator(".plot .curve").count()).toBe(2);
    await expect.poll(() => v.page.locator(".compared > li").count()).toBe(2);
    expect(await v.page.getByRole("status").allTextContents()).toContain(
      "One machine is no longer in the room and was left out.",
    );
    expect(v.page.url()).toBe(`${at.program.base}#/compare/${one}/${two}`);
    expect((await v.page.locator(".compared strong").allTextContents()).join()).not.toContain("no-such-sheet");
    await accessible(v.page);
    await shot(v, "compare-gone");
    await leave(v);
  });

  test("has its slider under the cursor", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.goto(`${at.program.base}#/compare`);
    await v.page.getByRole("combobox", { name: "Machine" }).selectOption({ label: "Bow press" });
    await v.page.getByRole("button", { name: "Add" }).click();
    const slider = v.page.getByRole("slider");
    for (const [at, share] of [
      ["0", 0],
      ["37", 0.37],
      ["100", 1],
    ] as const) {
      await slider.fill(at);
      const box = (await slider.boundingBox())!;
      const thumb = box.x + 8 + share * (box.width - 16); // as Chromium draws it: 16 px wide
      const cursor = (await v.page.locator(".plot .cursor path").boundingBox())!;
      expect(Math.abs(cursor.x + cursor.width / 2 - thumb)).toBeLessThan(1.5);
    }
    await leave(v);
  });

  test("shows what machines ask of a person's joints", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    for (const name of ["Bow press", "Feather overhead press"]) {
      await v.page.getByRole("checkbox", { name: `Pick ${name} to compare` }).check();
    }
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the stroke" });
    await v.page.getByRole("link", { name: "Compare 2" }).click();
    await v.page.locator(".plot .curve").nth(1).waitFor();
    expect(await v.page.locator(".legend strong").first().textContent()).toContain("one arm"); // the bow press has two
    const measure = v.page.getByRole("combobox", { name: "Show" });
    await measure.selectOption({ label: "Effort" });
    await expect.poll(() => v.page.locator(".plot .title-y").textContent()).toBe("%");
    expect(await v.page.locator(".plot .curve").count()).toBe(2);
    await accessible(v.page);
    await shot(v, "compare-effort");
    const moment = (await measure.locator("option").allTextContents()).find((t) => t.includes("elbow"))!;
    await measure.selectOption({ label: moment });
    await expect.poll(() => v.page.locator(".plot .title-y").textContent()).toContain("N·m");
    expect(await v.page.locator(".legend strong").first().textContent()).toMatch(/^\s*−?\d+ N·m$/);
    await accessible(v.page);
    await shot(v, "compare-moment");
    await leave(v);
  });
});
