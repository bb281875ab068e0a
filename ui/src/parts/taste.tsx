/** Light or dark, metric or imperial. */

import { pounds, type Theme, theme } from "../state/taste.ts";
import { words } from "../words.ts";
import { Choice } from "./choice.tsx";
import { Menu } from "./menu.tsx";

const themes = Object.entries(words.taste.themes).map(([value, name]) => ({ value, name }));

const systems = [
  { value: "metric", name: words.taste.metric },
  { value: "imperial", name: words.taste.imperial },
];

export function TasteMenu() {
  const icon = (
    <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
      <circle cx="12" cy="12" r="8" class="line-icon" />
      <path d="M12 4a8 8 0 0 1 0 16z" class="fill-icon" />
    </svg>
  );
  return (
    <Menu label={words.taste.label} look="taste" icon={icon}>
      <Choice
        label={words.taste.theme}
        options={themes}
        value={theme.value}
        choose={(v) => {
          theme.value = v as Theme;
        }}
      />
      <Choice
        label={words.taste.units}
        options={systems}
        value={pounds.value ? "imperial" : "metric"}
        choose={(v) => {
          pounds.value = v === "imperial";
        }}
      />
    </Menu>
  );
}
