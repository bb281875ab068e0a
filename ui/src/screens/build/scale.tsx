/** What in the photo has a known size. */

import type { PhotoSide } from "../../api.ts";
import { Choice } from "../../parts/choice.tsx";
import { Stepper } from "../../parts/stepper.tsx";
import { units } from "../../state/taste.ts";
import { words } from "../../words.ts";
import { type Answers, type ScaleKind, scaleNeeds } from "./answers.ts";

const kinds = Object.entries(words.build.scales).map(([value, name]) => ({ value, name }));
const hints: Record<ScaleKind, string> = {
  plate: words.build.plateHint,
  line: words.build.lineHint,
  rectangle: words.build.rectangleHint,
};

const sides = Object.entries(words.build.sides).map(([value, name]) => ({ value, name }));

interface ScaleFieldsProps {
  answers: Answers;
  change: (part: Partial<Answers>) => void;
  ambiguous: boolean; // the photo could have been taken from either side
}

export function ScaleFields({ answers: a, change, ambiguous }: ScaleFieldsProps) {
  const wanted = Math.max(0, scaleNeeds(a.scale)[0] - a.scaleTaps.length);
  return (
    <>
      <h2>{words.build.steps.scale}</h2>
      <p>{words.build.scaleLead}</p>
      <Choice
        label={words.build.steps.scale}
        hideLabel
        options={kinds}
        value={a.scale}
        choose={(v) => change({ scale: v as ScaleKind, scaleTaps: [] })}
      />
      <p>{hints[a.scale]}</p>
      {a.scale === "plate" && (
        <Length name={words.build.diameter} value={a.diameter} set={(diameter) => change({ diameter })} />
      )}
      {a.scale === "line" && (
        <Length name={words.build.lengthOf} value={a.length} set={(length) => change({ length })} />
      )}
      {a.scale === "rectangle" && (
        <Length name={words.build.width} value={a.width} set={(width) => change({ width })} />
      )}
      {a.scale === "rectangle" && (
        <Length name={words.build.height} value={a.height} set={(height) => change({ height })} />
      )}
      <Length name={words.build.plus} value={a.plus} set={(plus) => change({ plus })} />
      <Length name={words.build.nearer} value={a.nearer} set={(nearer) => change({ nearer })} />
      {(ambiguous || a.near) && (
        <Choice
          label={words.build.near}
          options={sides}
          value={a.near}
          choose={(v) => change({ near: v as PhotoSide })}
        />
      )}
      <p class="faint" role="status">
        {wanted ? words.build.tooFew(wanted) : ""}
      </p>
      <div class="row">
        <button
          type="button"
          disabled={!a.scaleTaps.length}
          onClick={() => change({ scaleTaps: a.scaleTaps.slice(0, -1) })}
        >
          {words.build.again}
        </button>
      </div>
    </>
  );
}

function Length({ name, value, set }: { name: string; value: number; set: (metres: number) => void }) {
  const u = units.value.length;
  return (
    <Stepper
      label={name}
      name={name}
      unit={u.unit}
      value={value / u.perUnit}
      low={0}
      high={5 / u.perUnit}
      step={units.value.imperial ? 0.125 : 1}
      change={(v) => set(v * u.perUnit)}
    />
  );
}
