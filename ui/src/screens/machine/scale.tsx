/** Forces read off a hanging scale, beside what the sheet says. */

import { useSignal } from "@preact/signals";
import type { ForceReading } from "../../api.ts";
import { at } from "../../drawing/ribbon.ts";
import { Stepper } from "../../parts/stepper.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { fixed, force, travel } from "../../units.ts";
import { words } from "../../words.ts";

export function ScaleReadings({ bench }: { bench: Bench }) {
  const curve = bench.settled.value?.curve;
  if (!curve) return null;
  const here = curve.travel[at(curve.travel, bench.share.value)] ?? 0;
  const all = bench.readings.value;
  return (
    <section>
      <h2>{words.scale.title}</h2>
      <p class="faint small">{words.scale.lead}</p>
      <ul class="helps">
        {all.map((r, i) => (
          <li key={`${r.travel} ${r.force} ${r.note}`}>
            <span>{said(bench, r)}</span>
            <button
              type="button"
              aria-label={words.scale.remove(travel(units.value, r.travel))}
              onClick={() => void bench.weigh(all.filter((_, k) => k !== i))}
            >
              {words.scale.away}
            </button>
          </li>
        ))}
      </ul>
      <Add here={here} add={(newtons) => void bench.weigh([...all, bench.reading(here, newtons)])} />
    </section>
  );
}

/** said compares a reading with the force the sheet gives for the same place. */
function said(bench: Bench, r: ForceReading): string {
  const u = units.value;
  const curve = bench.settled.value!.curve!;
  const place = travel(u, r.travel);
  const same = JSON.stringify(r.settings) === JSON.stringify(bench.choices.value);
  const model = curve.lift[at(curve.travel, r.travel / (curve.travel.at(-1) || 1))];
  if (!same || model == null) return words.scale.read(place, force(u, r.force));
  const off = `${fixed(100 * (r.force / model - 1), 0)} %`;
  return words.scale.compared(place, force(u, r.force), force(u, model), off);
}

function Add({ here, add }: { here: number; add: (newtons: number) => void }) {
  const u = units.value;
  const value = useSignal(0);
  return (
    <div class="row">
      <Stepper
        label={words.scale.force(travel(u, here))}
        name={words.scale.force(travel(u, here))}
        unit={u.force.unit}
        value={value.value / u.force.perUnit}
        low={0}
        high={20_000}
        step={1}
        change={(v) => {
          value.value = v * u.force.perUnit;
        }}
      />
      <button type="button" disabled={!(value.value > 0)} onClick={() => add(value.value)}>
        {words.scale.add}
      </button>
    </div>
  );
}
