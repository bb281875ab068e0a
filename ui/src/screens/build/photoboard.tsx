/** A photo to tap on: one finger places and moves marks under a loupe, two fingers come nearer. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Photo, Pixel } from "../../api.ts";
import { place, widthOf } from "../../drawing/labels.ts";
import { polygon, polyline, segment } from "../../drawing/path.ts";
import { add, type Place } from "../../drawing/place.ts";
import { fit, onGround, onScreen, panned, pinched, type Size, type View, within, zoomed } from "../../drawing/view.ts";
import { glassFor, Loupe, Magnified } from "../../parts/loupe.tsx";
import { fingers, type Grip, type Touched } from "../../parts/pointers.ts";
import { useSize } from "../../parts/size.ts";
import { addressOf } from "../../server/client.ts";
import { words } from "../../words.ts";

export interface Mark {
  at: Pixel;
  name: string;
  quiet?: boolean; // its name is read out, not written: there are many, close together
}

/** Outline is drawn over the photo: what was tapped, joined, or what was found. */
export interface Outline {
  at: Pixel[];
  closed: boolean;
}

export interface PhotoBoardProps {
  photo: Photo;
  marks: Mark[];
  outlines: Outline[];
  more: boolean; // another mark may be placed
  place: (at: Pixel) => void;
  move: (i: number, at: Pixel) => void;
}

const fingertip = 26; // px, within which a mark is taken hold of
const placing = 13; // px, the same while further marks are placed, which may stand close together

/** up turns a pixel, whose second number goes down, into a place, whose second goes up, and back. */
const up = (p: Pixel | Place): Place => [p[0], -p[1]];

export function PhotoBoard(props: PhotoBoardProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div class="photo-board" ref={ref} style={{ "--shape": `${props.photo.width} / ${props.photo.height}` }}>
      {size && size.height > 40 && <Drawn {...props} size={size} />}
    </div>
  );
}

function Drawn({ photo, marks, outlines, more, place: put, move, size }: PhotoBoardProps & { size: Size }) {
  const svg = useRef<SVGSVGElement>(null);
  const camera = useSignal<View | null>(null);
  const held = useSignal<{ at: Pixel; touch: boolean } | null>(null);
  const fitted = fit({ low: [0, -photo.height], high: [photo.width, 0] }, size, 4);
  const view = camera.value ?? fitted;
  const touched = useRef<Touched>(null!);
  const clamp = (p: Place): Pixel => [
    Math.min(photo.width, Math.max(0, p[0])),
    Math.min(photo.height, Math.max(0, -p[1])),
  ];

  touched.current = {
    hold(at, e) {
      const near = marks.findIndex((m) => {
        const q = onScreen(view, up(m.at));
        return Math.hypot(q[0] - at[0], q[1] - at[1]) < (more ? placing : fingertip);
      });
      if (near < 0 && !more) return holdPaper(camera, view, at);
      const start = near >= 0 ? marks[near]!.at : clamp(onGround(view, at));
      const offset: Place =
        near >= 0 ? [onScreen(view, up(start))[0] - at[0], onScreen(view, up(start))[1] - at[1]] : [0, 0];
      const touch = e.pointerType !== "mouse";
      let now = start;
      held.value = { at: now, touch };
      return {
        move(to) {
          now = clamp(onGround(view, [to[0] + offset[0], to[1] + offset[1]]));
          held.value = { at: now, touch };
          if (near >= 0) move(near, now);
        },
        end() {
          held.value = null;
          if (near < 0) put(now);
        },
        cancel() {
          held.value = null;
          if (near >= 0) move(near, start);
        },
      };
    },
    pinch(from, to) {
      camera.value = within(pinched(camera.value ?? view, from, to), fitted, to[0]);
    },
  };
  useEffect(() => fingers(svg.current!, () => touched.current), []);

  const corner = onScreen(view, [0, 0]);
  const shown = marks.map((m) => onScreen(view, up(m.at)));
  const turn = (e: WheelEvent) => {
    e.preventDefault();
    const box = svg.current!.getBoundingClientRect();
    const at: Place = [e.clientX - box.left, e.clientY - box.top];
    camera.value = within(zoomed(view, at, Math.exp(-e.deltaY * 0.0016)), fitted, at);
  };
  return (
    <>
      <svg
        ref={svg}
        width={size.width}
        height={size.height}
        role="group"
        aria-label={words.build.tapNext}
        onWheel={turn}
      >
        <g id="photo-figure">
          <image
            href={addressOf("GET /api/photos/{id}", { id: photo.id })}
            x={corner[0]}
            y={corner[1]}
            width={photo.width * view.scale}
            height={photo.height * view.scale}
          />
          {outlines.map((o, i) => (
            <Trace d={(o.closed ? polygon : polyline)(o.at.map((p) => onScreen(view, up(p))))} key={i} />
          ))}
          {marks.map((m, i) => (
            <PhotoMark
              mark={m}
              at={shown[i]!}
              nudge={(by) => move(i, clamp([m.at[0] + by[0], -m.at[1] - by[1]]))}
              key={`${i} ${m.name}`}
            />
          ))}
          <Names marks={marks} shown={shown} size={size} />
          {held.value && (
            <circle
              class="photo-line"
              cx={onScreen(view, up(held.value.at))[0]}
              cy={onScreen(view, up(held.value.at))[1]}
              r={9}
            />
          )}
        </g>
        {held.value?.touch && <PhotoLoupe at={onScreen(view, up(held.value.at))} size={size} />}
      </svg>
      {more && !marks.length && !camera.value && <p class="photo-hint">{words.build.nearerHint}</p>}
      {camera.value && (
        <button type="button" class="fit" onClick={() => (camera.value = null)}>
          {words.machine.fit}
        </button>
      )}
      {more && (
        <button type="button" class="unseen-until-focus" onClick={() => put([photo.width / 2, photo.height / 2])}>
          {words.build.middle}
        </button>
      )}
    </>
  );
}

const ringed: Place[] = [
  [0, 0],
  [9, 0],
  [-9, 0],
  [0, 9],
  [0, -9],
]; // px, what a mark covers, for names to keep off

function Names({ marks, shown, size }: { marks: Mark[]; shown: Place[]; size: Size }) {
  const labels = marks.flatMap((m, i) => (m.quiet ? [] : [{ at: shown[i]!, text: m.name, role: "mark", bold: true }]));
  const covered = shown.flatMap((p) => ringed.map((r) => add(p, r)));
  return (
    <g class="photo-names" aria-hidden="true">
      {place(labels, size, covered).map((l) => (
        <g key={l.text}>
          {l.lead && <path d={segment(l.at, [l.x + (l.x < l.at[0] ? widthOf(l.text, true) : 0), l.y - 4])} />}
          <text x={l.x} y={l.y}>
            {l.text}
          </text>
        </g>
      ))}
    </g>
  );
}

function Trace({ d }: { d: string }) {
  if (!d) return null;
  return (
    <>
      <path class="photo-line under" d={d} />
      <path class="photo-line" d={d} />
    </>
  );
}

const ways: Record<string, Place> = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function PhotoMark({ mark, at, nudge }: { mark: Mark; at: Place; nudge: (by: Place) => void }) {
  const press = (e: KeyboardEvent) => {
    const way = ways[e.key];
    if (!way) return;
    e.preventDefault();
    const far = e.shiftKey ? 10 : 1;
    nudge([way[0] * far, way[1] * far]);
  };
  return (
    <g class="photo-mark" tabindex={0} role="button" aria-label={words.build.point(mark.name)} onKeyDown={press}>
      <circle class="reach" cx={at[0]} cy={at[1]} r={22} />
      <circle class="ring" cx={at[0]} cy={at[1]} r={7} />
      <circle class="dot" cx={at[0]} cy={at[1]} r={7} />
    </g>
  );
}

function holdPaper(camera: { value: View | null }, view: View, from: Place): Grip {
  const before = camera.value;
  return {
    move(at) {
      camera.value = panned(view, [at[0] - from[0], at[1] - from[1]]);
    },
    end() {},
    cancel() {
      camera.value = before;
    },
  };
}

function PhotoLoupe({ at, size }: { at: Place; size: Size }) {
  const glass = glassFor(at, size);
  return (
    <Loupe glass={glass}>
      <Magnified of="photo-figure" at={at} glass={glass} />
    </Loupe>
  );
}
