/** Moment arms, the line of gravity, and forces as arrows. */

import type { Arm, Force } from "../../api.ts";
import { type LengthText, lengthTexts, type Measured } from "../../drawing/lengths.ts";
import { head, segment } from "../../drawing/path.ts";
import { add, distance, length, lerp, type Place, sub, times, unit } from "../../drawing/place.ts";
import { onScreen } from "../../drawing/view.ts";
import { lengthText } from "../../units.ts";
import type { Stage } from "./stage.ts";

/** Laid is a moment arm on the screen, px, and where its length is written. */
export interface LaidArm extends Measured {
  arm: Arm;
  acts: Place;
  length: LengthText | null;
}

/** armsOf lays the arms of the kinds wanted, from the axis square to the line the force acts along. */
export function armsOf(stage: Stage, kinds: ReadonlySet<string>): LaidArm[] {
  const arms = stage.frame.arms
    .filter((a) => kinds.has(a.kind))
    .map((arm) => {
      const at = (p: Place): Place => onScreen(stage.view, p);
      const [axis, foot, acts] = [at(arm.axis), at(arm.foot), at(arm.acts)];
      const beyond = add(foot, times(unit(sub(foot, acts)), 14));
      return { arm, axis, foot, acts, beyond, text: lengthText(stage.units, arm.length) };
    })
    .filter((a) => distance(a.axis, a.foot) >= 2);
  const lengths = lengthTexts(arms, stage.size);
  return arms.map((a, i) => ({ ...a, length: lengths[i]! }));
}

export function Arms({ arms }: { arms: readonly LaidArm[] }) {
  return (
    <g class="arms">
      {arms.map((a) => (
        <OneArm laid={a} key={`${a.arm.kind} ${a.arm.name}`} />
      ))}
    </g>
  );
}

function OneArm({ laid }: { laid: LaidArm }) {
  const { axis, foot, acts, beyond, length } = laid;
  return (
    <g class={`arm ${laid.arm.kind}-arm`}>
      <path class="line-of-force" d={segment(acts, beyond)} />
      <path class="lever" d={segment(axis, foot)} />
      <path class="tip" d={head(axis, foot, 8) + head(foot, axis, 8)} />
      {length && (
        <text
          class="halo"
          transform={`translate(${length.at[0].toFixed(1)} ${length.at[1].toFixed(1)}) rotate(${length.turn.toFixed(1)})`}
          dy="0.35em"
        >
          {laid.text}
        </text>
      )}
    </g>
  );
}

/** Gravity draws the plumb line through every load. */
export function Gravity({ stage }: { stage: Stage }) {
  return (
    <g class="gravity">
      {stage.frame.forces
        .filter((f) => f.kind === "weight")
        .map((f) => {
          const at = onScreen(stage.view, f.at);
          return <path d={segment([at[0], at[1] - 26], [at[0], stage.size.height])} key={f.name} />;
        })}
    </g>
  );
}

const arrowLeast = 14; // px
const arrowMost = 130;

/** arrow returns both ends of a force's arrow on the screen, or null for one too small to draw. */
export function arrow(stage: Stage, f: Force): [Place, Place] | null {
  const size = length(f.vector);
  if (!(size > 0.5)) return null;
  const at = onScreen(stage.view, f.at);
  const long = Math.min(arrowMost, Math.max(arrowLeast, size * stage.laid.perNewton));
  return [at, add(at, times([f.vector[0], -f.vector[1]], long / size))];
}

/** Forces draws the forces of the kinds wanted as arrows from where they act. */
export function Forces({ stage, kinds }: { stage: Stage; kinds: ReadonlySet<string> }) {
  return (
    <g class="forces">
      {stage.frame.forces
        .filter((f) => kinds.has(f.kind))
        .map((f, i) => {
          const ends = arrow(stage, f);
          if (!ends) return null;
          const short = lerp(ends[0], ends[1], Math.max(0, 1 - 8 / Math.max(1, distance(ends[0], ends[1]))));
          return (
            <g class={`force ${f.kind}-force`} key={`${f.kind} ${f.name} ${i}`}>
              <path class="shaft" d={segment(ends[0], short)} />
              <path class="tip" d={head(ends[0], ends[1], 12)} />
            </g>
          );
        })}
    </g>
  );
}
