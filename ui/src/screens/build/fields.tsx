/** Fields and the picture that both ways of building share. */

import type { NamedNumber, Preview, ValueAsk } from "../../api.ts";
import { at } from "../../drawing/ribbon.ts";
import { stageFor } from "../../explain/view.tsx";
import { Figure } from "../../parts/figure/figure.tsx";
import type { Layer } from "../../parts/figure/stage.ts";
import { useSize } from "../../parts/size.ts";
import { Stepper } from "../../parts/stepper.tsx";
import { units } from "../../state/taste.ts";
import { words } from "../../words.ts";

const show: ReadonlySet<Layer> = new Set<Layer>(["ribbon", "names", "forces", "band"]);

export function BuildPreview({ preview }: { preview: Preview | null }) {
  const [ref, size] = useSize<HTMLDivElement>();
  const middle = preview?.curve ? at(preview.curve.travel, 0.5) : 0;
  const stage = preview && size && size.height > 40 ? stageFor(preview, middle, size, units.value) : null;
  return (
    <>
      <div class="build-preview" ref={ref}>
        {stage && (
          <svg width={stage.size.width} height={stage.size.height} role="img" aria-label={preview!.name}>
            <Figure stage={stage} show={show} id="build-unsure" />
          </svg>
        )}
      </div>
      {preview?.words[0] && <p class="verdict">{preview.words[0]}</p>}
    </>
  );
}

export function NameField({ value, change }: { value: string; change: (name: string) => void }) {
  return (
    <label class="find">
      <span>{words.build.name}</span>
      <input type="text" maxLength={120} value={value} onInput={(e) => change(e.currentTarget.value)} />
    </label>
  );
}

interface ValueFieldsProps {
  asks: readonly ValueAsk[];
  values: readonly NamedNumber[];
  change: (values: NamedNumber[]) => void;
}

export function ValueFields({ asks, values, change }: ValueFieldsProps) {
  return (
    <>
      {asks.map((v, i) => (
        <div class="tape-row" key={v.name}>
          <Stepper
            label={v.ask}
            name={v.ask}
            unit={v.unit}
            value={values[i]!.value}
            low={v.low}
            high={v.high}
            step={v.step}
            change={(value) => change(values.map((old, k) => (k === i ? { ...old, value } : old)))}
          />
          <p class="faint small">{v.hint}</p>
        </div>
      ))}
    </>
  );
}
