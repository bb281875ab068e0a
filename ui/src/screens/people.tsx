/** The people who train here: what is known of each, what is filled in, and what would make it closer. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { AskPerson, PersonSheet, Problem, Sheet, SheetCard, SheetEntry, SheetProblem } from "../api.ts";
import { ProblemList, TroubleNote } from "../parts/notes.tsx";
import { Told } from "../parts/told.tsx";
import { ask, Trouble, troubleOf } from "../server/client.ts";
import { refresh, remove, room, roomTrouble } from "../state/room.ts";
import { trainee } from "../state/trainee.ts";
import { words } from "../words.ts";
import { type Added, AddLimit, AddStrength } from "./measured.tsx";

export function PeopleScreen() {
  const trouble = useSignal<Problem | null>(null);
  const added = useSignal("");
  useEffect(() => void refresh(trainee.value), []);
  const people = room.value?.people ?? [];
  const add = async () => {
    try {
      const example = await ask("GET /api/example/{kind}", { path: { kind: "person" } });
      added.value = (await ask("POST /api/sheets", { in: { text: await example.text() } })).sheet.id;
      await refresh(trainee.value);
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  const shown = trouble.value ?? roomTrouble.value;
  return (
    <div class="people-screen">
      <div class="screen-head">
        <h1>{words.people.title}</h1>
        <button type="button" class="strong" onClick={() => void add()}>
          {words.people.add}
        </button>
      </div>
      <p class="lead">{words.people.lead}</p>
      {shown && <TroubleNote problem={shown} />}
      {room.value && !people.length && <p class="empty">{words.people.empty}</p>}
      <ul class="people-list">
        {people.map((p) => (
          <li key={p.id}>
            <Person card={p} fresh={p.id === added.value} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** usePerson holds one person's sheet, as stored and as understood. */
function usePerson(card: SheetCard) {
  const sheet = useSignal<Sheet | null>(null);
  const person = useSignal<PersonSheet | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const refused = useSignal<SheetProblem[]>([]);
  const guarded = async (work: () => Promise<void>) => {
    try {
      await work();
      trouble.value = null;
      return true;
    } catch (err) {
      trouble.value = troubleOf(err);
      return false;
    }
  };
  const understood = (text: string, what: Omit<AskPerson, "text"> = {}) =>
    ask("POST /api/person", { in: { text, ...what } });
  const open = () =>
    guarded(async () => {
      sheet.value = await ask("GET /api/sheets/{id}", { path: { id: card.id } });
      person.value = await understood(sheet.value.text);
    });
  /** keep stores the sheet and reports whether it could; a sheet that cannot be understood is not stored. */
  const keep = async (text: string) => {
    const tried = await guarded(async () => {
      refused.value = (await understood(text)).problems;
    });
    return tried && !refused.value.length && store(text);
  };
  const store = (text: string) =>
    guarded(async () => {
      const revision = sheet.value?.revision ?? card.revision;
      const saved = await ask("PUT /api/sheets/{id}", { path: { id: card.id }, in: { revision, text } });
      sheet.value = saved.sheet;
      refused.value = [];
      person.value = await understood(saved.sheet.text);
      await refresh(trainee.value);
    });
  /** change stores one number and reports whether it could; what cannot be understood is told, and not stored. */
  const change = (path: string, text: string) =>
    guarded(async () => {
      if (person.value?.entries.some((e) => e.path === path && e.text === text)) return;
      const tried = await understood(sheet.value?.text ?? "", { edits: [{ value: { path, text } }] });
      if (tried.problems.length) throw new Error(tried.problems.map((p) => p.message).join(" "));
      await store(tried.text);
    });
  /** add stores what is new and returns null, or why it could not. */
  const add = async (what: Added): Promise<readonly SheetProblem[] | null> => {
    let problems: readonly SheetProblem[] = [];
    const stored = await guarded(async () => {
      const tried = await understood(sheet.value?.text ?? "", what);
      problems = tried.problems;
      if (!problems.length && !(await store(tried.text))) throw new Trouble(trouble.value!);
    });
    const told = trouble.value?.problems;
    if (!stored && told?.length) {
      trouble.value = null; // the form tells it
      return told;
    }
    return stored && !problems.length ? null : problems;
  };
  return { sheet, person, trouble, refused, open, keep, change, add };
}

/** Person is closed until asked for; one just added opens at their name. */
function Person({ card, fresh }: { card: SheetCard; fresh: boolean }) {
  const p = usePerson(card);
  const box = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    if (fresh && box.current) box.current.open = true;
  }, [fresh]);
  useEffect(() => {
    if (fresh && p.person.value) box.current?.querySelector("input")?.select();
  }, [fresh, p.person.value !== null]);
  const draft = useSignal<string | null>(null);
  const known = p.person.value;
  const text = draft.value ?? p.sheet.value?.text ?? "";
  return (
    <details
      ref={box}
      onToggle={(e) => {
        if (e.currentTarget.open && !p.sheet.value) void p.open();
      }}
    >
      <summary>{card.name}</summary>
      {p.trouble.value && <TroubleNote problem={p.trouble.value} />}
      {known && <ProblemList problems={known.problems} />}
      {known && !known.problems.length && (
        <div class="person-grid">
          <div>
            {known.entries
              .filter((e) => e.path !== "steelyard")
              .map((e) => (
                <Entry entry={e} change={(next) => p.change(e.path, next)} key={e.path} />
              ))}
            <AddStrength motions={known.motions} add={p.add} />
            <AddLimit motions={known.motions} add={p.add} />
          </div>
          <div>
            <Told title={words.people.warnings} lines={known.warnings} open />
            <Told title={words.people.missing} lines={known.missing} open />
            <Told title={words.why.understood} lines={known.understood} />
            <Told title={words.why.assumed} lines={known.assumed} />
          </div>
        </div>
      )}
      {p.sheet.value && (
        <details>
          <summary>{words.people.edit}</summary>
          {p.refused.value.length > 0 && (
            <div class="note warn" role="alert">
              <strong>{words.people.refused}</strong>
              <ProblemList problems={p.refused.value} />
            </div>
          )}
          <textarea
            rows={16}
            spellcheck={false}
            aria-label={`${words.people.edit}: ${card.name}`}
            value={text}
            onInput={(e) => {
              draft.value = e.currentTarget.value;
            }}
          />
          <button
            type="button"
            class="strong"
            disabled={text === p.sheet.value.text}
            onClick={async () => {
              if (await p.keep(text)) draft.value = null;
            }}
          >
            {words.people.keep}
          </button>
        </details>
      )}
      <div class="row person-actions">
        <button
          type="button"
          onClick={() => void remove(card.id, p.sheet.value?.revision ?? card.revision, trainee.value)}
        >
          {words.people.removed}
        </button>
        <span class="faint small">{words.people.back}</span>
      </div>
    </details>
  );
}

interface EntryProps {
  entry: SheetEntry;
  change: (text: string) => Promise<boolean>;
}

/** Entry is one number of the sheet. What is refused stays in the field, to be mended. */
function Entry({ entry, change }: EntryProps) {
  const refused = useSignal<string | null>(null);
  return (
    <label class="entry">
      <span>{entry.path.replaceAll("_", " ").replaceAll(".", ", ")}</span>
      <input
        type="text"
        value={refused.value ?? entry.text}
        aria-invalid={refused.value !== null}
        onChange={async (e) => {
          const text = e.currentTarget.value;
          refused.value = (await change(text)) ? null : text;
        }}
      />
    </label>
  );
}
