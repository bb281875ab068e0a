/** The sheet as text, with what needs mending told by line. */

import { useEffect } from "preact/hooks";
import { ProblemList } from "../../parts/notes.tsx";
import type { SafeBench } from "../../state/unkept.ts";
import { words } from "../../words.ts";

export function SheetPane({ bench }: { bench: SafeBench }) {
  const stored = bench.sheet.value?.text ?? "";
  // what is written stays until it stands stored, whatever happens on the way
  const draft = bench.draft.value?.text === stored ? null : bench.draft.value;
  const text = draft?.text ?? stored;
  const write = (next: string) => {
    // from the revision it was begun from: what others store meanwhile must not be lost
    bench.draft.value = { text: next, from: draft?.from ?? bench.sheet.value?.revision ?? 0 };
  };
  const conflict = bench.conflict.value;
  useEffect(() => {
    if (conflict) bench.draft.value = null; // the conflict has the text now
  }, [bench, conflict]);
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
        onInput={(e) => write(e.currentTarget.value)}
      />
      <div class="row">
        <button
          type="button"
          class="strong"
          disabled={!draft}
          onClick={() => draft && bench.rewrite(draft.text, draft.from)}
        >
          {words.sheet.keep}
        </button>
        <button type="button" disabled={!draft} onClick={() => bench.trySheet(text)}>
          {words.sheet.try}
        </button>
        <button
          type="button"
          disabled={!draft}
          onClick={() => {
            bench.draft.value = null;
            bench.drop();
          }}
        >
          {words.sheet.restore}
        </button>
        <span class="faint" role="status">
          {draft ? words.sheet.changed : words.sheet.same}
        </span>
      </div>
    </div>
  );
}
