/** The drawing board: the side view, moved along its stroke or altered under the finger. */

import { type ReadonlySignal, signal, useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import type { Edit } from "../../api.ts";
import { type Place, sub } from "../../drawing/place.ts";
import { type Laid, mostCan, ribbonOf, withPerson } from "../../drawing/ribbon.ts";
import { onGround, onScreen, panned, pinched, type Size, type View, within, zoomed } from "../../drawing/view.ts";
import { Figure } from "../../parts/figure/figure.tsx";
import { Parts } from "../../parts/figure/machine.tsx";
import type { Layer, Stage } from "../../parts/figure/stage.ts";
import { glassFor, Loupe, nearer } from "../../parts/loupe.tsx";
import { fingers, type Grip, type Touched } from "../../parts/pointers.ts";
import { useSize } from "../../parts/size.ts";
import type { Bench } from "../../state/bench.ts";
import { kept, units } from "../../state/taste.ts";
import { trainee } from "../../state/trainee.ts";
import { fixed } from "../../units.ts";
import { words } from "../../words.ts";
import { Backdrop } from "./backdrop.tsx";
import { HandleMarks } from "./handlemarks.tsx";
import { grabbed, type Handle, handlesOf } from "./handles.ts";
import { Missing } from "./missing.tsx";
import { useScales } from "./view.ts";

export type Mode = "work" | "alter";
export const mode = signal<Mode>("work");
export const layers = kept<Layer[]>("layers", ["arms", "forces", "names", "band", "ghost"]);

const fingertip = 26; // px, within which a handle is taken hold of
const nearPath = 70; // px, within which the contact's path is
const wheelStep = 0.0016; // magnification for each px of a mouse wheel, as an exponent

/** Held is the handle under the finger and where it has been taken. */
export interface Held {
  handle: Handle;
  to: Place; // m
  touch: boolean;
}

export function Board({ bench }: { bench: Bench }) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div class={`board-drawing mode-${mode.value}`} ref={ref}>
      {size && size.height > 40 && <Drawn bench={bench} size={size} />}
    </div>
  );
}

function Drawn({ bench, size }: { bench: Bench; size: Size }) {
  const svg = useRef<SVGSVGElement>(null);
  const camera = useSignal<View | null>(null);
  const held = useSignal<Held | null>(null);
  const shown = bench.shown.value;
  const scales = useScales(bench.settled.value, size);
  const frame = bench.frame.value;
  const fitted = scales?.view ?? null;
  const view = camera.value ?? fitted;
  const structure = shown?.structure;
  const drawing = shown?.drawing ?? bench.settled.value?.drawing;
  const handles = useMemo(
    () => (structure && drawing && frame ? handlesOf(structure, drawing, frame) : []),
    [structure, drawing, frame],
  ).filter((h) => !fitted || onPicture(fitted, size, h.at));

  const touched = useRef<Touched>(null!);
  touched.current = touching({ bench, view, fitted, handles, camera, held });
  const there = view !== null;
  useEffect(() => (svg.current && there ? fingers(svg.current, () => touched.current) : undefined), [there]);

  if (!view || !fitted || !scales || !frame || !drawing || !shown?.curve)
    return <p class="board-wait faint">{words.loading}</p>;
  // while something moves under the finger the person stands as before
  const settled = bench.settled.value;
  const person = shown.person ?? null;
  const body = frame.body ?? settled?.frames.find((f) => f.position === frame.position)?.body ?? null;
  const ribbon = withPerson(ribbonOf(shown.curve, "lifting", shown.band), person);
  const laid: Laid = { ribbon, view, perNewton: scales.perNewton, full: scales.full * mostCan };
  const stage: Stage = { drawing, frame, laid, view, size, units: units.value };
  const show = new Set<Layer>(["ribbon", ...layers.value]);
  const trail = bench.trial.value ? [] : shown.frames;
  const turn = (e: WheelEvent) => {
    e.preventDefault();
    const box = svg.current!.getBoundingClientRect();
    const at: Place = [e.clientX - box.left, e.clientY - box.top];
    camera.value = within(zoomed(view, at, Math.exp(-e.deltaY * wheelStep)), fitted, at);
  };
  return (
    <>
      <Backdrop sheet={bench.sheet.value} view={view} />
      <svg
        ref={svg}
        class="drawing"
        width={size.width}
        height={size.height}
        viewBox={`0 0 ${size.width} ${size.height}`}
        role="group"
        aria-label={shown.name}
        onWheel={turn}
      >
        <g>
          <Figure
            stage={stage}
            show={show}
            id="unsure"
            trail={trail}
            {...(body && trainee.value ? { body: { shape: body, stale: !frame.body } } : {})}
            {...(person?.sticking !== null && person?.sticking !== undefined ? { sticking: person.sticking } : {})}
          />
        </g>
        {mode.value === "alter" && <HandleMarks bench={bench} handles={handles} held={held} view={view} size={size} />}
        <LoupeOver held={held} stage={stage} />
      </svg>
      {camera.value && (
        <button type="button" class="fit" onClick={() => (camera.value = null)}>
          {words.machine.fit}
        </button>
      )}
      {!body && trainee.value && <Missing bench={bench} />}
      <Rule view={view} perNewton={scales.perNewton} lean={drawing.lean} />
    </>
  );
}

/** onPicture reports whether a place can be seen: a seat with nobody on it may be far from all that is drawn. */
function onPicture(fitted: View, size: Size, p: Place): boolean {
  const [x, y] = onScreen(fitted, p);
  return x > 0 && y > 0 && x < size.width && y < size.height;
}

/**
 * LoupeOver shows the machine's parts a second time, nearer, while a finger
 * holds something. A copy of the whole figure would be made anew by the browser
 * for every move.
 */
function LoupeOver({ held, stage }: { held: ReadonlySignal<Held | null>; stage: Stage }) {
  if (!held.value?.touch) return null;
  const at = onScreen(stage.view, held.value.to);
  const glass = glassFor(at, stage.size);
  return (
    <Loupe glass={glass}>
      <Parts stage={{ ...stage, view: nearer(stage.view, at, glass) }} />
    </Loupe>
  );
}

/** Rule tells the scale of lengths and of the ribbon's width, and from where one looks. */
function Rule({ view, perNewton, lean }: { view: View; perNewton: number; lean: number }) {
  const u = units.value;
  const long = u.imperial ? 12 * 0.0254 : 0.2;
  const newtons = u.imperial ? 50 * u.force.perUnit : 100;
  return (
    <p class="rule-line" aria-hidden="true">
      <svg width={Math.max(4, long * view.scale)} height="8">
        <path d={`M.5 1V7M.5 4H${long * view.scale - 0.5}M${long * view.scale - 0.5} 1V7`} />
      </svg>
      {u.imperial ? "12 in" : "20 cm"}
      <svg width={Math.max(4, newtons * perNewton)} height="8" class="rule-force">
        <rect width={Math.max(4, newtons * perNewton)} height="8" />
      </svg>
      {u.imperial ? "50 lbf" : "100 N"}
      {leanText(lean) && <span>{leanText(lean)}</span>}
    </p>
  );
}

const upright = 3; // degrees within which a leaning plane is called upright, or level

/** leanText says from where a machine is seen that does not move in an upright plane. */
function leanText(lean: number): string {
  const degrees = Math.abs((lean * 180) / Math.PI);
  if (degrees < upright) return "";
  return degrees > 90 - upright ? words.figure.fromAbove : words.figure.leaning(fixed(degrees, 0));
}

interface Touching {
  bench: Bench;
  view: View | null;
  fitted: View | null;
  handles: Handle[];
  camera: { value: View | null };
  held: { value: Held | null };
}

/** touching says what fingers on the board do, as things stand. */
function touching(t: Touching): Touched {
  return {
    hold(at, e) {
      if (!t.view) return still;
      if (mode.value === "alter") {
        const handle = grabbed(t.handles, onGround(t.view, at), fingertip / t.view.scale);
        if (handle) return holdHandle(t, handle, at, e);
      } else if (pathDistance(t, at) < nearPath) return holdContact(t, at);
      return holdPaper(t, at);
    },
    pinch(from, to) {
      if (!t.view || !t.fitted) return;
      t.camera.value = within(pinched(t.camera.value ?? t.view, from, to), t.fitted, to[0]);
    },
  };
}

const still: Grip = { move() {}, end() {}, cancel() {} };

/** holdHandle drags a point or vertex; its ring moves with the drawing, and what it changes is kept when it is let go. */
function holdHandle(t: Touching, handle: Handle, from: Place, e: PointerEvent): Grip {
  const { bench, held } = t;
  const view = t.view!;
  const driver = bench.shown.value?.curve?.driver[bench.position.value] ?? 0;
  const offset = sub(onScreen(view, handle.at), from);
  let edits: Edit[] = [];
  held.value = { handle, to: handle.at, touch: e.pointerType !== "mouse" };
  bench.ready();
  return {
    move(at, e) {
      const to = onGround(view, [at[0] + offset[0], at[1] + offset[1]]);
      edits = [handle.edit(to, driver)];
      bench.attempt(edits, e.timeStamp, () => {
        if (held.value) held.value = { ...held.value, to };
      });
    },
    end() {
      held.value = null;
      if (!edits.length || bench.problems.value.length) bench.drop();
      else bench.keep(edits);
    },
    cancel() {
      held.value = null;
      bench.drop();
    },
  };
}

function pathDistance(t: Touching, at: Place): number {
  const contact = t.bench.shown.value?.curve?.contact ?? [];
  return Math.min(...contact.map((p) => distanceTo(t.view!, p, at)), Number.POSITIVE_INFINITY);
}

function distanceTo(view: View, p: Place, at: Place): number {
  const q = onScreen(view, p);
  return Math.hypot(q[0] - at[0], q[1] - at[1]);
}

/** holdContact moves the machine along its stroke. */
function holdContact(t: Touching, from: Place): Grip {
  const { bench } = t;
  const before = bench.share.value;
  const follow = (at: Place) => {
    const curve = bench.shown.value?.curve;
    if (!curve) return;
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    curve.contact.forEach((p, k) => {
      const d = distanceTo(t.view!, p, at);
      if (d < least) [best, least] = [k, d];
    });
    bench.share.value = curve.travel[best]! / (curve.travel.at(-1) || 1);
  };
  follow(from);
  return {
    move: follow,
    end() {},
    cancel() {
      bench.share.value = before;
    },
  };
}

/** holdPaper shifts the view. */
function holdPaper(t: Touching, from: Place): Grip {
  const before = t.camera.value;
  const view = t.view!;
  return {
    move(at) {
      const by = sub(at, from);
      if (t.camera.value || Math.hypot(...by) > 4) t.camera.value = panned(view, by);
    },
    end() {},
    cancel() {
      t.camera.value = before;
    },
  };
}
