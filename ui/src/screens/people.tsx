/** The people who train here, each a sheet. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Problem, Sheet, SheetCard } from "../api.ts";
import { ProblemList, TroubleNote } from "../parts/notes.tsx";
import { ask, troubleOf } from "../server/client.ts";
import { refresh, remove, room, roomTrouble } from "../state/room.ts";
import { words } from "../words.ts";

export function PeopleScreen() {
  const trouble = useSignal<Problem | null>(null);
  useEffect(() => void refresh(), []);
  const people = room.value?.people ?? [];
  const add = async () => {
    try {
      const example = await ask("GET /api/example/{kind}", { path: { kind: "person" } });
      await ask("POST /api/sheets", { in: { text: await example.text() } });
      await refresh();
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  return (
    <div class="people-screen">
      <h1>{words.people.title}</h1>
      <p class="lead">{words.people.lead}</p>
      {(trouble.value ?? roomTrouble.value) && <TroubleNote problem={(trouble.value ?? roomTrouble.value)!} />}
      {room.value && !people.length && <p class="empty">{words.people.empty}</p>}
      <ul class="people-list">
        {people.map((p) => (
          <li key={p.id}>
            <Person card={p} />
          </li>
        ))}
      </ul>
      <button type="button" class="strong" onClick={() => void add()}>
        {words.people.add}
      </button>
    </div>
  );
}

function Person({ card }: { card: SheetCard }) {
  const sheet = useSignal<Sheet | null>(null);
  const draft = useSignal("");
  const trouble = useSignal<Problem | null>(null);
  const open = async () => {
    if (sheet.value) return;
    try {
      sheet.value = await ask("GET /api/sheets/{id}", { path: { id: card.id } });
      draft.value = sheet.value.text;
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  const keep = async () => {
    if (!sheet.value) return;
    try {
      const saved = await ask("PUT /api/sheets/{id}", {
        path: { id: card.id },
        in: { revision: sheet.value.revision, text: draft.value },
      });
      sheet.value = saved.sheet;
      trouble.value = null;
      await refresh();
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  return (
    <details onToggle={() => void open()}>
      <summary>{card.name}</summary>
      {trouble.value && <TroubleNote problem={trouble.value} />}
      {trouble.value?.problems && <ProblemList problems={trouble.value.problems} />}
      <textarea
        rows={16}
        spellcheck={false}
        aria-label={`${words.people.edit}: ${card.name}`}
        value={draft.value}
        onInput={(e) => (draft.value = e.currentTarget.value)}
      />
      <div class="row">
        <button
          type="button"
          class="strong"
          disabled={!sheet.value || draft.value === sheet.value.text}
          onClick={() => void keep()}
        >
          {words.people.keep}
        </button>
        <button type="button" onClick={() => void remove(card.id, sheet.value?.revision ?? card.revision)}>
          {words.people.removed}
        </button>
      </div>
    </details>
  );
}
