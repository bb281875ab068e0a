/** Up to six machines or settings as curves on one axis, and how they differ. */

import { signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Choice as Chosen, Compared, ComparedCurve, Comparison, Phase, Problem, Setting } from "../api.ts";
import { type Axis, axesOf, Chart, Legend, type Series } from "../parts/chart.tsx";
import { Choice } from "../parts/choice.tsx";
import { TroubleNote } from "../parts/notes.tsx";
import { PersonPicker } from "../parts/personpicker.tsx";
import { ask, troubleOf } from "../server/client.ts";
import { refresh, room } from "../state/room.ts";
import { correct } from "../state/route.ts";
import { settingsOf } from "../state/settings.ts";
import { pounds, units } from "../state/taste.ts";
import { trainee, who } from "../state/trainee.ts";
import { fixed } from "../units.ts";
import { words } from "../words.ts";

interface Item {
  id: string;
  settings: Chosen[];
}

const most = 6;
const items = signal<Item[]>([]);
const over = signal<"share" | "travel">("share");
const phase = signal<Phase>("lifting");
const ownPeak = signal(false);
const shown = signal("force"); // or "effort", or the name of a joint axis
const place = signal(0.5); // of the axis, where the curves are read

const numbers = (column: readonly (number | null)[]): number[] => column.map((f) => f ?? Number.NaN);

export function CompareScreen({ ids }: { ids: string[] }) {
  const comparison = useSignal<Comparison | null>(null);
  const trouble = useSignal<Problem | null>(null);
  useEffect(() => {
    if (!room.value) void refresh();
    const known = items.value;
    if (ids.length)
      items.value = ids.map((id, i) => (known[i]?.id === id ? known[i] : { id, settings: settingsOf(id).value }));
  }, [ids.join(" ")]);
  const now = items.value;
  useEffect(() => {
    if (!now.length) {
      comparison.value = null;
      return;
    }
    let current = true;
    const asked: Compared[] = now.map((i) => ({ sheet: i.id, settings: i.settings }));
    ask("POST /api/compare", { in: { items: asked, phase: phase.value, imperial: pounds.value, ...who() } })
      .then((c) => {
        if (!current) return;
        comparison.value = c;
        trouble.value = null;
      })
      .catch((err) => {
        if (current) trouble.value = troubleOf(err);
      });
    return () => {
      current = false;
    };
  }, [now, phase.value, pounds.value, trainee.value]);
  const change = (next: Item[]) => {
    items.value = next;
    correct({ screen: "compare", ids: next.map((i) => i.id) });
  };
  const c = comparison.value;
  return (
    <div class="compare-screen">
      <h1>{words.compare.title}</h1>
      <p class="lead">{now.length ? words.compare.lead : words.compare.empty}</p>
      {trouble.value && <TroubleNote problem={trouble.value} />}
      {c && now.length > 0 && <Picture comparison={c} />}
      <ul class="compared">
        {now.map((item, i) => (
          <OneItem
            item={item}
            label={c?.items[i]?.label ?? ""}
            trouble={c?.items[i]?.trouble ?? ""}
            i={i}
            set={(settings) => change(now.map((other, k) => (k === i ? { ...other, settings } : other)))}
            drop={() => change(now.filter((_, k) => k !== i))}
            key={`${i} ${item.id}`}
          />
        ))}
      </ul>
      {now.length < most && <Add add={(id) => change([...now, { id, settings: [] }])} />}
      {c && c.words.length > 0 && <Differences comparison={c} />}
    </div>
  );
}

/** Quantity is what the curves show: its columns, and the axis it is read from. */
interface Quantity {
  column: (item: ComparedCurve) => (number | null)[];
  axis: Axis;
  byShare: boolean; // there is no column by distance
}

function quantity(c: Comparison): Quantity {
  const u = units.value;
  const percentAxis = (title: string): Axis => ({ perUnit: 0.01, unit: "%", title });
  if (trainee.value && shown.value === "effort") {
    return { column: (i) => i.effort, axis: percentAxis(words.person.effortAxis), byShare: true };
  }
  if (trainee.value && jointsOf(c).includes(shown.value)) {
    const joint = shown.value;
    const column = (i: ComparedCurve) => i.joints.find((j) => j.joint === joint)?.moment ?? [];
    return { column, axis: { perUnit: 1, unit: "N·m", title: `${words.compare.moment(joint)} (N·m)` }, byShare: true };
  }
  const byShare = over.value === "share";
  const own = (i: ComparedCurve) => (byShare ? i.byShare : i.byTravel);
  if (!ownPeak.value) return { column: own, axis: { ...u.force, title: u.force.unit }, byShare };
  const scaled = (i: ComparedCurve) => own(i).map((y) => (y === null ? null : y / (i.readings?.peak.force || 1)));
  return { column: scaled, axis: percentAxis(words.compare.axisNormal), byShare };
}

/** jointsOf lists the joint axes at which any of the machines asks for a moment. */
const jointsOf = (c: Comparison): string[] => [...new Set(c.items.flatMap((i) => i.joints.map((j) => j.joint)))];

function Picture({ comparison: c }: { comparison: Comparison }) {
  const u = units.value;
  const q = quantity(c);
  const xs = q.byShare ? c.share : c.travel;
  const series: Series[] = c.items.flatMap((item, i) => {
    const ys = numbers(q.column(item));
    return ys.some((y) => !Number.isNaN(y)) ? [{ name: item.label, look: `series-${i + 1}`, x: xs, y: ys }] : [];
  });
  const at = Math.round(place.value * (xs.length - 1));
  const readings = series.map((s) => (Number.isNaN(s.y[at]) ? null : (s.y[at] ?? null)));
  const sizes = series.map((s) => s.y.filter((y) => !Number.isNaN(y)).sort((a, b) => Math.abs(a) - Math.abs(b)));
  const most =
    1.3 *
    Math.max(
      ...sizes.map((l) => Math.min(Math.abs(l.at(-1)!), 3 * Math.abs(l[Math.floor(0.9 * (l.length - 1))]!))),
      1e-9,
    );
  return (
    <>
      {series.length > 0 && (
        <>
          <Chart
            series={series}
            band={null}
            cursor={{ x: xs[at] ?? 0, readings }}
            length={xs.at(-1) ?? 1}
            most={most}
            x={q.byShare ? { perUnit: 0.01, unit: "%", title: words.compare.axisShare } : axesOf(u).x}
            y={q.axis}
            label={words.compare.title}
            scrub={(share) => {
              place.value = share;
            }}
          />
          <input
            type="range"
            min="0"
            max="100"
            value={Math.round(place.value * 100)}
            aria-label={words.machine.scrub}
            onInput={(e) => {
              place.value = Number(e.currentTarget.value) / 100;
            }}
          />
          <Legend
            entries={series.map((s, i) => ({
              name: s.name,
              look: s.look,
              reading: readings[i] === null ? "–" : `${fixed(readings[i]! / q.axis.perUnit, 0)} ${q.axis.unit}`,
            }))}
          />
        </>
      )}
      <Tools comparison={c} />
    </>
  );
}

function Tools({ comparison: c }: { comparison: Comparison }) {
  const measures = [
    { value: "force", name: words.compare.force },
    { value: "effort", name: words.compare.effort },
    ...jointsOf(c).map((j) => ({ value: j, name: words.compare.moment(j) })),
  ];
  return (
    <div class="compare-tools">
      <PersonPicker />
      {trainee.value && (
        <label class="compared-setting">
          <span>{words.compare.measure}</span>
          <select
            value={shown.value}
            onChange={(e) => {
              shown.value = e.currentTarget.value;
            }}
          >
            {measures.map((m) => (
              <option value={m.value} key={m.value}>
                {m.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <Choice
        label={words.compare.over}
        options={[
          { value: "share", name: words.compare.share },
          { value: "travel", name: words.compare.travel },
        ]}
        value={over.value}
        choose={(v) => {
          over.value = v as "share" | "travel";
        }}
      />
      <Choice
        label={words.compare.phase}
        options={[
          { value: "lifting", name: words.phases.lifting },
          { value: "lowering", name: words.phases.lowering },
        ]}
        value={phase.value}
        choose={(v) => {
          phase.value = v as Phase;
        }}
      />
      <label class="check">
        <input
          type="checkbox"
          checked={ownPeak.value}
          onChange={() => {
            ownPeak.value = !ownPeak.value;
          }}
        />
        {words.compare.normal}
      </label>
    </div>
  );
}

interface OneItemProps {
  item: Item;
  label: string;
  trouble: string;
  i: number;
  set: (settings: Chosen[]) => void;
  drop: () => void;
}

function OneItem({ item, label, trouble, i, set, drop }: OneItemProps) {
  const settings = useSignal<Setting[] | null>(null);
  const name = label || room.value?.machines.find((m) => m.id === item.id)?.name || item.id;
  const open = async () => {
    if (settings.value) return;
    try {
      const p = await ask("POST /api/preview", {
        in: { sheet: item.id, look: { structure: true, positions: 11, noBand: true } },
      });
      settings.value = p.structure?.settings ?? [];
    } catch {
      settings.value = []; // the comparison itself tells what is wrong with this machine
    }
  };
  return (
    <li>
      <div class="compared-head">
        <svg class="swatch" width="34" height="12" aria-hidden="true">
          <path class={`curve series-${i + 1}`} d="M1 6H33" />
        </svg>
        <strong>{name}</strong>
        <button type="button" class="icon" aria-label={words.compare.remove(name)} onClick={drop}>
          ×
        </button>
      </div>
      {trouble && <p class="warn-text">{trouble}</p>}
      <details onToggle={() => void open()}>
        <summary>{words.machine.tabs.set}</summary>
        {settings.value?.length === 0 && <p class="faint">{words.set.none}</p>}
        {settings.value?.map((s) => (
          <label class="compared-setting" key={s.name}>
            <span>{s.name}</span>
            <select
              value={item.settings.find((c) => c.setting === s.name)?.value ?? s.default}
              onChange={(e) => {
                const value = e.currentTarget.value;
                const rest = item.settings.filter((c) => c.setting !== s.name);
                set(value === s.default ? rest : [...rest, { setting: s.name, value }]);
              }}
            >
              {s.values.map((v) => (
                <option key={v}>{v}</option>
              ))}
            </select>
          </label>
        ))}
      </details>
    </li>
  );
}

function Add({ add }: { add: (id: string) => void }) {
  const machines = room.value?.machines.filter((m) => m.sign) ?? [];
  const wanted = useSignal("");
  if (!machines.length) return null;
  return (
    <div class="row">
      <label class="find">
        <span>{words.compare.choose}</span>
        <select value={wanted.value} onChange={(e) => (wanted.value = e.currentTarget.value)}>
          <option value="">…</option>
          {machines.map((m) => (
            <option value={m.id} key={m.id}>
              {m.name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" class="strong" disabled={!wanted.value} onClick={() => add(wanted.value)}>
        {words.compare.add}
      </button>
    </div>
  );
}

function Differences({ comparison: c }: { comparison: Comparison }) {
  return (
    <section>
      <h2>{words.compare.words}</h2>
      <ul class="compare-words">
        {c.words.map((w) => (
          <li key={w.label}>
            <strong>
              {w.label}, {words.compare.first} {c.items[0]?.label}:
            </strong>{" "}
            {w.words.join(" ")}
          </li>
        ))}
      </ul>
    </section>
  );
}
