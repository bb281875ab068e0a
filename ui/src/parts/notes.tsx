/** What went wrong, in a sentence with a cure, and short notices. */

import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { Problem, SheetProblem } from "../api.ts";
import { words } from "../words.ts";

/** sentence begins a message with a capital and ends it with a full stop. */
export const sentence = (text: string): string =>
  text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?…]$/.test(text) ? "" : ".");

export function TroubleNote({ problem, retry }: { problem: Problem; retry?: () => void }) {
  const box = useRef<HTMLDivElement>(null);
  // what was asked for may stand at the other end of the page
  useEffect(() => box.current?.scrollIntoView({ block: "nearest" }), [problem]);
  const message = problem.code === "refused" && !problem.message ? words.trouble.refused : problem.message;
  return (
    <div class="note warn" role="alert" ref={box}>
      <strong>{words.trouble.title}</strong>
      {problem.problems?.length ? <ProblemList problems={problem.problems} /> : <p>{sentence(message)}</p>}
      {retry && (
        <button type="button" onClick={retry}>
          {words.trouble.retry}
        </button>
      )}
    </div>
  );
}

/** Notice is read out politely; empty, it takes no room. */
export function Notice({ text, children }: { text: string; children?: ComponentChildren }) {
  return (
    <div class={text ? "note" : "unseen"} role="status">
      {text}
      {text && children}
    </div>
  );
}

export function ProblemList({ problems }: { problems: readonly SheetProblem[] }) {
  return (
    <ul class="problems">
      {problems.map((p) => (
        <li key={`${p.line} ${p.column} ${p.path} ${p.message}`}>
          {p.line > 0 && <span class="where">{words.machine.line(p.line)}</span>} {sentence(p.message)}
        </li>
      ))}
    </ul>
  );
}
