/** What was changed on a machine, latest first, and the way back to any of it. */

import { useEffect, useRef, useState } from "preact/hooks";
import type { Changes, PastStep, Problem } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import type { Bench } from "../../state/bench.ts";
import { words } from "../../words.ts";

interface Props {
  bench: Bench;
  close: () => void;
}

export function HistoryDialog({ bench, close }: Props) {
  const box = useRef<HTMLDialogElement>(null);
  const [known, setKnown] = useState<Changes | null>(null);
  const [trouble, setTrouble] = useState<Problem | null>(null);
  const read = () => {
    setTrouble(null);
    ask("GET /api/sheets/{id}/changes", { path: { id: bench.id } }).then(setKnown, (err) => setTrouble(troubleOf(err)));
  };
  useEffect(() => {
    box.current?.showModal();
    read();
  }, []);
  const back = async (step: PastStep) => {
    try {
      const path = { id: bench.id, revision: String(step.revision) };
      const text = await ask("GET /api/sheets/{id}/history/{revision}", { path });
      bench.rewrite(await text.text());
      box.current?.close();
    } catch (err) {
      setTrouble(troubleOf(err));
    }
  };
  const steps = known?.steps ?? [];
  const untouched = known !== null && steps.length < 2;
  return (
    <dialog ref={box} class="history" aria-labelledby="history-title" onClose={close}>
      <h2 id="history-title">{words.history.title}</h2>
      {trouble && <TroubleNote problem={trouble} retry={read} />}
      {!known && !trouble && <p class="faint">{words.loading}</p>}
      {known && <p class="faint">{untouched ? words.history.empty : words.history.lead}</p>}
      {!untouched && (
        <ol class="steps-back">
          {steps.map((s) => (
            <Step step={s} back={() => void back(s)} key={s.revision} />
          ))}
        </ol>
      )}
      {known?.older && <p class="faint">{words.history.older}</p>}
      <div class="row">
        <button type="button" onClick={() => box.current?.close()}>
          {words.close}
        </button>
      </div>
    </dialog>
  );
}

function Step({ step: s, back }: { step: PastStep; back: () => void }) {
  const told = [words.history.what[s.what] ?? s.what, s.changes.join("; ")].filter(Boolean).join(": ");
  const at = when(s.saved);
  return (
    <li aria-current={s.now ? "step" : undefined}>
      <div>
        <span class="step-told">{told}</span>
        <time class="faint small" dateTime={s.saved}>
          {at}
        </time>
      </div>
      {s.now ? (
        <span class="faint">{words.history.now}</span>
      ) : (
        <button type="button" aria-label={words.history.backTo(told, at)} onClick={back}>
          {words.history.back}
        </button>
      )}
    </li>
  );
}

/** when tells a time as this reader's device writes it; the day only if it is not today. */
export function when(saved: string, now = new Date()): string {
  const at = new Date(saved);
  const clock: Intl.DateTimeFormatOptions = { hour: "2-digit", minute: "2-digit", second: "2-digit" };
  const day: Intl.DateTimeFormatOptions = { day: "numeric", month: "short", year: "numeric" };
  return at.toDateString() === now.toDateString()
    ? at.toLocaleTimeString(undefined, clock)
    : at.toLocaleString(undefined, { ...day, ...clock });
}
