/** What in the photo has a known size: one thing, or up to five. */

import { Choice } from "../../parts/choice.tsx";
import { Stepper } from "../../parts/stepper.tsx";
import { units } from "../../state/taste.ts";
import { words } from "../../words.ts";
import { type Answers, type KnownSize, mostSizes, type SizeKind, tapsOf, unknownSize, wanting } from "./answers.ts";
import type { Change } from "./taps.ts";

const kinds = Object.entries(words.build.scales).map(([value, name]) => ({ value, name }));
const hints: Record<SizeKind, string> = {
  plate: words.build.plateHint,
  line: words.build.lineHint,
  rectangle: words.build.rectangleHint,
};

export function ScaleStep({ answers: a, change }: { answers: Answers; change: Change }) {
  const size = a.sizes[a.size]!;
  const set = (part: Partial<KnownSize>) =>
    change({ sizes: a.sizes.map((s, i) => (i === a.size ? { ...s, ...part } : s)) });
  return (
    <>
      <h2>{words.build.steps.scale}</h2>
      {a.sizes.length > 1 && <SizeList answers={a} change={change} />}
      {a.sizes.length === 1 && <p>{words.build.scaleLead}</p>}
      <Choice
        label={words.build.kind}
        hideLabel
        options={kinds}
        value={size.kind}
        choose={(v) => set({ kind: v as SizeKind })}
      />
      <p role="status">
        {hints[size.kind]} {size.kind === "line" && a.sizes.length === 1 && words.build.lineAlone}{" "}
        <strong>{tapsOf(size).length > 0 && wanting(size) > 0 && words.build.tooFew(wanting(size))}</strong>
      </p>
      <Dimensions size={size} set={set} />
      <details>
        <summary>{words.build.more}</summary>
        <Length name={words.build.plus} value={size.plus} set={(plus) => set({ plus })} />
        <label class="check">
          <input type="checkbox" checked={a.cropped} onChange={() => change({ cropped: !a.cropped })} />
          {words.build.cropped}
        </label>
      </details>
      <Another answers={a} change={change} />
    </>
  );
}

function SizeList({ answers: a, change }: { answers: Answers; change: Change }) {
  const options = a.sizes.map((s, i) => ({ value: String(i), name: `${i + 1} ${words.build.scalesShort[s.kind]}` }));
  return (
    <Choice
      label={words.build.sizes}
      hideLabel
      options={options}
      value={String(a.size)}
      choose={(v) => change({ size: Number(v) })}
    />
  );
}

interface DimensionsProps {
  size: KnownSize;
  set: (part: Partial<KnownSize>) => void;
}

function Dimensions({ size: s, set }: DimensionsProps) {
  return (
    <div class="dimensions">
      {s.kind === "plate" && (
        <Length name={words.build.diameter} value={s.diameter} set={(diameter) => set({ diameter })} />
      )}
      {s.kind === "line" && <Length name={words.build.lengthOf} value={s.length} set={(length) => set({ length })} />}
      {s.kind === "rectangle" && <Length name={words.build.width} value={s.width} set={(width) => set({ width })} />}
      {s.kind === "rectangle" && (
        <Length name={words.build.height} value={s.height} set={(height) => set({ height })} />
      )}
      <Length name={words.build.nearer} value={s.nearer} set={(nearer) => set({ nearer })} low={-1} high={1} />
    </div>
  );
}

/** Another offers a further known size once those begun are complete, and takes one away. */
function Another({ answers: a, change }: { answers: Answers; change: Change }) {
  const complete = a.sizes.every((s) => wanting(s) === 0);
  const add = () => change({ sizes: [...a.sizes, unknownSize("line")], size: a.sizes.length });
  const remove = () => {
    const sizes = a.sizes.filter((_, i) => i !== a.size);
    change({ sizes, size: Math.max(0, a.size - 1) });
  };
  return (
    <div class="row">
      {complete && a.sizes.length < mostSizes && (
        <button type="button" onClick={add}>
          {words.build.another}
        </button>
      )}
      {a.sizes.length > 1 && (
        <button type="button" onClick={remove}>
          {words.build.removeSize(words.build.scalesShort[a.sizes[a.size]!.kind])}
        </button>
      )}
      {complete && a.sizes.length === 1 && <span class="faint small">{words.build.anotherHint}</span>}
    </div>
  );
}

interface LengthProps {
  name: string;
  value: number; // m, as are low and high
  set: (metres: number) => void;
  low?: number;
  high?: number;
}

function Length({ name, value, set, low = 0, high = 5 }: LengthProps) {
  const u = units.value.length;
  return (
    <Stepper
      label={name}
      name={name}
      unit={u.unit}
      value={value / u.perUnit}
      low={low / u.perUnit}
      high={high / u.perUnit}
      step={units.value.imperial ? 0.125 : 1}
      change={(v) => set(v * u.perUnit)}
    />
  );
}
