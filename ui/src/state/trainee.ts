/** Whose body is put on the machines: the person chosen in this browser. */

import { computed } from "@preact/signals";
import { room } from "./room.ts";
import { kept } from "./taste.ts";

const chosen = kept<string>("person", "");

/** trainee is the id of the person's sheet; "" for nobody, also if the sheet is gone. */
export const trainee = computed(() => {
  const people = room.value?.people;
  return !people || people.some((p) => p.id === chosen.value) ? chosen.value : "";
});

export function put(id: string): void {
  chosen.value = id;
}

/** who returns the part of a request that names the person. */
export const who = (): { person?: string } => (trainee.value ? { person: trainee.value } : {});
