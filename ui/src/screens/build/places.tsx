/** The guided questions for points and cam, and how far each may be off. */

import type { Family } from "../../api.ts";
import { units } from "../../state/taste.ts";
import { lengthText } from "../../units.ts";
import { words } from "../../words.ts";
import { type Answers, type Measure, placesOf } from "./answers.ts";

interface PlacesProps {
  family: Family;
  answers: Answers;
  measure: Measure | null;
}

/** plusBy returns by a point's name how far it may be off, m. */
const plusBy = (family: Family, measure: Measure | null): Map<string, number> =>
  new Map(measure ? placesOf(family, measure).map((p) => [p.name, Math.max(...p.plus)]) : []);

export function PointStep({ family, answers: a, measure }: PlacesProps) {
  const next = a.points.indexOf(null);
  const asked = next >= 0 ? family.points[next] : undefined;
  const plus = plusBy(family, measure);
  return (
    <>
      <div role="status">
        {asked ? (
          <>
            <h2>{asked.ask}</h2>
            <p>
              {asked.hint} {asked.optional && <span class="faint">({words.build.optional})</span>}
            </p>
          </>
        ) : (
          <>
            <h2>{words.build.allTapped}</h2>
            <p>{words.build.allTappedHint}</p>
          </>
        )}
      </div>
      <ul class="asked">
        {family.points.map((p, i) => {
          const off = a.points[i] ? plus.get(p.name) : undefined;
          return (
            <li key={p.name}>
              <span>{p.name}</span>
              <span class="faint">
                {off !== undefined
                  ? words.build.error(lengthText(units.value, off))
                  : a.points[i]
                    ? words.build.tapped
                    : i === next
                      ? words.build.tapNext
                      : ""}
              </span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

export function CamStep({ family, answers: a, measure }: PlacesProps) {
  const ask = family.cam!;
  const off = measure?.surveyed.outline[0]?.plus[0];
  return (
    <>
      <h2>{ask.ask}</h2>
      <p>{ask.hint}</p>
      <p class="faint">{words.build.camHint(ask.least)}</p>
      <p role="status">
        {words.build.camCount(a.cam.length)}
        {off !== undefined && <span class="faint"> {words.build.each(lengthText(units.value, off))}</span>}
      </p>
    </>
  );
}

/** Errors tells how far each measured point may be off, and what would make the photo better. */
export function Errors({ family, measure }: { family: Family; measure: Measure }) {
  const rows = [...plusBy(family, measure)].map(([name, plus]) => ({ name, plus }));
  const cam = measure.surveyed.outline[0];
  if (cam) rows.push({ name: family.cam!.name, plus: Math.max(...cam.plus) });
  return (
    <>
      <h2>{words.build.steps.done}</h2>
      <ul class="asked">
        {rows.map((r) => (
          <li key={r.name}>
            <span>{r.name}</span>
            <span>{words.build.error(lengthText(units.value, r.plus))}</span>
          </li>
        ))}
      </ul>
      <ul class="advice">
        {measure.surveyed.words.map((w) => (
          <li key={w}>{w}</li>
        ))}
      </ul>
    </>
  );
}
