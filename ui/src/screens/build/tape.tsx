/** Builds a machine by typing what the tape says; the picture follows. */

import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { Build, Family, Preview, Problem } from "../../api.ts";
import { ProblemList, TroubleNote } from "../../parts/notes.tsx";
import { Stepper } from "../../parts/stepper.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { Latest } from "../../server/latest.ts";
import { pounds, units } from "../../state/taste.ts";
import { words } from "../../words.ts";
import { put, usable } from "./build.tsx";
import { BuildPreview, NameField, ValueFields } from "./fields.tsx";

export function TapeBuild({ family }: { family: Family }) {
  const build = useSignal<Build>({
    name: `${words.build.usual}: ${family.name}`,
    points: family.points.map((p) => ({ name: p.name, at: p.usual, plus: [0.003, 0.003] })),
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
      if (preview.value) await put(usable(preview.value));
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  return (
    <div class="build-grid">
      <div>
        <BuildPreview preview={preview.value} />
        {trouble.value && <TroubleNote problem={trouble.value} />}
        {preview.value && <ProblemList problems={preview.value.problems} />}
      </div>
      <div class="guide">
        <NameField value={asked.name} change={(name) => (build.value = { ...build.value, name })} />
        <p class="faint">{words.build.usualHint}</p>
        {family.points.map((p, i) => (
          <PointRow
            ask={p}
            at={asked.points[i]!.at}
            change={(at) => {
              const points = build.value.points.map((q, k) => (k === i ? { ...q, at } : q));
              build.value = { ...build.value, points };
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
  ask: Family["points"][number];
  at: [number, number];
  change: (at: [number, number]) => void;
}

function PointRow({ ask: p, at, change }: PointRowProps) {
  const u = units.value.length;
  const step = units.value.imperial ? 0.25 : 5;
  const field = (axis: 0 | 1, name: string) => (
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
      {field(0, words.build.forward)}
      {field(1, words.build.up)}
    </div>
  );
}
