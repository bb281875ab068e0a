/** The load ribbon: full where it is sure, hatched where it is not, cut at the thirds. */

import type { Label } from "../../drawing/labels.ts";
import { area, head, polygon, polyline, segment } from "../../drawing/path.ts";
import { add, length, sub, times } from "../../drawing/place.ts";
import { above, below, edge, edges, type Laid, middleOf, runs, sure } from "../../drawing/ribbon.ts";
import { force, type Units } from "../../units.ts";
import { words } from "../../words.ts";

export function RibbonShape({ laid, hatch, band }: { laid: Laid; hatch: string; band: boolean }) {
  const r = laid.ribbon;
  const low = band ? r.low : r.force;
  const high = band ? r.high : r.force;
  return (
    <g class="ribbon">
      {runs(r.force).map((run) => {
        const path = edges(laid, run, () => 0);
        const inner = edges(laid, run, (k) => low[k]!);
        const outer = edges(laid, run, (k) => high[k]!);
        return (
          <g key={run[0]}>
            <path
              class="sure"
              d={area(
                path,
                edges(laid, run, (k) => sure(low[k]!, high[k]!)),
              )}
            />
            {band && <path class="unsure" fill={`url(#${hatch})`} d={area(inner, outer)} />}
            <path class="edge" d={polyline(edges(laid, run, (k) => r.force[k]!))} />
          </g>
        );
      })}
      <Cuts laid={laid} high={high} />
      <Way laid={laid} />
    </g>
  );
}

/** Cuts parts the ribbon at the bounds of the thirds. */
function Cuts({ laid, high }: { laid: Laid; high: number[] }) {
  const d = laid.ribbon.thirds
    .filter((k) => !Number.isNaN(high[k]))
    .map((k) => segment(edge(laid, k, 0), edge(laid, k, high[k]! + 5 / laid.perNewton)))
    .join("");
  return (
    <>
      <path class="cut-gap" d={d} />
      <path class="cut" d={d} />
    </>
  );
}

/** Way is the contact's path: a ring at its start, a head at its end, dots where there is no force. */
function Way({ laid }: { laid: Laid }) {
  const all = laid.ribbon.base.map((_, k) => edge(laid, k, 0));
  const [start, end] = [all[0], all.at(-1)];
  if (!start || !end) return null;
  let back = all.length - 2;
  while (back > 0 && length(sub(end, all[back]!)) < 4) back--;
  const from = all[Math.max(0, back)]!;
  const tip = add(end, times(sub(end, from), 8 / Math.max(1, length(sub(end, from)))));
  return (
    <>
      <path class="gap" d={polyline(all)} />
      <path
        class="way"
        d={runs(laid.ribbon.force)
          .map(([a, b]) => polyline(all.slice(a, b)))
          .join("")}
      />
      <path class="way-head" d={head(from, tip, 12)} />
      <circle class="way-start" cx={start[0]} cy={start[1]} r={4.5} />
    </>
  );
}

/**
 * Can is the outline of what the person can produce, dotted where it is only a bound, and where the load comes nearest
 * to it. What lies too far out is not drawn: Names says so in words.
 */
export function Can({ laid, sticking }: { laid: Laid; sticking: number | undefined }) {
  const { can, canMost } = laid.ribbon;
  if (!can || !canMost) return null;
  const line = (column: number[]): string => {
    const drawn = below(column, laid.full);
    return runs(drawn)
      .map((run) => polyline(edges(laid, run, (k) => drawn[k]!)))
      .join("");
  };
  const at =
    sticking === undefined || Number.isNaN(laid.ribbon.force[sticking])
      ? null
      : edge(laid, sticking, laid.ribbon.force[sticking]!);
  return (
    <g class="can">
      <path class="outline" d={line(can)} />
      <path class="bound" d={line(canMost)} />
      {at && (
        <path
          class="sticking"
          d={polygon([
            [at[0], at[1] - 8],
            [at[0] + 8, at[1]],
            [at[0], at[1] + 8],
            [at[0] - 8, at[1]],
          ])}
        />
      )}
    </g>
  );
}

/** canLabels names the sticking point, and what of the outline lies too far out. */
export function canLabels(laid: Laid, sticking: number | undefined, units: Units): Label[] {
  const out: Label[] = [];
  const load = sticking === undefined ? Number.NaN : laid.ribbon.force[sticking]!;
  if (!Number.isNaN(load)) out.push({ at: edge(laid, sticking!, load), text: words.person.sticking, role: "warn" });
  const k = middleOf(above(laid.ribbon.can ?? [], laid.full));
  if (k === undefined) return out;
  return [...out, { at: edge(laid, k, laid.full), text: words.person.more(force(units, laid.full)), role: "person" }];
}

/** Here crosses the ribbon where the machine stands. */
export function Here({ laid, position }: { laid: Laid; position: number }) {
  const force = laid.ribbon.force[position];
  if (force === undefined || Number.isNaN(force)) return null;
  const [a, b] = [edge(laid, position, 0), edge(laid, position, force)];
  return (
    <g class="here">
      <path d={segment(a, b)} />
      <circle cx={b[0]} cy={b[1]} r={3.5} />
    </g>
  );
}

/** ThirdNames writes the names of the thirds into the ribbon, where all fit. */
export function ThirdNames({ laid }: { laid: Laid }) {
  const last = laid.ribbon.base.length - 1;
  const ends = [0, ...laid.ribbon.thirds, last];
  const places = words.thirds.map((name, i) => {
    const [from, to] = [ends[i]!, ends[i + 1]!];
    const k = (from + to) >> 1;
    const force = laid.ribbon.force[k]!;
    const [a, b] = [edge(laid, from, force / 2), edge(laid, to, force / 2)];
    const run = sub(b, a);
    const size = Math.min((length(run) - 8) / (name.length * 0.56), (Math.abs(force) * laid.perNewton) / 1.5);
    let turn = (Math.atan2(run[1], run[0]) * 180) / Math.PI;
    if (Math.abs(turn) > 90) turn -= Math.sign(turn) * 180;
    return { name, at: edge(laid, k, force / 2), turn, size };
  });
  const size = Math.min(12, ...places.map((p) => p.size));
  if (!(size >= 8.5)) return null;
  return (
    <g class="third-names" font-size={size}>
      {places.map((p) => (
        <text
          key={p.name}
          transform={`translate(${p.at[0].toFixed(1)} ${p.at[1].toFixed(1)}) rotate(${p.turn.toFixed(1)})`}
          dy="0.35em"
        >
          {p.name}
        </text>
      ))}
    </g>
  );
}
