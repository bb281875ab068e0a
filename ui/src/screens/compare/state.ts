/** What is compared, and how it is looked at: kept while other screens are shown. */

import { signal } from "@preact/signals";
import type { Choice, Phase } from "../../api.ts";

/** Item is a machine with settings of its own. */
export interface Item {
  id: string;
  settings: Choice[];
}

/** most is how many curves can still be told apart. */
export const most = 6;

export const items = signal<Item[]>([]);
export const over = signal<"share" | "travel">("share");
export const phase = signal<Phase>("lifting");
export const ownPeak = signal(false);
export const shown = signal("force"); // or "effort", or the name of a joint axis
export const place = signal(0.5); // of the axis, where the curves are read
