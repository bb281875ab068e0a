/** The curves of a comparison on one axis, and what chooses among them. */

import type { Comparison, Phase } from "../../api.ts";
import { numbers } from "../../drawing/ribbon.ts";
import { axesOf, Chart, type Series } from "../../parts/chart.tsx";
import { Choice } from "../../parts/choice.tsx";
import { Legend } from "../../parts/legend.tsx";
import { PersonPicker } from "../../parts/personpicker.tsx";
import { Scrub } from "../../parts/scrub.tsx";
import { units } from "../../state/taste.ts";
import { trainee } from "../../state/trainee.ts";
import { fixed } from "../../units.ts";
import { words } from "../../words.ts";
import { jointsOf, type Quantity, quantity } from "./quantity.ts";
import { over, ownPeak, phase, place, shown } from "./state.ts";

export function Curves({ comparison: c }: { comparison: Comparison }) {
  const u = units.value;
  const q = quantity(c);
  const xs = q.byShare ? c.share : c.travel;
  const series: (Series & { side: string })[] = c.items.flatMap((item, i) => {
    const ys = numbers(q.column(item));
    if (ys.every(Number.isNaN)) return [];
    return [
      { name: item.label, look: `series-${i + 1}`, x: xs, y: ys, side: q.ofMachine && !ownPeak.value ? item.side : "" },
    ];
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
          <Scrub
            share={place.value}
            scrub={(share) => {
              place.value = share;
            }}
          />
          <Legend
            entries={series.map((s, i) => ({
              name: s.name,
              look: s.look,
              reading: readingText(readings[i] ?? null, q, s.side),
            }))}
          />
        </>
      )}
      <Tools comparison={c} />
    </>
  );
}

/** readingText writes what a curve shows under the cursor, and whose it is. */
function readingText(y: number | null, q: Quantity, side: string): string {
  if (y === null) return "–";
  return [`${fixed(y / q.axis.perUnit, 0)} ${q.axis.unit}`, side].filter(Boolean).join(", ");
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
            value={measures.some((m) => m.value === shown.value) ? shown.value : "force"}
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
      {quantity(c).ofMachine && <ForceTools />}
    </div>
  );
}

/** ForceTools chooses how forces are shown; moments and efforts are those of lifting, over the own travel. */
function ForceTools() {
  return (
    <>
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
    </>
  );
}
