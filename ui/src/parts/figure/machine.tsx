/** Links, pins, guides, wheels, lines and weights of the machine where it stands. */

import type { Line, Pin, Weight, Wheel } from "../../api.ts";
import { bracket, polygon, polyline, segment } from "../../drawing/path.ts";
import type { Place } from "../../drawing/place.ts";
import { onScreen } from "../../drawing/view.ts";
import { stackOnScreen, stackPlate } from "../../drawing/weights.ts";
import { type Stage, screen } from "./stage.ts";

/** Parts draws the machine where it stands. */
export function Parts({ stage }: { stage: Stage }) {
  return (
    <>
      <Guides stage={stage} />
      <Weights stage={stage} />
      <Links stage={stage} />
      <Wheels stage={stage} />
      <Lines stage={stage} />
      <Pins stage={stage} />
    </>
  );
}

/** Links draws each moving link as a rounded bar along its pieces. */
export function Links({ stage }: { stage: Stage }) {
  return (
    <g class="links">
      {stage.drawing.links.map((link, i) => {
        if (i === 0 || link.stack) return null;
        const at = screen(stage, i);
        const d = link.pieces.map(([a, b]) => segment(at(a), at(b))).join("");
        return (
          <g key={link.name}>
            <path class="link-rim" d={d} />
            <path class="link-core" d={d} />
          </g>
        );
      })}
    </g>
  );
}

export function Guides({ stage }: { stage: Stage }) {
  return (
    <g class="guides">
      {stage.drawing.guides.map((g) => {
        const at = screen(stage, g.on);
        return <path d={segment(at(g.from), at(g.to))} key={g.name} />;
      })}
    </g>
  );
}

export function Pins({ stage }: { stage: Stage }) {
  return (
    <g class="pins">
      {stage.drawing.pins.map((pin) => (
        <OnePin pin={pin} at={screen(stage, pin.on)(pin.at)} key={pin.name} />
      ))}
    </g>
  );
}

function OnePin({ pin, at }: { pin: Pin; at: Place }) {
  return (
    <g>
      {pin.ground && <path class="support" d={bracket(at, 11)} />}
      <circle class="pin" cx={at[0]} cy={at[1]} r={pin.ground ? 5.5 : 4} />
    </g>
  );
}

export function Wheels({ stage }: { stage: Stage }) {
  return (
    <g class="wheels">
      {stage.drawing.wheels.map((w) => (
        <OneWheel wheel={w} stage={stage} key={w.name} />
      ))}
    </g>
  );
}

function OneWheel({ wheel, stage }: { wheel: Wheel; stage: Stage }) {
  const at = screen(stage, wheel.on);
  const axis = at(wheel.axis);
  const mark = wheel.outline[0];
  return (
    <g class={wheel.cam ? "wheel cam" : "wheel"}>
      <path d={polygon(wheel.outline.map(at))} />
      {wheel.cam && mark && <path class="spoke" d={segment(axis, at(mark))} />}
      <circle class="hub" cx={axis[0]} cy={axis[1]} r={2.5} />
    </g>
  );
}

/** Lines draws ropes, springs, bands and dampers where they now run. */
export function Lines({ stage }: { stage: Stage }) {
  return (
    <g class="lines">
      {stage.drawing.lines.map((line, i) => {
        const course = stage.frame.lines[i];
        if (!course) return null;
        const places = course.course.map((p) => onScreen(stage.view, p));
        const slack = course.slack ? " slack" : "";
        return <path class={`line ${kindOf(line)}${slack}`} d={courseOf(line, places)} key={line.name} />;
      })}
    </g>
  );
}

const kindOf = (line: Line): string => line.kind.replace(" ", "-");

/** courseOf draws a coil for a spring, otherwise the course as it is. */
function courseOf(line: Line, places: Place[]): string {
  const [a, b] = [places[0], places.at(-1)];
  if (line.kind !== "spring" || !a || !b) return polyline(places);
  const turns = 9;
  const across: Place = [-(b[1] - a[1]), b[0] - a[0]];
  const l = Math.hypot(...across) || 1;
  const coil: Place[] = [a];
  for (let i = 1; i < turns * 2; i++) {
    const t = 0.1 + (0.8 * i) / (turns * 2);
    const side = (i % 2 ? 6 : -6) / l;
    coil.push([a[0] + (b[0] - a[0]) * t + across[0] * side, a[1] + (b[1] - a[1]) * t + across[1] * side]);
  }
  return polyline([...coil, b]);
}

export function Weights({ stage }: { stage: Stage }) {
  return (
    <g class="weights">
      {stage.drawing.weights
        .filter((w) => w.mass > 0)
        .map((w) => (
          <OneWeight weight={w} stage={stage} key={w.name} />
        ))}
      {stage.frame.chains.map((c) => {
        const [top, foot] = [onScreen(stage.view, c.top), onScreen(stage.view, c.foot)];
        const heap = c.heap ? segment([foot[0] - 12, foot[1]], [foot[0] + 12, foot[1]]) : "";
        return <path class="chain" d={segment(top, foot) + heap} key={c.name} />;
      })}
    </g>
  );
}

function OneWeight({ weight, stage }: { weight: Weight; stage: Stage }) {
  const at = screen(stage, weight.on)(weight.at);
  const role = weight.load ? "weight" : "weight own";
  if (weight.stack) return <Stack weight={weight} at={at} scale={stage.view.scale} />;
  return (
    <g class={role}>
      <circle cx={at[0]} cy={at[1]} r={Math.max(3, weight.radius * stage.view.scale)} />
      <circle class="centre" cx={at[0]} cy={at[1]} r={3} />
    </g>
  );
}

function Stack({ weight, at, scale }: { weight: Weight; at: Place; scale: number }) {
  const box = stackOnScreen(weight, at, scale);
  const [left, wide, tall] = [box.low[0], box.high[0] - box.low[0], box.high[1] - box.low[1]];
  const gap = stackPlate * scale;
  let plates = "";
  for (let y = gap; y < tall - gap / 2; y += gap) plates += segment([left, at[1] + y], [left + wide, at[1] + y]);
  return (
    <g class="weight stack">
      <rect x={left} y={at[1]} width={wide} height={tall} rx={2} />
      <path class="plates" d={plates} />
    </g>
  );
}
