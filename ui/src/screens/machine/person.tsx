/** What the machine asks of this person: effort along the travel, the joints, the muscles, and what would help. */

import type { JointColumn, MuscleRange, PersonOnMachine } from "../../api.ts";
import { at, numbers } from "../../drawing/ribbon.ts";
import { Chart, type Series } from "../../parts/chart.tsx";
import { Legend } from "../../parts/legend.tsx";
import { Scroll } from "../../parts/scroll.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { beside, mass, percent } from "../../units.ts";
import { words } from "../../words.ts";
import { axesOfEffort } from "./effort.ts";

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
            person.maximum.atMost,
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
  const joints = person.joints.filter((j) => works(j)).slice(0, 5);
  const series: Series[] = [
    { name: words.person.hardest, look: "lift", x: travel, y: numbers(person.effort) },
    ...joints.map((j, i): Series => ({ name: j.joint, look: `series-${i + 2}`, x: travel, y: tested(j) })),
    ...joints.flatMap((j, i): Series[] =>
      j.guess.some(Boolean)
        ? [{ name: `${j.joint}, ${words.person.guess}`, look: `series-${i + 2} guess`, x: travel, y: guessed(j) }]
        : [],
    ),
  ];
  const band = bandOf(joints, person, travel.length);
  const percentAt = (effort: number | null | undefined, guess?: boolean): string => {
    if (effort === null || effort === undefined) return "–";
    return guess ? words.person.guessed(percent(effort)) : percent(effort);
  };
  return (
    <>
      <Chart
        series={series}
        band={band}
        cursor={{ x: travel[k] ?? 0, readings: [person.effort[k] ?? null], gap: words.person.unknown }}
        length={travel.at(-1) ?? 0}
        most={mostEffort(joints)}
        {...axesOfEffort(units.value)}
        label={words.person.effortLabel(person.name)}
        scrub={(share) => {
          bench.share.value = share;
        }}
      />
      <Legend
        entries={[
          { name: words.person.hardest, look: "lift", reading: percentAt(person.effort[k]) },
          ...joints.map((j, i) => ({
            name: j.weak ? `${j.joint} *` : j.joint,
            look: `series-${i + 2}`,
            reading: percentAt(j.effort[k], j.guess[k]),
          })),
          ...(series.some((s) => s.look.includes("guess")) ? [{ name: words.person.guess, look: "guess" }] : []),
        ]}
      />
      {joints.some((j) => j.weak) && <p class="faint small">* {words.person.weak}</p>}
    </>
  );
}

const leastEffort = 0.05; // from which a joint is asked for something worth a line

const works = (j: JointColumn): boolean => j.effort.some((e) => e !== null && e >= leastEffort);

/** tested returns a joint's effort where its strength is known, and NaN elsewhere. */
const tested = (j: JointColumn): number[] => numbers(j.effort.map((e, k) => (j.guess[k] ? null : e)));

/** guessed returns a joint's effort where its strength is a guess, with the positions beside so that the lines meet. */
const guessed = (j: JointColumn): number[] =>
  numbers(j.effort.map((e, k) => (j.guess[k - 1] || j.guess[k] || j.guess[k + 1] ? e : null)));

/** mostEffort is to where the chart goes: well above what is known, and above the guesses, but not to any height. */
function mostEffort(joints: readonly JointColumn[]): number {
  const greatest = (of: (j: JointColumn) => number[]): number =>
    Math.max(0, ...joints.flatMap(of).filter((e) => !Number.isNaN(e)));
  const known = 1.6 * Math.max(0.5, greatest(tested));
  return Math.max(known, Math.min(1.05 * greatest(guessed), 2 * known));
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

function meanText(m: MuscleRange, i: number): string {
  const mean = m.mean[i];
  if (mean === null || mean === undefined) return m.share[i] ? words.person.unknown : words.person.never;
  return m.guess[i] ? words.person.guessed(percent(mean)) : percent(mean);
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
                {m.mean.map((_, i) => (
                  <td key={words.thirds[i]}>{meanText(m, i)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}
