/** Something wide that scrolls sideways, by keyboard too. */

import type { ComponentChildren } from "preact";

export function Scroll({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    <section class="scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
