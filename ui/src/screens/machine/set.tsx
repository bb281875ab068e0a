/** The settings of the machine, its tempo, and what the drawing shows. */

import type { Setting, Tempo } from "../../api.ts";
import { Choice } from "../../parts/choice.tsx";
import type { Layer } from "../../parts/figure/stage.ts";
import { Stepper } from "../../parts/stepper.tsx";
import type { Bench } from "../../state/bench.ts";
import { units } from "../../state/taste.ts";
import { beside } from "../../units.ts";
import { words } from "../../words.ts";
import { layers } from "./board.tsx";

export function SetPane({ bench }: { bench: Bench }) {
  const settings = bench.settled.value?.structure?.settings ?? [];
  return (
    <div class="pane-body">
      <p class="faint">{settings.length ? words.set.lead : words.set.none}</p>
      {settings.map((s) => (
        <SettingControl setting={s} bench={bench} key={s.name} />
      ))}
      {bench.choices.value.length > 0 && (
        <button type="button" onClick={() => bench.usual()}>
          {words.set.reset}
        </button>
      )}
      <TempoControl bench={bench} />
      <LayerControl />
    </div>
  );
}

function SettingControl({ setting: s, bench }: { setting: Setting; bench: Bench }) {
  const chosen = bench.choices.value.find((c) => c.setting === s.name)?.value ?? s.default;
  const choose = (value: string) => bench.choose(s.name, value);
  const i = Math.max(0, s.values.indexOf(chosen));
  return (
    <div class="setting">
      {s.ranged && s.values.length > 1 ? (
        <div class="slider">
          <span class="setting-name">
            {s.name} <strong>{beside(units.value, chosen)}</strong>
          </span>
          <div class="slider-row">
            <button
              type="button"
              class="square"
              aria-label={words.set.less(s.name)}
              disabled={i === 0}
              onClick={() => choose(s.values[i - 1]!)}
            >
              −
            </button>
            <input
              type="range"
              min="0"
              max={s.values.length - 1}
              step="1"
              value={i}
              aria-label={s.name}
              aria-valuetext={beside(units.value, chosen)}
              onInput={(e) => choose(s.values[Number(e.currentTarget.value)]!)}
            />
            <button
              type="button"
              class="square"
              aria-label={words.set.more(s.name)}
              disabled={i === s.values.length - 1}
              onClick={() => choose(s.values[i + 1]!)}
            >
              +
            </button>
          </div>
        </div>
      ) : (
        <Choice
          label={s.name}
          options={s.values.map((value) => ({ value, name: beside(units.value, value) }))}
          value={chosen}
          choose={choose}
        />
      )}
      {s.notes && <p class="faint small">{s.notes}</p>}
    </div>
  );
}

const tempoParts = Object.entries(words.machine.tempoParts) as [keyof Tempo, string][];

function TempoControl({ bench }: { bench: Bench }) {
  return (
    <fieldset class="tempo">
      <legend>{words.machine.tempo} (s)</legend>
      <div class="tempo-parts">
        {tempoParts.map(([part, name]) => (
          <Stepper
            label={`${words.machine.tempo}: ${name}`}
            name={name}
            value={bench.tempo.value[part]}
            low={part === "up" || part === "down" ? 0.5 : 0}
            high={10}
            step={0.5}
            change={(value) => {
              bench.tempo.value = { ...bench.tempo.value, [part]: value };
              bench.again();
            }}
            key={part}
          />
        ))}
      </div>
    </fieldset>
  );
}

const layerNames = Object.entries(words.machine.layers) as [Layer, string][];

function LayerControl() {
  const on = layers.value;
  return (
    <fieldset class="layers">
      <legend>{words.machine.show}</legend>
      <div class="ticks">
        {layerNames.map(([layer, name]) => (
          <label key={layer}>
            <input
              type="checkbox"
              checked={on.includes(layer)}
              onChange={() => (layers.value = on.includes(layer) ? on.filter((l) => l !== layer) : [...on, layer])}
            />
            <span>{name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
