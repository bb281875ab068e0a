/** Light or dark, metric or imperial. */

import { useRef } from "preact/hooks";
import { pounds, type Theme, theme } from "../state/taste.ts";
import { words } from "../words.ts";
import { Choice } from "./choice.tsx";

const themes = Object.entries(words.taste.themes).map(([value, name]) => ({ value, name }));

const systems = [
  { value: "metric", name: words.taste.metric },
  { value: "imperial", name: words.taste.imperial },
];

export function TasteMenu() {
  const box = useRef<HTMLDetailsElement>(null);
  const leave = (e: KeyboardEvent) => {
    if (e.key !== "Escape" || !box.current?.open) return;
    box.current.open = false;
    box.current.querySelector("summary")?.focus();
  };
  return (
    <details class="menu taste" ref={box} onKeyDown={leave}>
      <summary aria-label={words.taste.label}>
        <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
          <circle cx="12" cy="12" r="8" class="line-icon" />
          <path d="M12 4a8 8 0 0 1 0 16z" class="fill-icon" />
        </svg>
      </summary>
      <div class="menu-body">
        <Choice
          label={words.taste.theme}
          options={themes}
          value={theme.value}
          choose={(v) => (theme.value = v as Theme)}
        />
        <Choice
          label={words.taste.units}
          options={systems}
          value={pounds.value ? "imperial" : "metric"}
          choose={(v) => (pounds.value = v === "imperial")}
        />
      </div>
    </details>
  );
}
