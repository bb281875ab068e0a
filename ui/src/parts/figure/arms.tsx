/** Moment arms, the line of gravity, and forces as arrows. */

import type { Arm, Force } from "../../api.ts";
import { head, segment } from "../../drawing/path.ts";
import { add, distance, length, lerp, type Place, sub, times, unit } from "../../drawing/place.ts";
import { onScreen } from "../../drawing/view.ts";
import { lengthText } from "../../units.ts";
import type { Stage } from "./stage.ts";

const roomForLength = 46; // px, of an arm along which its length can be written

/** Arms draws each arm from its axis square to the line its force acts along, with its length. */
export function Arms({ stage, kinds }: { stage: Stage; kinds: ReadonlySet<string> }) {
  return (
    <g class="arms">
      {stage.frame.arms
        .filter((a) => kinds.has(a.kind))
        .map((a) => (
          <OneArm arm={a} stage={stage} key={`${a.kind} ${a.name}`} />
        ))}
    </g>
  );
}

function OneArm({ arm, stage }: { arm: Arm; stage: Stage }) {
  const [axis, foot, acts] = [arm.axis, arm.foot, arm.acts].map((p) => onScreen(stage.view, p)) as [
    Place,
    Place,
    Place,
  ];
  const long = distance(axis, foot);
  if (long < 2) return null;
  const beyond = add(foot, times(unit(sub(foot, acts)), 14));
  return (
    <g class={`arm ${arm.kind}-arm`}>
      <path class="line-of-force" d={segment(acts, beyond)} />
      <path class="lever" d={segment(axis, foot)} />
      <path class="tip" d={head(axis, foot, 8) + head(foot, axis, 8)} />
      {long > roomForLength ? (
        <ArmLength at={lerp(axis, foot, 0.5)} along={sub(foot, axis)} text={lengthText(stage.units, arm.length)} />
      ) : (
        <text class="halo beside" x={beyond[0] + 6} y={beyond[1] + 14}>
          {lengthText(stage.units, arm.length)}
        </text>
      )}
    </g>
  );
}

function ArmLength({ at, along, text }: { at: Place; along: Place; text: string }) {
  let turn = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  if (Math.abs(turn) > 90) turn -= Math.sign(turn) * 180;
  return (
    <text
      class="halo"
      transform={`translate(${at[0].toFixed(1)} ${at[1].toFixed(1)}) rotate(${turn.toFixed(1)})`}
      dy="-5"
    >
      {text}
    </text>
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
