/** A number with a step down and a step up. */

import { useState } from "preact/hooks";
import { words } from "../words.ts";

export interface StepperProps {
  label: string; // in full, for who cannot see the place
  name: string;
  unit?: string;
  value: number;
  low: number;
  high: number;
  step: number;
  change: (value: number) => void;
}

export function Stepper({ label, name, unit, value, low, high, step, change }: StepperProps) {
  const [draft, write] = useState<string | null>(null); // while typing, which a redrawing must not undo
  const to = (v: number) => change(Math.min(high, Math.max(low, Math.round(v / step) * step)));
  const typed = (text: string) => {
    const v = Number(text.replace(",", "."));
    if (text.trim() !== "" && Number.isFinite(v)) change(Math.min(high, Math.max(low, v)));
  };
  return (
    <div class="stepper">
      <span class="stepper-name">{name}</span>
      <div class="stepper-row">
        <button
          type="button"
          class="square"
          aria-label={words.set.less(label)}
          disabled={value <= low}
          onClick={() => to(value - step)}
        >
          −
        </button>
        <input
          type="text"
          inputMode="decimal"
          aria-label={label}
          value={draft ?? String(Number(value.toFixed(4)))}
          onInput={(e) => write(e.currentTarget.value)}
          onChange={(e) => {
            write(null);
            typed(e.currentTarget.value);
            e.currentTarget.value = String(Number(value.toFixed(4)));
          }}
        />
        {unit && <span class="unit">{unit}</span>}
        <button
          type="button"
          class="square"
          aria-label={words.set.more(label)}
          disabled={value >= high}
          onClick={() => to(value + step)}
        >
          +
        </button>
      </div>
    </div>
  );
}
