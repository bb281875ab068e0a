import { describe, expect, test } from "vitest";
import { leave, open, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

describe.each(Object.keys(sizes) as SizeName[])("the tabs of a machine on a %s", (size) => {
  test("begin at their top, however far the last was scrolled", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    const pane = v.page.getByRole("tabpanel");
    for (const [from, to] of [
      ["Sheet", "Why"],
      ["Why", "Set"],
      ["Measure", size === "phone" ? "Curve" : "Why"],
    ] as const) {
      await v.page.getByRole("tab", { name: from }).click();
      await pane.evaluate((e) => e.scrollTo(0, 120));
      expect(await pane.evaluate((e) => e.scrollTop)).toBeGreaterThan(40);
      await v.page.getByRole("tab", { name: to }).click();
      await expect.poll(() => pane.evaluate((e) => e.scrollTop)).toBe(0);
    }
    await leave(v);
  });

  test("say why with the band that is drawn, and whose the force is", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    await v.page.getByRole("tab", { name: "Why" }).click();
    const why = v.page.getByRole("tabpanel");
    await why.getByText("every force is that of one arm").waitFor();
    expect(await why.textContent()).not.toContain("left out");
    expect(await why.textContent()).toContain("Measure ");
    await shot(v, "why-words");
    await leave(v);
  });
});
