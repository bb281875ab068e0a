/** Places the lengths of moment arms along them, clear of each other. */

import { crosses, inside, textHeight, widthOf } from "./labels.ts";
import { add, type Box, distance, lerp, type Place, sub, times, unit } from "./place.ts";
import type { Size } from "./view.ts";

/** Measured is a moment arm on the screen, px, with its length in words. */
export interface Measured {
  axis: Place;
  foot: Place;
  beyond: Place; // a little past the foot, on the line of the force
  text: string;
}

/** LengthText is where a text is written: its middle, and its turn in degrees. */
export interface LengthText {
  at: Place;
  turn: number;
  box: Box;
}

const roomForLength = 46; // px, of an arm along which its length can be written
const off = 13; // px, of the middle of a text from its line

/**
 * lengthTexts returns where each arm's length is written, in order: along the
 * arm where that is long enough, else beside its end; null where there is no
 * place within the size that is free of those before.
 */
export function lengthTexts(arms: readonly Measured[], size: Size): (LengthText | null)[] {
  const taken: Box[] = [];
  return arms.map((arm) => {
    const found = places(arm).find((p) => inside(p.box, size) && !taken.some((b) => crosses(b, p.box)));
    if (found) taken.push(found.box);
    return found ?? null;
  });
}

function places(arm: Measured): LengthText[] {
  const run = sub(arm.foot, arm.axis);
  if (distance(arm.axis, arm.foot) <= roomForLength) {
    const wide = widthOf(arm.text, true) / 2 + 6;
    return [
      [wide, 10],
      [-wide, 10],
      [wide, -10],
      [-wide, -10],
    ].map((by) => text(add(arm.beyond, by as Place), 0, arm.text));
  }
  let turn = (Math.atan2(run[1], run[0]) * 180) / Math.PI;
  if (Math.abs(turn) > 90) turn -= Math.sign(turn) * 180;
  const up = times(upward(unit([-run[1], run[0]])), off);
  return [0.5, 0.32, 0.68, 0.18, 0.82].flatMap((t) => {
    const on = lerp(arm.axis, arm.foot, t);
    return [text(add(on, up), turn, arm.text), text(sub(on, up), turn, arm.text)];
  });
}

/** upward returns the direction, or the one against it, that goes up the screen; of a level one, that to the right. */
const upward = (p: Place): Place => (p[1] > 0 || (p[1] === 0 && p[0] < 0) ? [-p[0], -p[1]] : p);

function text(at: Place, turn: number, words: string): LengthText {
  const [sin, cos] = [Math.abs(Math.sin((turn * Math.PI) / 180)), Math.abs(Math.cos((turn * Math.PI) / 180))];
  const [wide, tall] = [widthOf(words, true) / 2, textHeight / 2];
  const half: Place = [wide * cos + tall * sin, wide * sin + tall * cos];
  return { at, turn, box: { low: sub(at, half), high: add(at, half) } };
}
