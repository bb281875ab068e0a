/** The person on the machine, seen from their right. */

import type { Body } from "../../api.ts";
import { capsule } from "../../drawing/capsule.ts";
import { onScreen } from "../../drawing/view.ts";
import type { Stage } from "./stage.ts";

/** BodyShape draws the segments; stale tells that the machine has moved on since the person was put on it. */
export function BodyShape({ stage, body, stale }: { stage: Stage; body: Body; stale: boolean }) {
  const at = (p: [number, number]) => onScreen(stage.view, p);
  const px = (metres: number) => metres * stage.view.scale;
  return (
    <g class={stale ? "body stale" : "body"}>
      {body.segments.map((s) => (
        <path
          class={s.works ? "segment works" : "segment"}
          d={capsule(at(s.from), px(s.near), at(s.to), px(s.far))}
          key={s.name}
        />
      ))}
      {body.joints.map((j) => {
        const [x, y] = at(j.at);
        return <circle class="joint" cx={x} cy={y} r={3.5} key={j.name} />;
      })}
    </g>
  );
}
