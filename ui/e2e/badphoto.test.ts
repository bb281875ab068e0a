import { crc32 } from "node:zlib";
import { describe, expect, test } from "vitest";
import { accessible, leave, type SizeName, shot, sizes, type Visit, visit } from "./browser.ts";
import { house } from "./house.ts";
import { leverScene, photograph } from "./photo.ts";
import { choose, next, tap, to, type } from "./tapping.ts";

const at = house();

/** enormous is a PNG of 200 megapixels that says so in its header. Source: W3C PNG, 11.2.2 IHDR. */
function enormous(): Buffer {
  const header = Buffer.alloc(17);
  header.write("IHDR");
  header.writeUInt32BE(20000, 4);
  header.writeUInt32BE(10000, 8);
  header.set([8, 2, 0, 0, 0], 12);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(header));
  return Buffer.concat([Buffer.from("\x89PNG\r\n\x1a\n\0\0\0\x0d", "latin1"), header, check]);
}

/** refused waits for the note of trouble that says so. */
const refused = (v: Visit, says: string) => v.page.getByRole("alert").filter({ hasText: says }).waitFor();

const marks = (v: Visit) => v.page.locator(".photo-mark").count();

describe.each(Object.keys(sizes) as SizeName[])("bad input on a %s", (size) => {
  test("is refused with a cure, and what was tapped stays", async () => {
    const v = await visit(at.browser, size, at.program.address);
    await to(v, at.program.base, "lever", "Lever");
    await choose(v.page, "notes.jpg", "image/jpeg", Buffer.from("not a photo at all"));
    await refused(v, "take or choose another one, as JPEG or PNG");
    await accessible(v.page);
    await shot(v, "bad-file");
    const good = await photograph(v.page, leverScene);
    await choose(v.page, "lever.png", "image/png", good);
    await v.page.locator(".photo-board image").waitFor();

    // a scale line of zero length: both ends in the middle, by the keyboard
    await v.page.getByRole("radio", { name: "A length" }).check({ force: true });
    const middle = v.page.getByRole("button", { name: "Put it in the middle" });
    for (let i = 0; i < 2; i++) {
      await middle.focus();
      await v.page.keyboard.press("Enter");
    }
    expect(await marks(v)).toBe(2);
    await next(v.page);
    await refused(v, "known length is 0 px long");
    await shot(v, "bad-length");
    expect(await marks(v)).toBe(2);

    // and one of no millimetres
    for (let i = 0; i < 2; i++) await v.page.getByRole("button", { name: "Take one back" }).click();
    await tap(v, [600, 500]);
    await tap(v, [900, 500]);
    await type(v.page, "Length", 0);
    await next(v.page);
    await refused(v, "known length is 0 mm");
    expect(await marks(v)).toBe(2);

    // four corners in a line
    await v.page.getByRole("radio", { name: "A rectangle" }).check({ force: true });
    for (const right of [300, 600, 900, 1200]) await tap(v, [right, 700]);
    await next(v.page);
    await refused(v, "three corners nearly in a line");
    expect(await marks(v)).toBe(4);
    await accessible(v.page);
    await shot(v, "bad-corners");

    // another photo that cannot be used leaves this one, with its taps
    for (const [name, kind, data, says] of [
      ["huge.png", "image/png", enormous(), "20000 × 10000 pixels"],
      ["torn.png", "image/png", good.subarray(0, good.length / 2), "damaged or was cut short"],
      ["notes.jpg", "image/jpeg", Buffer.from("<img onerror=alert(1)>"), "no photo that can be read"],
      ["notes.tiff", "image/tiff", Buffer.from("II*\0"), "not a photo a browser can read"],
    ] as const) {
      await choose(v.page, name, kind, data);
      await refused(v, says);
      expect(await marks(v)).toBe(4);
    }
    await v.page.getByRole("radio", { name: "A length" }).check({ force: true });
    expect(await marks(v)).toBe(2);
    expect(await v.page.locator(".photo-board image").isVisible()).toBe(true);
    await shot(v, "bad-photo");
    await leave(v);
  }, 120_000);
});
