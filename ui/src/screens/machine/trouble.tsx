/** What stands between a change and the program that is to store it. */

import type { Edit, Value } from "../../api.ts";
import { sentence, TroubleNote } from "../../parts/notes.tsx";
import { units } from "../../state/taste.ts";
import type { SafeBench } from "../../state/unkept.ts";
import { lengthText } from "../../units.ts";
import { words } from "../../words.ts";

export function Trouble({ bench }: { bench: SafeBench }) {
  const trouble = bench.trouble.value;
  const unkept = bench.unkept.value;
  if (!trouble && !unkept.length) return null;
  if (trouble && !unkept.length) {
    const gone = trouble.code === "not found";
    return (
      <TroubleNote problem={gone ? { ...trouble, message: words.trouble.gone } : trouble} retry={() => bench.retry()} />
    );
  }
  const values = bench.settled.value?.structure?.values ?? [];
  return (
    <div class="note warn" role="alert">
      <strong>{words.machine.unkept}</strong>
      <p>{told(unkept, values).join("; ")}.</p>
      {trouble && <p>{sentence(trouble.message)}</p>}
      <div class="row">
        <button type="button" class="strong" onClick={() => bench.retry()}>
          {words.machine.storeAgain}
        </button>
        <button type="button" onClick={() => bench.discard()}>
          {words.machine.discard}
        </button>
      </div>
    </div>
  );
}

/** told says of each thing that was altered where it was put last. */
export function told(edits: readonly Edit[], values: readonly Value[]): string[] {
  const out = new Map<string, string>();
  const place = ([x, y]: readonly [number, number]): string =>
    words.machine.placed(lengthText(units.value, x), lengthText(units.value, y));
  for (const { value, point, cam } of edits) {
    if (value) out.set(value.path, `${values.find((v) => v.path === value.path)?.name ?? value.path}: ${value.text}`);
    if (point) out.set(`point ${point.point}`, `${point.point}: ${place(point.to)}`);
    if (cam) out.set(`cam ${cam.cam} ${cam.vertex}`, `${cam.cam} ${cam.vertex}: ${place(cam.to)}`);
  }
  return [...out.values()];
}
