/** What is the matter where the body cannot be at this place of the travel, and which setting helps. */

import { at } from "../../drawing/ribbon.ts";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { beside } from "../../units.ts";
import { words } from "../../words.ts";

export function Missing({ bench }: { bench: Bench }) {
  const preview = bench.shown.value?.person || bench.shown.value?.personGap ? bench.shown.value : bench.settled.value;
  if (!preview?.curve) return null;
  const why = preview.person
    ? preview.person.gap[at(preview.curve.travel, bench.share.value)]
    : preview.personGap.replace(/^.*at no position: /, ""); // that is told under Person;
  if (!why) return null;
  const help = (preview.person?.helps ?? preview.personHelps)[0];
  return (
    <p class="missing">
      {words.person.missing(why.split(";")[0]!)}{" "}
      {help && words.person.tryThis(help.setting, beside(units.value, help.value))}
    </p>
  );
}
