import { expect, test } from "vitest";
import { crosses } from "../src/drawing/labels.ts";
import { lengthTexts, type Measured } from "../src/drawing/lengths.ts";
import type { Place } from "../src/drawing/place.ts";

const size = { width: 400, height: 300 };
const arm = (axis: Place, foot: Place, text = "500 mm"): Measured => ({
  axis,
  foot,
  beyond: [foot[0], foot[1] + 14],
  text,
});

test("a length stands along its arm, on the upper side, readable from the left", () => {
  const [t] = lengthTexts([arm([350, 200], [50, 200])], size);
  expect(t!.at).toEqual([200, 187]);
  expect(t!.turn).toBe(0);
  const [steep] = lengthTexts([arm([200, 50], [200, 250])], size);
  expect(Math.abs(steep!.turn)).toBe(90);
});

test("lengths of arms that lie on one another do not", () => {
  const arms = [arm([100, 150], [300, 150]), arm([100, 152], [300, 156]), arm([100, 148], [300, 146])];
  const texts = lengthTexts(arms, size);
  for (const [i, a] of texts.entries()) for (const b of texts.slice(0, i)) expect(crosses(a!.box, b!.box)).toBe(false);
});

test("a short arm is named beside its end, and nothing is written outside", () => {
  const [short] = lengthTexts([arm([390, 150], [380, 150], "12 mm")], size);
  expect(short!.box.high[0]).toBeLessThanOrEqual(size.width);
  expect(lengthTexts([arm([-300, 900], [-100, 900])], size)).toEqual([null]);
});
