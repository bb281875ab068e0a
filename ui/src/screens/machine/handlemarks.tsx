/** The handles of what can be moved: rings under a finger, buttons for the keyboard. */

import type { Signal } from "@preact/signals";
import { onScreen, type Size, type View } from "../../drawing/view.ts";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { lengthText } from "../../units.ts";
import { words } from "../../words.ts";
import type { Held } from "./board.tsx";
import type { Handle } from "./handles.ts";

const nudge = 0.001; // m
const stride = 0.01;

const ways: Record<string, [number, number]> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface Props {
  bench: Bench;
  handles: Handle[];
  held: Signal<Held | null>;
  view: View;
  size: Size;
}

export function HandleMarks({ bench, handles, held, view, size }: Props) {
  return (
    <g class="handles">
      {handles.map((h) => (
        <Mark bench={bench} handle={h} held={held} view={view} key={h.key} />
      ))}
      {held.value && <Reading held={held.value} view={view} size={size} />}
    </g>
  );
}

function Mark({ bench, handle, held, view }: Omit<Props, "handles" | "size"> & { handle: Handle }) {
  const mine = held.value?.handle.key === handle.key ? held.value : null;
  const place = mine?.to ?? handle.at;
  const at = onScreen(view, place);
  const u = units.value;
  const press = (e: KeyboardEvent) => {
    const way = ways[e.key];
    const to = mine?.to ?? handle.at;
    if (way) {
      e.preventDefault();
      const by = e.shiftKey ? stride : nudge;
      const driver = bench.shown.value?.curve?.driver[bench.position.value] ?? 0;
      const next: [number, number] = [to[0] + way[0] * by, to[1] + way[1] * by];
      held.value = { handle: mine?.handle ?? handle, to: next, touch: false };
      bench.attempt([handle.edit(next, driver)], e.timeStamp);
    } else if (e.key === "Escape" && mine) {
      held.value = null;
      bench.drop();
    } else if (e.key === "Enter" && mine) keep();
  };
  const keep = () => {
    if (!mine) return;
    held.value = null;
    if (bench.problems.value.length) bench.drop();
    else if (bench.edits.value.length) bench.keep(bench.edits.value);
  };
  return (
    <g
      class={`handle ${handle.kind}${mine ? " held" : ""}${mine && bench.problems.value.length ? " bad" : ""}`}
      tabindex={0}
      role="button"
      aria-roledescription={words.machine.movable}
      aria-label={words.machine.handle(handle.name, lengthText(u, place[0]), lengthText(u, place[1]))}
      onKeyDown={press}
      onBlur={keep}
      data-handle={handle.key}
    >
      <circle class="reach" cx={at[0]} cy={at[1]} r={22} />
      <circle class="ring" cx={at[0]} cy={at[1]} r={handle.kind === "vertex" ? 5 : 8} />
    </g>
  );
}

/** Reading tells where the held point is, on the side that has room for it. */
function Reading({ held, view, size }: { held: Held; view: View; size: Size }) {
  const at = onScreen(view, held.to);
  const left = at[0] > size.width / 2;
  const u = units.value;
  return (
    <text class="halo reading" x={at[0] + (left ? -14 : 14)} y={at[1] - 14} text-anchor={left ? "end" : "start"}>
      {held.handle.name} {lengthText(u, held.to[0])}, {lengthText(u, held.to[1])}
    </text>
  );
}
