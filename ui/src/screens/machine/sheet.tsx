/** The sheet as text, with what needs mending told by line. */

import { useState } from "preact/hooks";
import { ProblemList } from "../../parts/notes.tsx";
import type { Bench } from "../../state/bench.ts";
import { words } from "../../words.ts";

export function SheetPane({ bench }: { bench: Bench }) {
  const stored = bench.sheet.value?.text ?? "";
  // the text and the revision it was begun from: what others store meanwhile must not be lost
  const [draft, setDraft] = useState<{ text: string; from: number } | null>(null);
  const text = draft?.text ?? stored;
  const changed = draft !== null && draft.text !== stored;
  const keep = () => {
    if (!draft) return;
    bench.rewrite(draft.text, draft.from);
    setDraft(null);
  };
  return (
    <div class="pane-body sheet-pane">
      <p class="faint">{words.sheet.lead}</p>
      {bench.problems.value.length > 0 && (
        <div class="note warn" role="alert">
          <strong>{words.machine.problems(bench.problems.value.length)}</strong>
          <ProblemList problems={bench.problems.value} />
        </div>
      )}
      <textarea
        aria-label={words.sheet.label}
        spellcheck={false}
        autocomplete="off"
        rows={24}
        value={text}
        onInput={(e) =>
          setDraft({ text: e.currentTarget.value, from: draft?.from ?? bench.sheet.value?.revision ?? 0 })
        }
      />
      <div class="row">
        <button type="button" class="strong" disabled={!changed} onClick={keep}>
          {words.sheet.keep}
        </button>
        <button type="button" disabled={!changed} onClick={() => bench.trySheet(text)}>
          {words.sheet.try}
        </button>
        <button
          type="button"
          disabled={!changed}
          onClick={() => {
            setDraft(null);
            bench.drop();
          }}
        >
          {words.sheet.restore}
        </button>
        <span class="faint" role="status">
          {changed ? words.sheet.changed : words.sheet.same}
        </span>
      </div>
    </div>
  );
}
