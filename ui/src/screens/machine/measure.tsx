/** Every number of the sheet, to be typed or stepped; the curve follows at once. */

import { signal } from "@preact/signals";
import { useRef, useState } from "preact/hooks";
import type { Value } from "../../api.ts";
import { ProblemList } from "../../parts/notes.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { force, lengthText, mass } from "../../units.ts";
import { words } from "../../words.ts";
import { ScaleReadings } from "./scale.tsx";
import { stepped } from "./stepped.ts";

const wanted = signal("");

export function MeasurePane({ bench }: { bench: Bench }) {
  const values = bench.settled.value?.structure?.values ?? [];
  const narrow = bench.settled.value?.band?.narrow;
  const shown = values.filter((v) => `${v.name} ${v.path}`.toLowerCase().includes(wanted.value.toLowerCase()));
  return (
    <div class="pane-body">
      <p class="faint">{values.length ? words.measure.lead : words.measure.none}</p>
      {narrow && (
        <p class="hint">
          {words.measure.narrow(narrow.name, force(units.value, narrow.half), force(units.value, narrow.without))}
        </p>
      )}
      {values.length > 8 && (
        <label class="find">
          <span>{words.measure.find}</span>
          <input type="search" value={wanted.value} onInput={(e) => (wanted.value = e.currentTarget.value)} />
        </label>
      )}
      <ScaleReadings bench={bench} />
      {grouped(shown).map(([group, members]) => (
        <section class="values" key={group}>
          <h2>{words.measure.groups[group] ?? words.measure.other}</h2>
          {members.map((v) => (
            <ValueRow value={v} bench={bench} key={v.path} />
          ))}
        </section>
      ))}
    </div>
  );
}

/** grouped parts the values by the first key of their paths, in the sheet's order. */
function grouped(values: readonly Value[]): [string, Value[]][] {
  const out = new Map<string, Value[]>();
  for (const v of values) {
    const group = /^[^.[]*/.exec(v.path)![0];
    const members = out.get(group);
    if (members) members.push(v);
    else out.set(group, [v]);
  }
  return [...out];
}

function ValueRow({ value: v, bench }: { value: Value; bench: Bench }) {
  const [typed, setTyped] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const text = typed ?? v.text;
  const attempt = (next: string) => {
    setTyped(next);
    bench.attempt([{ value: { path: v.path, text: next } }]);
  };
  const keep = () => {
    if (typed === null) return;
    setTyped(null);
    if (typed.trim() === v.text) bench.drop();
    else if (!bench.problems.value.length) bench.keep([{ value: { path: v.path, text: typed } }]);
    else {
      bench.notice.value = `${words.machine.cannot} ${bench.problems.value[0]!.message}`;
      bench.drop();
    }
  };
  const step = (by: number) => {
    const next = stepped(typed ?? v.text, v, by);
    if (next !== null) attempt(next);
  };
  const key = (e: KeyboardEvent) => {
    if (e.key === "Enter") keep();
    if (e.key === "Escape") {
      setTyped(null);
      bench.drop();
    }
    if (e.key === "ArrowUp" || e.key === "ArrowDown") {
      e.preventDefault();
      step((e.key === "ArrowUp" ? 1 : -1) * (e.shiftKey ? 10 : 1));
    }
  };
  const leave = (e: FocusEvent) => {
    if (!(e.currentTarget as Element).contains(e.relatedTarget as Node | null)) keep();
  };
  const bad = typed !== null && bench.problems.value.length > 0;
  return (
    <div class="value" onBlurCapture={leave}>
      <span class="value-name">
        {v.name}
        <Aside value={v} />
      </span>
      <div class="stepper-row">
        <button type="button" class="square" aria-label={words.measure.less(v.name)} onClick={() => step(-1)}>
          −
        </button>
        <input
          ref={input}
          type="text"
          class={typed === null ? "" : "changed"}
          aria-label={v.name}
          aria-invalid={bad}
          value={text}
          onInput={(e) => attempt(e.currentTarget.value)}
          onKeyDown={key}
        />
        <button type="button" class="square" aria-label={words.measure.more(v.name)} onClick={() => step(1)}>
          +
        </button>
      </div>
      {bad && <ProblemList problems={bench.problems.value.slice(0, 2)} />}
    </div>
  );
}

/** Aside tells the value in the reader's units where the sheet has others, how it was measured, and what sets it. */
function Aside({ value: v }: { value: Value }) {
  const u = units.value;
  const si = v.value / (v.perSI || 1);
  const parts: string[] = [];
  if (u.imperial !== /^(in|ft|lb)/.test(v.unit)) {
    if (v.quantity === "length") parts.push(lengthText(u, si));
    if (v.quantity === "mass") parts.push(mass(u, si));
  }
  if (v.how) parts.push(v.how);
  if (v.setting) parts.push(words.measure.set(v.setting));
  return parts.length ? <span class="faint small"> {parts.join(" · ")}</span> : null;
}
