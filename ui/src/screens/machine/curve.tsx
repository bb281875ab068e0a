/** The curve of the machine, with its band, both ways of friction, and the curve before the change. */

import type { Band, Curve, PersonOnMachine } from "../../api.ts";
import { at, below, ceiling, mostCanCharted, numbers, ribbonOf, runs } from "../../drawing/ribbon.ts";
import { axesOf, Chart, type Series } from "../../parts/chart.tsx";
import { Legend } from "../../parts/legend.tsx";
import { Scroll } from "../../parts/scroll.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { force, ratio, travel } from "../../units.ts";
import { words } from "../../words.ts";
import { layers } from "./board.tsx";

export function CurveView({ bench }: { bench: Bench }) {
  const shown = bench.shown.value;
  const curve = shown?.curve;
  if (!curve) return null;
  const before = bench.trial.value ? bench.settled.value?.curve : null;
  const band = layers.value.includes("band") ? shown.band : null;
  const series = seriesOf(curve, before ?? null, band?.phase === "holding", shown.person);
  const entries = series.map((s) => ({ name: s.name, look: s.look }));
  // a first-order band of a machine with friction is that of holding it still
  if (band)
    entries.push({ name: band.phase === "lifting" ? words.chart.band : words.chart.holdBand, look: "chart-band" });
  const sticking = shown.person?.sticking ?? null;
  const stuck = sticking === null ? null : (curve.lift[sticking] ?? null);
  if (stuck !== null) entries.push({ name: words.person.sticking, look: "sticking" });
  const set = JSON.stringify(bench.choices.value);
  const crosses = bench.readings.value
    .filter((r) => JSON.stringify(r.settings) === set)
    .map((r) => ({ x: r.travel, y: r.force }));
  if (crosses.length) entries.push({ name: words.scale.legend, look: "cross" });
  return (
    <div class="curve-view">
      <Chart
        series={series}
        band={band ? { low: numbers(band.low), high: numbers(band.high) } : null}
        crosses={crosses}
        diamond={stuck === null ? null : { x: curve.travel[sticking!]!, y: stuck }}
        cursor={{ x: curve.travel[bench.position.value] ?? 0, readings: [curve.lift[bench.position.value] ?? null] }}
        length={Math.max(curve.travel.at(-1) ?? 0, before?.travel.at(-1) ?? 0)}
        most={(shown.person ? mostCanCharted : 1.1) * ceiling(ribbonOf(curve, "lifting", band))}
        {...axesOf(units.value)}
        label={words.chart.label(shown.name)}
        scrub={(share) => (bench.share.value = share)}
      />
      {entries.length > 1 && <Legend entries={entries} />}
    </div>
  );
}

function seriesOf(curve: Curve, before: Curve | null, holding: boolean, person: PersonOnMachine | null): Series[] {
  const out: Series[] = [{ name: words.phases.lifting, look: "lift", x: curve.travel, y: numbers(curve.lift) }];
  const friction = curve.rubs && layers.value.includes("friction");
  const line = (name: string, look: string, column: (number | null)[]): Series => ({
    name,
    look,
    x: curve.travel,
    y: numbers(column),
  });
  if (friction) out.push(line(words.phases.lowering, "lower", curve.lower));
  if (curve.rubs && (friction || holding)) out.push(line(words.phases.holding, "hold", curve.hold));
  if (person) out.push(...canSeries(curve, person, mostCanCharted * ceiling(ribbonOf(curve, "lifting", null))));
  if (before) out.push({ name: words.chart.before, look: "before", x: before.travel, y: numbers(before.lift) });
  return out;
}

/** canSeries is what the person can produce, and what it can be at most where nobody was tested. */
function canSeries(curve: Curve, person: PersonOnMachine, highest: number): Series[] {
  const beyond = (most: number): string => words.person.more(force(units.value, most));
  const [can, most] = [numbers(person.can), below(numbers(person.canMost), highest)];
  const told = (column: number[]): boolean => runs(column).length > 0;
  return [
    ...(told(can) ? [{ name: words.person.canLabel, look: "can", x: curve.travel, y: can, beyond }] : []),
    ...(told(most) ? [{ name: words.person.canMost, look: "can-most", x: curve.travel, y: most }] : []),
  ];
}

/** CurveTable is the curve for those who cannot see it or want the numbers. */
export function CurveTable({ bench }: { bench: Bench }) {
  const curve = bench.settled.value?.curve;
  if (!curve) return null;
  const band = bench.settled.value!.band;
  const rows = Array.from({ length: 11 }, (_, i) => at(curve.travel, i / 10));
  return (
    <details class="curve-table">
      <summary>{words.chart.table}</summary>
      <Scroll label={words.chart.table}>
        <table>
          <thead>
            <tr>
              {Object.values(words.chart.columns).map((name) => (
                <th scope="col" key={name}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((k) => (
              <Row curve={curve} band={band} k={k} key={k} />
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

function Row({ curve, band, k }: { curve: Curve; band: Band | null; k: number }) {
  const u = units.value;
  const newtons = (f: number | null | undefined): string => (f === null || f === undefined ? "–" : force(u, f));
  return (
    <tr>
      <th scope="row">{travel(u, curve.travel[k]!)}</th>
      <td>{newtons(curve.lift[k])}</td>
      <td>{newtons(curve.hold[k])}</td>
      <td>{newtons(curve.lower[k])}</td>
      <td>{band ? `${newtons(band.low[k])} – ${newtons(band.high[k])}` : "–"}</td>
      <td>{curve.liftRatio[k] === null || curve.liftRatio[k] === undefined ? "–" : ratio(curve.liftRatio[k]!)}</td>
    </tr>
  );
}
