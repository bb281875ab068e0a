/** What was measured of a person and what limits them, to be added to their sheet. */

import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import type { AskPerson, SheetProblem } from "../api.ts";
import { Choice } from "../parts/choice.tsx";
import { ProblemList } from "../parts/notes.tsx";
import { words } from "../words.ts";

/** Added is what a form adds. */
export type Added = Pick<AskPerson, "strength" | "limit">;

interface FormProps {
  motions: readonly string[];
  /** add stores it and returns null, or says why not. */
  add: (what: Added) => Promise<readonly SheetProblem[] | null>;
}

export function AddStrength({ motions, add }: FormProps) {
  const by = useSignal<"moment" | "force">("moment");
  return (
    <Adding
      title={words.people.addStrength}
      add={(f) => {
        const measured = by.value === "moment" ? { moment: f("moment") } : { force: f("force"), at: f("at") };
        return add({ strength: { motion: f("motion"), angle: f("angle"), ...measured, how: f("how") } });
      }}
    >
      <Motions motions={motions} />
      <Text name="angle" label={words.people.jointAngle} hint="60 deg" />
      <Choice
        label={words.people.measuredAs}
        options={[
          { value: "moment", name: words.people.moment },
          { value: "force", name: words.people.forceAt },
        ]}
        value={by.value}
        choose={(v) => {
          by.value = v as "moment" | "force";
        }}
      />
      {by.value === "moment" ? (
        <Text name="moment" label={words.people.moment} hint="150 ± 15 Nm" />
      ) : (
        <>
          <Text name="force" label={words.people.force} hint="170 ± 10 N" />
          <Text name="at" label={words.people.distance} hint="280 mm" />
        </>
      )}
      <Text name="how" label={words.people.how} hint={words.people.howHint} />
      <p class="faint small">{words.people.strengthHint}</p>
    </Adding>
  );
}

export function AddLimit({ motions, add }: FormProps) {
  return (
    <Adding title={words.people.addLimit} add={(f) => add({ limit: { motion: f("motion"), angle: f("angle") } })}>
      <Motions motions={motions} />
      <Text name="angle" label={words.people.goesTo} hint="120 deg" />
      <p class="faint small">{words.people.limitHint}</p>
    </Adding>
  );
}

interface AddingProps {
  title: string;
  add: (field: (name: string) => string) => Promise<readonly SheetProblem[] | null>;
  children: ComponentChildren;
}

/** Adding is a form that is closed until asked for; what is refused stays in it, to be mended. */
function Adding({ title, add, children }: AddingProps) {
  const box = useRef<HTMLDetailsElement>(null);
  const refused = useSignal<readonly SheetProblem[]>([]);
  const send = async (form: HTMLFormElement) => {
    const data = new FormData(form);
    const problems = await add((name) => String(data.get(name) ?? "").trim());
    refused.value = problems ?? [];
    if (problems) return;
    form.reset();
    if (box.current) box.current.open = false;
    box.current?.querySelector("summary")?.focus();
  };
  return (
    <details class="adding" ref={box}>
      <summary>{title}</summary>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          void send(e.currentTarget);
        }}
      >
        {children}
        {refused.value.length > 0 && (
          <div class="note warn" role="alert">
            <strong>{words.people.refused}</strong>
            {/* of the text as it would be: its lines are not the stored sheet's */}
            <ProblemList problems={refused.value.map((p) => ({ ...p, line: 0 }))} />
          </div>
        )}
        <button type="submit" class="strong">
          {words.people.put}
        </button>
      </form>
    </details>
  );
}

function Motions({ motions }: { motions: readonly string[] }) {
  return (
    <label class="entry">
      <span>{words.people.motion}</span>
      <select name="motion">
        {motions.map((m) => (
          <option key={m}>{m}</option>
        ))}
      </select>
    </label>
  );
}

function Text({ name, label, hint }: { name: string; label: string; hint: string }) {
  return (
    <label class="entry">
      <span>{label}</span>
      <input type="text" name={name} placeholder={hint} autocomplete="off" />
    </label>
  );
}
