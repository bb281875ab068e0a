/** Up to six machines or settings as curves on one axis, and how they differ. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Compared, Comparison, Problem } from "../../api.ts";
import { Notice, TroubleNote } from "../../parts/notes.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { refresh, room } from "../../state/room.ts";
import { correct } from "../../state/route.ts";
import { settingsOf } from "../../state/settings.ts";
import { pounds } from "../../state/taste.ts";
import { trainee, who } from "../../state/trainee.ts";
import { words } from "../../words.ts";
import { Curves } from "./curves.tsx";
import { Add, OneItem } from "./items.tsx";
import { type Item, items, most, phase } from "./state.ts";

export function CompareScreen({ ids }: { ids: string[] }) {
  useEffect(() => {
    if (!room.value) void refresh(""); // only the names are wanted
    const known = items.value;
    if (ids.length)
      items.value = ids.map((id, i) => (known[i]?.id === id ? known[i] : { id, settings: settingsOf(id).value }));
  }, [ids.join(" ")]);
  const now = items.value;
  const { comparison: c, trouble } = useComparison(now);
  const lost = useSignal(0);
  const change = (next: Item[]) => {
    items.value = next;
    correct({ screen: "compare", ids: next.map((i) => i.id) });
  };
  useEffect(() => {
    const gone = c?.items.filter((i) => i.gone).map((i) => i.sheet) ?? [];
    const left = now.filter((i) => !gone.includes(i.id));
    if (left.length === now.length) return;
    lost.value += now.length - left.length;
    change(left);
  }, [c]);
  const compared = (item: Item, i: number) => (c?.items[i]?.sheet === item.id ? c.items[i] : undefined);
  return (
    <div class="compare-screen">
      <h1>{words.compare.title}</h1>
      <p class="lead">{now.length ? words.compare.lead : words.compare.empty}</p>
      {trouble && <TroubleNote problem={trouble} />}
      <Notice text={lost.value ? words.compare.lost(lost.value) : ""} />
      {c && now.length > 0 && <Curves comparison={c} />}
      <ul class="compared">
        {now.map((item, i) => (
          <OneItem
            item={item}
            label={compared(item, i)?.label ?? ""}
            trouble={compared(item, i)?.trouble || compared(item, i)?.personGap || ""}
            i={i}
            set={(settings) => change(now.map((other, k) => (k === i ? { ...other, settings } : other)))}
            drop={() => change(now.filter((_, k) => k !== i))}
            key={`${i} ${item.id}`}
          />
        ))}
      </ul>
      {now.length < most && <Add add={(id) => change([...now, { id, settings: [] }])} />}
      {c && c.words.length > 0 && <Differences comparison={c} />}
    </div>
  );
}

/** useComparison asks for the comparison whenever what it rests on changes; a late answer to an old question is dropped. */
function useComparison(now: Item[]): { comparison: Comparison | null; trouble: Problem | null } {
  const comparison = useSignal<Comparison | null>(null);
  const trouble = useSignal<Problem | null>(null);
  useEffect(() => {
    if (!now.length) {
      comparison.value = null;
      return;
    }
    let current = true;
    const asked: Compared[] = now.map((i) => ({ sheet: i.id, settings: i.settings }));
    ask("POST /api/compare", { in: { items: asked, phase: phase.value, imperial: pounds.value, ...who() } })
      .then((c) => {
        if (!current) return;
        comparison.value = c;
        trouble.value = null;
      })
      .catch((err) => {
        if (current) trouble.value = troubleOf(err);
      });
    return () => {
      current = false;
    };
  }, [now, phase.value, pounds.value, trainee.value]);
  return { comparison: comparison.value, trouble: trouble.value };
}

function Differences({ comparison: c }: { comparison: Comparison }) {
  return (
    <section>
      <h2>{words.compare.words}</h2>
      <ul class="compare-words">
        {c.words.map((w) => (
          <li key={w.label}>
            <strong>
              {w.label}, {words.compare.first} {c.items[0]?.label}:
            </strong>{" "}
            {w.words.join(" ")}
          </li>
        ))}
      </ul>
    </section>
  );
}
