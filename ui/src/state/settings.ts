/** How each machine was last set in this browser. */

import { computed, type ReadonlySignal } from "@preact/signals";
import type { Choice } from "../api.ts";
import { kept } from "./taste.ts";

const all = kept<Record<string, Choice[]>>("settings", {});
const none: Choice[] = [];
const most = 60; // machines remembered

/** settingsOf returns the settings of a machine that differ from its defaults. */
export const settingsOf = (id: string): ReadonlySignal<Choice[]> => computed(() => all.value[id] ?? none);

/** remember keeps them. */
export function remember(id: string, choices: Choice[]): void {
  const { [id]: _, ...others } = all.value;
  const rest = Object.entries(others).slice(-most);
  all.value = Object.fromEntries(choices.length ? [...rest, [id, choices]] : rest);
}
