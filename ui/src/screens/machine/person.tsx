/** What the machine asks of this person: effort along the travel, the joints, the muscles, and what would help. */

import type { JointColumn, MuscleRange, PersonOnMachine } from "../../api.ts";
import { at } from "../../drawing/ribbon.ts";
import { Chart, Legend, type Series } from "../../parts/chart.tsx";
import { Scroll } from "../../parts/scroll.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { beside, fixed, mass, percent } from "../../units.ts";
import { words } from "../../words.ts";
import { axesOfEffort } from "./effort.ts";

const numbers = (column: readonly (number | null)[]): number[] => column.map((f) => f ?? Number.NaN);

export function PersonPane({ bench }: { bench: Bench }) {
  const shown = bench.shown.value;
  const settled = bench.settled.value;
  const person = shown?.person ?? settled?.person;
  if (!person)
    return <p class="pane-body">{settled?.personGap ? words.person.off(settled.personGap) : words.loading}</p>;
  return (
    <div class="pane-body prose">
      {person.words.map((w, i) => (
        <p class={i === 0 ? "first" : ""} key={w}>
          {w}
        </p>
      ))}
      <EffortChart bench={bench} person={person} />
      <Helps bench={bench} person={person} />
      {person.maximum && person.maximum.load > 0 && (
        <p>
          <strong>{words.person.maximum}:</strong>{" "}
          {words.person.maximumText(
            mass(units.value, person.maximum.load),
            mass(units.value, person.maximum.low),
            mass(units.value, person.maximum.high),
          )}
        </p>
      )}
      <Muscles muscles={person.muscles} />
      {person.warnings.length > 0 && (
        <>
          <h2>{words.person.warnings}</h2>
          <ul>
            {person.warnings.map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </>
      )}
      <section class="care">
        <h2>{words.why.care}</h2>
        <ul>
          {person.cautions.map((c) => (
            <li key={c}>{c}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function EffortChart({ bench, person }: { bench: Bench; person: PersonOnMachine }) {
  const travel = (bench.shown.value?.person ? bench.shown.value : bench.settled.value)?.curve?.travel;
  if (!travel) return null;
  const k = at(travel, bench.share.value);
  const joints = person.joints.filter((j) => j.effort.some((e) => e !== null)).slice(0, 5);
  const series: Series[] = [
    { name: words.person.hardest, look: "lift", x: travel, y: numbers(person.effort) },
    ...joints.map((j, i): Series => ({ name: j.joint, look: `series-${i + 2}`, x: travel, y: numbers(j.effort) })),
  ];
  const band = bandOf(joints, person, travel.length);
  const percentAt = (column: (number | null)[]): string => (column[k] == null ? "–" : percent(column[k]!));
  return (
    <>
      <Chart
        series={series}
        band={band}
        cursor={{ x: travel[k] ?? 0, readings: [person.effort[k] ?? null] }}
        length={travel.at(-1) ?? 0}
        most={Math.max(...numbers(person.effort).filter((e) => !Number.isNaN(e)), 0.5) * 1.6}
        {...axesOfEffort(units.value)}
        label={words.person.effortLabel(person.name)}
        scrub={(share) => {
          bench.share.value = share;
        }}
      />
      <Legend
        entries={[
          { name: words.person.hardest, look: "lift", reading: percentAt(person.effort) },
          ...joints.map((j, i) => ({
            name: j.weak ? `${j.joint} *` : j.joint,
            look: `series-${i + 2}`,
            reading: percentAt(j.effort),
          })),
        ]}
      />
      {joints.some((j) => j.weak) && <p class="faint small">* {words.person.weak}</p>}
    </>
  );
}

/** bandOf returns the band of the hardest joint at each position. */
function bandOf(joints: readonly JointColumn[], person: PersonOnMachine, n: number): { low: number[]; high: number[] } {
  const pick = (side: "low" | "high"): number[] =>
    Array.from({ length: n }, (_, k) => joints.find((j) => j.joint === person.limiter[k])?.[side][k] ?? Number.NaN);
  return { low: pick("low"), high: pick("high") };
}

function Helps({ bench, person }: { bench: Bench; person: PersonOnMachine }) {
  if (!person.helps.length) return null;
  return (
    <>
      <h2>{words.person.helps}</h2>
      <ul class="helps">
        {person.helps.map((h) => (
          <li key={`${h.setting} ${h.value}`}>
            <span>{h.words}</span>
            <button type="button" onClick={() => bench.choose(h.setting, h.value)}>
              {words.person.set(h.setting, beside(units.value, h.value))}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

function Muscles({ muscles }: { muscles: readonly MuscleRange[] }) {
  if (!muscles.length) return null;
  return (
    <>
      <h2>{words.person.muscles}</h2>
      <p class="faint small">{words.person.musclesHint}</p>
      <Scroll label={words.person.muscles}>
        <table class="muscles">
          <thead>
            <tr>
              <th scope="col">{words.person.muscle}</th>
              {words.thirds.map((t) => (
                <th scope="col" key={t}>
                  {t}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {muscles.map((m) => (
              <tr key={m.name}>
                <th scope="row">{m.name}</th>
                {m.mean.map((e, i) => (
                  <td key={words.thirds[i]}>{e === null ? words.person.never : `${fixed(100 * e, 0)} %`}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}
