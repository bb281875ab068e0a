/** Puts a person on the machine, or takes them off. */

import { useEffect } from "preact/hooks";
import { refresh, room } from "../state/room.ts";
import { put, trainee } from "../state/trainee.ts";
import { words } from "../words.ts";

export function PersonPicker() {
  useEffect(() => {
    if (!room.value) void refresh(""); // only the names are wanted, not how each machine fits
  }, []);
  const people = room.value?.people ?? [];
  if (!people.length) return null;
  return (
    <label class="person-picker">
      <span>{words.person.label}</span>
      <select value={trainee.value} onChange={(e) => put(e.currentTarget.value)}>
        <option value="">{words.person.nobody}</option>
        {people.map((p) => (
          <option value={p.id} key={p.id}>
            {p.name}
          </option>
        ))}
      </select>
    </label>
  );
}
