/** How this reader wants the page: kept in this browser only. */

import { computed, effect, signal } from "@preact/signals";
import { imperial, metric } from "../units.ts";

export type Theme = "auto" | "light" | "dark";

/** kept returns a signal that remembers its value in this browser, where that is allowed. */
export function kept<T>(name: string, usual: T) {
  const key = `steelyard.${name}`;
  let first = usual;
  try {
    const stored = localStorage.getItem(key);
    if (stored !== null) first = JSON.parse(stored) as T;
  } catch {
    // storage is off or holds something else: begin with the usual
  }
  const value = signal<T>(first);
  effect(() => {
    try {
      localStorage.setItem(key, JSON.stringify(value.value));
    } catch {
      // storage is off or full: the choice lasts until the page is closed
    }
  });
  return value;
}

export const theme = kept<Theme>("theme", "auto");
export const pounds = kept<boolean>("imperial", false);
export const units = computed(() => (pounds.value ? imperial : metric));

effect(() => {
  document.documentElement.dataset.theme = theme.value;
});
