import { describe, expect, test } from "vitest";
import { accessible, leave, open, type SizeName, shot, sizes, visit } from "./browser.ts";
import { house } from "./house.ts";

const at = house();

describe.each(Object.keys(sizes) as SizeName[])("a person on a %s", (size) => {
  test("is put on a machine and taken off again", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await open(v.page, "Bow press");
    expect(await v.page.locator(".body").count()).toBe(0);
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the stroke" });
    await v.page.locator(".body .segment.works").first().waitFor();
    await v.page.locator(".can .outline").waitFor();
    await shot(v, "person");
    await v.page.getByRole("tab", { name: "Person" }).click();
    await v.page.locator(".muscles tbody tr").first().waitFor();
    // seated press: elbow and shoulder work, so the arm of the body is drawn as working
    expect(await v.page.locator(".body .segment.works").count()).toBe(2);
    await accessible(v.page);
    await shot(v, "person-pane");
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "Nobody" });
    await expect.poll(() => v.page.locator(".body").count()).toBe(0);
    await leave(v);
  });

  test("is told as strong only where strength was measured", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the stroke" });
    await open(v.page, "Gate squat");
    // the deep knee was tested by nobody: a bound, dotted, and no line of what she can produce
    await expect.poll(() => v.page.locator(".can .bound").getAttribute("d")).toMatch(/^M/);
    const legend = v.page.locator(".curve-view .legend").first();
    await expect.poll(() => legend.textContent()).toContain("at most, nobody was tested there");
    expect(await legend.textContent()).toContain("sticking point");
    expect(await v.page.locator(".curve-view .beyond").first().textContent()).toMatch(/^can: more than \d+\sN$/);
    await v.page.getByRole("tab", { name: "Person" }).click();
    const chart = v.page.locator(".prose .plot");
    await chart.waitFor();
    expect(await chart.locator(".curve.guess").count()).toBeGreaterThan(0);
    const joints = v.page.locator(".prose .legend");
    expect(await joints.textContent()).toContain("a guess");
    expect(await joints.textContent()).not.toContain("sideways");
    expect(await v.page.locator(".prose").textContent()).not.toMatch(/\b[01]\.\d\d of what/);
    await joints.scrollIntoViewIfNeeded();
    await accessible(v.page);
    await shot(v, "person-guess");
    await leave(v);
  });

  test("is missed on the board, with the setting that helps", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the stroke" });
    await open(v.page, "Wing lateral raise");
    const missing = v.page.locator(".missing");
    await missing.waitFor();
    expect(await missing.textContent()).toMatch(/^Not reached here: the pad lies \d+ mm off .*\. Set seat to low\.$/);
    await v.page.getByRole("slider").first().press("End");
    await expect.poll(() => missing.count()).toBe(0); // there she can be
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the treasurer" });
    await expect
      .poll(() => missing.textContent())
      .toMatch(/^Not reached here: the pad lies \d+ mm off .*\. Set pad to middle\.$/);
    await accessible(v.page);
    await shot(v, "person-missing");
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "Nobody" });
    await expect.poll(() => missing.count()).toBe(0);
    await leave(v);
  });

  test("sorts the room by what fits", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByRole("combobox", { name: "On it" }).selectOption({ label: "the stroke" });
    await v.page.locator(".fit-lines").first().waitFor();
    await v.page.getByRole("radio", { name: "Fit" }).check({ force: true });
    await accessible(v.page);
    await shot(v, "room-fit");
    await leave(v);
  });

  test("is added, understood, changed and removed", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.goto(`${at.program.base}#/people`);
    const people = v.page.locator(".people-list > li");
    await people.first().waitFor();
    const before = await people.count();
    await v.page.getByRole("button", { name: "Add a person" }).click();
    await expect.poll(() => people.count()).toBe(before + 1);
    const name = v.page.getByRole("textbox", { name: "name", exact: true });
    await name.waitFor(); // somebody new is open at their name, to be overwritten
    await expect.poll(() => name.evaluate((e) => e === document.activeElement)).toBe(true);
    const mine = people.filter({ has: name });
    await mine.getByText("The person's sheet").click();
    const sheet = mine.getByRole("textbox", { name: /The person's sheet/ });
    const stored = await sheet.inputValue();
    await sheet.fill("height: tall");
    await mine.getByRole("button", { name: "Keep" }).click();
    await mine.getByRole("alert").waitFor();
    expect(await sheet.inputValue()).toBe("height: tall"); // to be mended, and nothing is lost
    await v.page.reload();
    await people.first().locator("summary").first().click();
    await people.first().getByText("The person's sheet").click();
    expect(await people.first().getByRole("textbox", { name: /sheet/ }).inputValue()).toBe(stored);
    await people.first().locator("summary").first().click();
    await v.page.getByText("the stroke", { exact: true }).click();
    const height = v.page.getByRole("textbox", { name: "height", exact: true });
    await height.waitFor();
    await height.fill("tall");
    await height.blur();
    await v.page.getByRole("alert").waitFor();
    await height.fill("5 ft 10 in");
    await height.blur();
    await expect.poll(() => v.page.getByRole("alert").count()).toBe(0);
    expect(await height.inputValue()).toBe("5 ft 10 in");
    const theirs = people.filter({ has: height });
    await theirs.getByText("Add a limit", { exact: true }).click();
    const limit = theirs.locator(".adding").nth(1);
    const motion = size === "phone" ? "knee flexion" : "hip flexion"; // both write to one program
    await limit.getByRole("combobox", { name: "Motion" }).selectOption(motion);
    await limit.getByRole("textbox", { name: "Goes as far as" }).fill("500 deg");
    await limit.getByRole("button", { name: "Put it in the sheet" }).click();
    await limit.getByRole("alert").waitFor();
    expect(await limit.getByRole("alert").textContent()).toContain("a joint angle is -180° to 180°");
    await shot(v, "people-refused");
    await limit.getByRole("textbox", { name: "Goes as far as" }).fill("128 deg");
    await limit.getByRole("button", { name: "Put it in the sheet" }).click();
    await v.page.getByRole("textbox", { name: `limits, ${motion}`, exact: true }).waitFor();
    const forces = theirs.getByRole("textbox", { name: /^strength, \d, force$/ });
    const had = await forces.count();
    await theirs.getByText("Add a measured strength", { exact: true }).click();
    const strength = theirs.locator(".adding").first();
    await strength.getByRole("combobox", { name: "Motion" }).selectOption("elbow flexion");
    await strength.getByRole("textbox", { name: "Joint angle" }).fill("90 deg");
    await strength.getByRole("radio", { name: "Force at a distance" }).check({ force: true });
    await strength.getByRole("textbox", { name: "Force", exact: true }).fill("170 ± 10 N");
    await strength.getByRole("textbox", { name: "Distance from the joint" }).fill("280 mm");
    await accessible(v.page);
    await shot(v, "people-strength");
    await strength.getByRole("button", { name: "Put it in the sheet" }).click();
    await expect.poll(() => forces.count()).toBe(had + 1);
    await theirs.getByText("The person's sheet").click();
    const written = await theirs.getByRole("textbox", { name: /The person's sheet/ }).inputValue();
    expect(written).toContain(`  ${motion}: 128 deg\n`);
    expect(written).toContain("  - action: elbow flexion\n    angle: 90 deg\n    force: 170 ± 10 N\n    at: 280 mm\n");
    expect(written).toContain("# knee over the toes against a wall, heel down"); // comments stay
    await accessible(v.page);
    await shot(v, "people");
    await leave(v);
  });
});

test("the page in the dark, in pounds and inches", async () => {
  for (const size of Object.keys(sizes) as SizeName[]) {
    const v = await visit(at.browser, size, at.program.address);
    await v.page.locator(".card").first().waitFor();
    await v.page.getByLabel("How the page looks").click();
    await v.page.getByRole("radio", { name: "Dark" }).check({ force: true });
    await v.page.getByRole("radio", { name: "Imperial" }).check({ force: true });
    await accessible(v.page);
    await shot(v, "room-dark");
    await v.page.keyboard.press("Escape");
    await open(v.page, "Bow press");
    expect(await v.page.locator(".here-text .side").textContent()).toBe("one arm");
    await v.page.getByRole("tab", { name: "Set" }).click();
    await v.page.getByText("30 kg (66\u00a0lb)", { exact: true }).waitFor();
    await shot(v, "set-imperial");
    await v.page.goto(`${at.program.base}#/room`);
    await open(v.page, "Quarter tackle");
    expect(await v.page.locator(".here-text strong").textContent()).toContain("lb");
    await accessible(v.page);
    await shot(v, "machine-dark");
    await leave(v);
  }
});
