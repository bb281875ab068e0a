/** Builds a machine by typing what the tape says; the picture follows. */

import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { Build, Family, NamedPlace, Place, PointAsk, Preview, Problem } from "../../api.ts";
import { ProblemList, TroubleNote } from "../../parts/notes.tsx";
import { Stepper } from "../../parts/stepper.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { Latest } from "../../server/latest.ts";
import { pounds, units } from "../../state/taste.ts";
import { words } from "../../words.ts";
import { put, usable } from "./build.tsx";
import { BuildPreview, NameField, ValueFields } from "./fields.tsx";

const tapePlus = 0.003; // m, ± of a tape held by hand

const usual = (p: PointAsk): NamedPlace => ({ name: p.name, at: p.usual, plus: [tapePlus, tapePlus] });

export function TapeBuild({ family }: { family: Family }) {
  const build = useSignal<Build>({
    name: `${words.build.usual}: ${family.name}`,
    points: family.points.filter((p) => !p.optional).map(usual),
    values: family.values.map((v) => ({ name: v.name, value: v.usual, plus: 0 })),
    look: {},
  });
  const preview = useSignal<Preview | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const latest = useMemo(
    () =>
      new Latest<Build, Preview>(
        (b) => ask("POST /api/families/{id}", { path: { id: family.id }, in: b }),
        (p) => {
          preview.value = p;
          trouble.value = null;
        },
        (err) => (trouble.value = troubleOf(err)),
      ),
    [family.id],
  );
  const asked = build.value;
  useEffect(() => latest.ask({ ...asked, look: { frames: "all", imperial: pounds.value } }), [asked, pounds.value]);
  useEffect(() => () => latest.forget(), []);
  const keep = async () => {
    try {
      // what is shown may still be the answer to what stood here before the last key
      await put(usable(await ask("POST /api/families/{id}", { path: { id: family.id }, in: build.value })));
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  return (
    <div class="build-grid">
      <div class="build-shown">
        <BuildPreview preview={preview.value} />
        {trouble.value && <TroubleNote problem={trouble.value} />}
        {preview.value && <ProblemList problems={preview.value.problems} />}
      </div>
      <div class="guide">
        <NameField value={asked.name} change={(name) => (build.value = { ...build.value, name })} />
        <p class="faint">{words.build.usualHint}</p>
        {family.points.map((p) => (
          <PointRow
            ask={p}
            at={asked.points.find((q) => q.name === p.name)?.at ?? null}
            change={(at) => {
              const others = build.value.points.filter((q) => q.name !== p.name);
              build.value = { ...build.value, points: at ? [...others, { ...usual(p), at }] : others };
            }}
            key={p.name}
          />
        ))}
        <ValueFields
          asks={family.values}
          values={asked.values}
          change={(values) => (build.value = { ...build.value, values })}
        />
        <button type="button" class="strong" disabled={!preview.value?.curve} onClick={() => void keep()}>
          {words.build.put}
        </button>
      </div>
    </div>
  );
}

interface PointRowProps {
  ask: PointAsk;
  at: Place | null; // m; null while an optional one is left out
  change: (at: Place | null) => void;
}

function PointRow({ ask: p, at, change }: PointRowProps) {
  const u = units.value.length;
  const step = units.value.imperial ? 0.25 : 5;
  const field = (at: Place, axis: 0 | 1, name: string) => (
    <Stepper
      label={`${p.name}, ${name}`}
      name={name}
      unit={u.unit}
      value={at[axis] / u.perUnit}
      low={-5 / u.perUnit}
      high={5 / u.perUnit}
      step={step}
      change={(v) => change(axis === 0 ? [v * u.perUnit, at[1]] : [at[0], v * u.perUnit])}
    />
  );
  return (
    <div class="tape-row">
      <p>
        <strong>{p.ask}</strong> <span class="faint small">{p.hint}</span>
      </p>
      {p.optional && (
        <label class="check whole">
          <input type="checkbox" checked={at !== null} onChange={() => change(at ? null : p.usual)} />
          {words.build.known}
        </label>
      )}
      {at && field(at, 0, words.build.forward)}
      {at && field(at, 1, words.build.up)}
    </div>
  );
}
