/** The machines that are compared, each with its settings, and the next to add. */

import { useSignal } from "@preact/signals";
import type { Choice, Setting } from "../../api.ts";
import { sentence } from "../../parts/notes.tsx";
import { ask } from "../../server/client.ts";
import { room } from "../../state/room.ts";
import { units } from "../../state/taste.ts";
import { beside } from "../../units.ts";
import { words } from "../../words.ts";
import type { Item } from "./state.ts";

interface OneItemProps {
  item: Item;
  label: string;
  trouble: string;
  i: number;
  set: (settings: Choice[]) => void;
  drop: () => void;
}

export function OneItem({ item, label, trouble, i, set, drop }: OneItemProps) {
  const settings = useSignal<Setting[] | null>(null);
  const name = label || room.value?.machines.find((m) => m.id === item.id)?.name || words.loading;
  const open = async () => {
    if (settings.value) return;
    try {
      const p = await ask("POST /api/preview", {
        in: { sheet: item.id, look: { structure: true, positions: 11, noBand: true } },
      });
      settings.value = p.structure?.settings ?? [];
    } catch {
      settings.value = []; // the comparison itself tells what is wrong with this machine
    }
  };
  return (
    <li>
      <div class="compared-head">
        <svg class="swatch" width="34" height="12" aria-hidden="true">
          <path class={`curve series-${i + 1}`} d="M1 6H33" />
        </svg>
        <strong>{name}</strong>
        <button type="button" class="icon" aria-label={words.compare.remove(name)} onClick={drop}>
          ×
        </button>
      </div>
      {trouble && <p class="warn-text">{sentence(trouble)}</p>}
      <details onToggle={() => void open()}>
        <summary>{words.machine.tabs.set}</summary>
        {settings.value?.length === 0 && <p class="faint">{words.set.none}</p>}
        {settings.value?.map((s) => (
          <label class="compared-setting" key={s.name}>
            <span>{s.name}</span>
            <select
              value={item.settings.find((c) => c.setting === s.name)?.value ?? s.default}
              onChange={(e) => {
                const value = e.currentTarget.value;
                const rest = item.settings.filter((c) => c.setting !== s.name);
                set(value === s.default ? rest : [...rest, { setting: s.name, value }]);
              }}
            >
              {s.values.map((v) => (
                <option value={v} key={v}>
                  {beside(units.value, v)}
                </option>
              ))}
            </select>
          </label>
        ))}
      </details>
    </li>
  );
}

export function Add({ add }: { add: (id: string) => void }) {
  const machines = room.value?.machines.filter((m) => m.sign) ?? [];
  const wanted = useSignal("");
  if (!machines.length) return null;
  return (
    <div class="row">
      <label class="find">
        <span>{words.compare.choose}</span>
        <select value={wanted.value} onChange={(e) => (wanted.value = e.currentTarget.value)}>
          <option value="">…</option>
          {machines.map((m) => (
            <option value={m.id} key={m.id}>
              {m.name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" class="strong" disabled={!wanted.value} onClick={() => add(wanted.value)}>
        {words.compare.add}
      </button>
    </div>
  );
}
