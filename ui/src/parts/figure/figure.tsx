/** The side view: the machine where it stands, the load ribbon along its contact's path, and what explains it. */

import type { Body, Frame } from "../../api.ts";
import { along, type Label, place, throughout } from "../../drawing/labels.ts";
import { edge } from "../../drawing/ribbon.ts";
import { onScreen } from "../../drawing/view.ts";
import { stackOnScreen } from "../../drawing/weights.ts";
import { force, mass } from "../../units.ts";
import { words } from "../../words.ts";
import { Arms, armsOf, Forces, Gravity, type LaidArm } from "./arms.tsx";
import { BodyShape } from "./body.tsx";
import { Parts } from "./machine.tsx";
import { Can, canLabels, Here, RibbonShape, ThirdNames } from "./ribbon.tsx";
import { Axes, Ghost, Travels } from "./shown.tsx";
import { type Layer, type Stage, screen } from "./stage.ts";

export interface FigureProps {
  stage: Stage;
  show: ReadonlySet<Layer>;
  id: string; // of the hatching, once on a page
  trail?: Frame[]; // all poses, for the ways of load and contact
  body?: { shape: Body; stale: boolean };
  sticking?: number; // position
}

const contactOnly: ReadonlySet<string> = new Set(["contact"]);
const weightOnly: ReadonlySet<string> = new Set(["weight"]);

/** Figure is an SVG group; the svg element about it belongs to whoever shows it. */
export function Figure({ stage, show, id, trail, body, sticking }: FigureProps) {
  const kinds = new Set<string>();
  if (show.has("arms") || show.has("loadArm")) kinds.add("load");
  if (show.has("arms") || show.has("contactArm")) kinds.add("contact");
  if (show.has("rope")) kinds.add("rope");
  const arms = armsOf(stage, kinds);
  return (
    <g class="figure">
      <defs>
        <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="hatch" d="M0 0V6" />
        </pattern>
      </defs>
      {show.has("gravity") && <Gravity stage={stage} />}
      {show.has("ribbon") && <RibbonShape laid={stage.laid} hatch={id} band={show.has("band")} />}
      {body && <BodyShape stage={stage} body={body.shape} stale={body.stale} />}
      {show.has("ribbon") && <Can laid={stage.laid} sticking={sticking} />}
      {show.has("ribbon") && <ThirdNames laid={stage.laid} />}
      {show.has("ghost") && trail && <Ghost stage={stage} trail={trail} />}
      <Parts stage={stage} />
      {show.has("ribbon") && <Here laid={stage.laid} position={stage.frame.position} />}
      {show.has("axis") && <Axes stage={stage} />}
      {show.has("travels") && trail && <Travels stage={stage} trail={trail} />}
      <Arms arms={arms} />
      {show.has("gravity") && <Forces stage={stage} kinds={weightOnly} />}
      {show.has("forces") && <Forces stage={stage} kinds={contactOnly} />}
      <Contact stage={stage} />
      {show.has("names") && <Names stage={stage} arms={arms} ribbonShown={show.has("ribbon")} sticking={sticking} />}
    </g>
  );
}

function Contact({ stage }: { stage: Stage }) {
  const at = onScreen(stage.view, stage.frame.contact);
  return (
    <g class="contact">
      <circle cx={at[0]} cy={at[1]} r={7} />
      <circle class="centre" cx={at[0]} cy={at[1]} r={2.5} />
    </g>
  );
}

/** Names says what the parts are and how large the force is here, at the start and at the end. */
interface NamesProps {
  stage: Stage;
  arms: readonly LaidArm[];
  ribbonShown: boolean;
  sticking: number | undefined;
}

function Names({ stage, arms, ribbonShown, sticking }: NamesProps) {
  const { laid, drawing, frame, view } = stage;
  const labels: Label[] = [];
  const here = laid.ribbon.force[frame.position];
  if (ribbonShown && here !== undefined && !Number.isNaN(here)) {
    labels.push({ at: edge(laid, frame.position, here), text: force(stage.units, here), role: "load", bold: true });
  }
  for (const w of drawing.weights) {
    if (w.load && w.mass > 0) {
      labels.push({ at: screen(stage, w.on)(w.at), text: `${w.name} ${mass(stage.units, w.mass)}`, role: "load" });
    }
  }
  const axis = drawing.pins.find(
    (p) => p.ground && frame.arms.some((a) => a.axis[0] === p.at[0] && a.axis[1] === p.at[1]),
  );
  if (axis) labels.push({ at: onScreen(view, axis.at), text: words.figure.axis, role: "ink" });
  labels.push({ at: onScreen(view, frame.contact), text: words.figure.contact, role: "person" });
  if (ribbonShown) labels.push(...canLabels(laid, sticking, stage.units));
  const written = arms.flatMap((a) => (a.length ? [a.length.box] : []));
  return (
    <g class="names">
      {place(labels, stage.size, avoided(stage, ribbonShown), written).map((l) => (
        <g key={l.text}>
          {l.lead && <path class="lead" d={`M${l.at[0]} ${l.at[1]}L${l.x > l.at[0] ? l.x : l.x + 8} ${l.y - 4}`} />}
          <text class={`halo ${l.role}${l.bold ? " bold" : ""}`} x={l.x} y={l.y}>
            {l.text}
          </text>
        </g>
      ))}
    </g>
  );
}

/** avoided lists places that labels keep off: links, the ribbon and the contact's path. */
function avoided(stage: Stage, ribbonShown: boolean) {
  const out = stage.drawing.links.flatMap((link, i) => {
    if (i === 0 || link.stack) return [];
    const at = screen(stage, i);
    return link.pieces.flatMap(([a, b]) => along(at(a), at(b)));
  });
  for (const w of stage.drawing.weights.filter((each) => each.stack)) {
    out.push(...throughout(stackOnScreen(w, screen(stage, w.on)(w.at), stage.view.scale)));
  }
  for (const a of stage.frame.arms) out.push(...along(onScreen(stage.view, a.axis), onScreen(stage.view, a.foot)));
  if (!ribbonShown) return out;
  const { laid } = stage;
  for (let k = 0; k < laid.ribbon.base.length; k += 3) {
    const f = laid.ribbon.force[k]!;
    out.push(...along(edge(laid, k, 0), edge(laid, k, Number.isNaN(f) ? 0 : f), 8));
  }
  return out;
}
