/** One of a few, side by side: radio buttons that look like notches. */

import { useId } from "preact/hooks";

export interface Option {
  value: string;
  name: string;
}

export interface ChoiceProps {
  label: string;
  options: readonly Option[];
  value: string;
  choose: (value: string) => void;
  hideLabel?: boolean;
}

export function Choice({ label, options, value, choose, hideLabel }: ChoiceProps) {
  const name = useId();
  return (
    <fieldset class="choice">
      <legend class={hideLabel ? "unseen" : undefined}>{label}</legend>
      <div class="notches">
        {options.map((o) => (
          <label key={o.value}>
            <input
              type="radio"
              name={name}
              value={o.value}
              checked={o.value === value}
              onChange={() => choose(o.value)}
            />
            <span>{o.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
