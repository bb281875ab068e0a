/** Panes of which one is open. Arrow keys move between the tabs. */

import type { ComponentChildren } from "preact";
import { useId, useLayoutEffect, useRef } from "preact/hooks";
import type { Option } from "./choice.tsx";

interface TabsProps {
  label: string;
  tabs: readonly Option[];
  open: string;
  choose: (value: string) => void;
  children: ComponentChildren;
}

export function Tabs({ label, tabs, open, choose, children }: TabsProps) {
  const id = useId();
  const pane = useRef<HTMLDivElement>(null);
  // each pane begins at its top, however far down the last one was read
  useLayoutEffect(() => {
    if (pane.current) pane.current.scrollTop = 0;
  }, [open]);
  const turn = (e: KeyboardEvent) => {
    const by = e.key === "ArrowRight" ? 1 : e.key === "ArrowLeft" ? -1 : 0;
    if (!by) return;
    const i = tabs.findIndex((t) => t.value === open);
    const next = tabs[(i + by + tabs.length) % tabs.length]!;
    choose(next.value);
    document.getElementById(`${id}${next.value}`)?.focus();
  };
  return (
    <>
      <div class="tabs" role="tablist" aria-label={label} onKeyDown={turn}>
        {tabs.map((t) => (
          <button
            type="button"
            role="tab"
            id={`${id}${t.value}`}
            aria-selected={t.value === open}
            aria-controls={`${id}pane`}
            tabIndex={t.value === open ? 0 : -1}
            onClick={() => choose(t.value)}
            key={t.value}
          >
            {t.name}
          </button>
        ))}
      </div>
      <div class="pane" role="tabpanel" id={`${id}pane`} aria-labelledby={`${id}${open}`} tabIndex={0} ref={pane}>
        {children}
      </div>
    </>
  );
}
