/** Which way is up, by a plumb line or a level one, and which way is forward. */

import { Choice } from "../../parts/choice.tsx";
import { words } from "../../words.ts";
import type { Answers } from "./answers.ts";
import type { Change } from "./taps.ts";

const ways = Object.entries(words.build.uprights).map(([value, name]) => ({ value, name }));

export function UprightStep({ answers: a, change }: { answers: Answers; change: Change }) {
  return (
    <>
      <h2>{words.build.whichUp}</h2>
      <Choice
        label={words.build.whichUp}
        hideLabel
        options={ways}
        value={a.upright}
        choose={(v) => change({ upright: v as Answers["upright"] })}
      />
      <p role="status">{words.build.uprightHints[a.upright]}</p>
      <p class="faint">{words.build.uprightSkip}</p>
      <label class="check">
        <input type="checkbox" checked={a.mirror} onChange={() => change({ mirror: !a.mirror })} />
        {words.build.mirror}
      </label>
    </>
  );
}
