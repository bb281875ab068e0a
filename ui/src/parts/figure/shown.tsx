/** What an explanation points at besides the arms: the axis, and how far load and contact travel. */

import type { Frame } from "../../api.ts";
import { polyline } from "../../drawing/path.ts";
import { distance, moved, type Place } from "../../drawing/place.ts";
import { onScreen } from "../../drawing/view.ts";
import { travel } from "../../units.ts";
import { words } from "../../words.ts";
import { Links, Weights } from "./machine.tsx";
import type { Stage } from "./stage.ts";

/** Axes rings the fixed pins about which arms are counted. */
export function Axes({ stage }: { stage: Stage }) {
  const axes = new Map(stage.frame.arms.map((a) => [a.axis.join(" "), a.axis]));
  return (
    <g class="axes">
      {[...axes].map(([key, axis]) => {
        const at = onScreen(stage.view, axis);
        return <circle cx={at[0]} cy={at[1]} r={15} key={key} />;
      })}
    </g>
  );
}

/** Travels draws the ways of the loads and of the contact up to where the machine stands, with their lengths. */
export function Travels({ stage, trail }: { stage: Stage; trail: readonly Frame[] }) {
  const frames = trail.filter((f) => f.position <= stage.frame.position);
  const ways: { name: string; role: string; places: Place[] }[] = stage.drawing.weights
    .filter((w) => w.load && w.mass > 0)
    .map((w) => ({ name: w.name, role: "load", places: frames.map((f) => moved(f.poses[w.on]!)(w.at)) }));
  ways.push({ name: words.figure.contact, role: "person", places: frames.map((f) => f.contact) });
  return (
    <g class="travels">
      {ways.map((w) => {
        const places = w.places.map((p) => onScreen(stage.view, p));
        const end = places.at(-1);
        if (!end) return null;
        return (
          <g class={w.role} key={w.name}>
            <path d={polyline(places)} />
            <text class="halo" x={end[0] + 12} y={end[1] - 10}>
              {w.name} {travel(stage.units, lengthOf(w.places))}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function lengthOf(places: readonly Place[]): number {
  let sum = 0;
  for (let i = 1; i < places.length; i++) sum += distance(places[i - 1]!, places[i]!);
  return sum;
}

/** Ghost draws links and loads faintly where they are at both ends of the travel. */
export function Ghost({ stage, trail }: { stage: Stage; trail: readonly Frame[] }) {
  const ends = [trail[0], trail.at(-1)].filter((f) => f !== undefined && f.position !== stage.frame.position);
  return (
    <g class="ghost">
      {ends.map((frame) => (
        <g key={frame!.position}>
          <Weights stage={{ ...stage, frame: frame! }} />
          <Links stage={{ ...stage, frame: frame! }} />
        </g>
      ))}
    </g>
  );
}
