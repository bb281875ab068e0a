/** A menu that drops from its button and closes when something else is touched. */

import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

interface MenuProps {
  label: string;
  look?: string; // another class
  icon: ComponentChildren;
  children: ComponentChildren;
}

export function Menu({ label, look = "", icon, children }: MenuProps) {
  const box = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    const away = (e: Event) => {
      if (box.current && !box.current.contains(e.target as Node)) box.current.open = false;
    };
    const moved = () => {
      if (box.current) box.current.open = false;
    };
    document.addEventListener("pointerdown", away);
    addEventListener("hashchange", moved);
    return () => {
      document.removeEventListener("pointerdown", away);
      removeEventListener("hashchange", moved);
    };
  }, []);
  const leave = (e: KeyboardEvent) => {
    if (e.key !== "Escape" || !box.current?.open) return;
    box.current.open = false;
    box.current.querySelector("summary")?.focus();
  };
  return (
    <details class={`menu ${look}`} ref={box} onKeyDown={leave}>
      <summary aria-label={label}>{icon}</summary>
      <div class="menu-body">{children}</div>
    </details>
  );
}
