/** A link back to where one came from. */

import { type Route, write } from "../state/route.ts";

export function BackLink({ to, label }: { to: Route; label: string }) {
  return (
    <a class="button back" href={write(to)} title={label}>
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        <path class="line-icon" d="M15 5l-7 7 7 7" />
      </svg>
      <span class="unseen">{label}</span>
    </a>
  );
}
