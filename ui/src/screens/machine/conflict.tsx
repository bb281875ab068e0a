/** Two pages have changed one machine: the person says which change stays. */

import { useEffect, useRef } from "preact/hooks";
import type { Bench, Conflicting } from "../../state/bench.ts";
import { words } from "../../words.ts";

const most = 8; // lines shown of each side

export function ConflictDialog({ bench, conflict }: { bench: Bench; conflict: Conflicting }) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => ref.current?.showModal(), []);
  const { yours, current } = conflict;
  return (
    <dialog ref={ref} class="conflict" aria-labelledby="conflict-title" onCancel={(e) => e.preventDefault()}>
      <h2 id="conflict-title">{words.machine.conflictTitle}</h2>
      <p>{words.machine.conflict}</p>
      <h3>{words.machine.differs}</h3>
      <pre tabIndex={0} aria-label={words.machine.differs}>
        {onlyIn(current.text, yours).map((l) => `− ${l}\n`)}
        {onlyIn(yours, current.text).map((l) => `+ ${l}\n`)}
      </pre>
      <div class="row">
        <button type="button" class="strong" onClick={() => bench.mine()} disabled={!yours}>
          {words.machine.mine}
        </button>
        <button type="button" onClick={() => bench.theirs()}>
          {words.machine.theirs}
        </button>
      </div>
    </dialog>
  );
}

/** onlyIn returns the lines of a that b has not, up to the most that are shown. */
export function onlyIn(a: string, b: string): string[] {
  const there = new Set(b.split("\n"));
  return a
    .split("\n")
    .filter((line) => !there.has(line))
    .slice(0, most);
}
