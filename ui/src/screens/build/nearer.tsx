/** Which side of the photo was nearer: asked if a plate alone leaves it open. */

import { useId } from "preact/hooks";
import type { PhotoSide } from "../../api.ts";
import { words } from "../../words.ts";
import type { Answers } from "./answers.ts";
import type { Change } from "./taps.ts";

type Answer = PhotoSide | "straight";

interface NearerStepProps {
  sides: readonly PhotoSide[];
  answers: Answers;
  change: Change;
}

export function NearerStep({ sides, answers: a, change }: NearerStepProps) {
  const name = useId();
  const options: Answer[] = [...sides, "straight"];
  const upright = sides.includes("top");
  return (
    <>
      <fieldset class="picture-choice">
        <legend>{words.build.near}</legend>
        {options.map((o) => (
          <label key={o}>
            <input type="radio" name={name} value={o} checked={a.near === o} onChange={() => change({ near: o })} />
            <span>
              <Standing nearer={o} fromTheSide={upright} />
              {words.build.sides[o]}
            </span>
          </label>
        ))}
      </fieldset>
      <p class="faint">
        {upright ? words.build.seenFromTheSide : words.build.seenFromAbove} {words.build.nearHint}
      </p>
    </>
  );
}

/** Half the picture's slant: px along the view by which each end of the machine comes nearer or goes further. */
const slant = 12;
const [width, height] = [108, 84];

/**
 * Standing shows phone and machine: from above, the phone below and looking up,
 * or from the side, the phone at the left and looking right.
 */
function Standing({ nearer, fromTheSide }: { nearer: Answer; fromTheSide: boolean }) {
  const lean = nearer === "straight" ? 0 : nearer === "left" || nearer === "top" ? slant : -slant;
  // from above: a is the left end, b the right one; from the side: a is the upper end, b the lower one
  const a = fromTheSide ? [72 - lean, 12] : [18, 24 + lean];
  const b = fromTheSide ? [72 + lean, 72] : [90, 24 - lean];
  const eye = fromTheSide ? [18, 42] : [54, 70];
  const phone = fromTheSide ? { x: 10, y: 31, width: 6, height: 22 } : { x: 43, y: 72, width: 22, height: 6 };
  const near = lean > 0 ? a : b;
  return (
    <svg class="standing" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path class="sight" d={`M${eye}L${a}M${eye}L${b}`} />
      <path class="machine" d={`M${a}L${b}`} />
      {lean !== 0 && <circle class="near" cx={near[0]} cy={near[1]} r={6} />}
      <rect class="phone" {...phone} rx={2} />
    </svg>
  );
}
