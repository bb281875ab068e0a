import type { JSX } from "preact";
import { diamond } from "../drawing/path.ts";

/** Legend names the lines of a chart by their look as well as their colour. */
export function Legend({ entries }: { entries: { name: string; look: string; reading?: string }[] }): JSX.Element {
  return (
    <ul class="legend">
      {entries.map((e) => (
        <li key={e.name}>
          <svg width="30" height="10" aria-hidden="true">
            {e.look === "cross" ? (
              <path class="cross" d="M10 0l10 10M10 10l10 -10" />
            ) : e.look === "sticking" ? (
              <path class="sticking" d={diamond(15, 5, 5)} />
            ) : e.look === "chart-band" ? (
              <rect class="legend-band" x="1" y="1" width="28" height="8" />
            ) : (
              <path class={`curve ${e.look}`} d="M1 5H29" />
            )}
          </svg>
          {e.name}
          {e.reading && <strong> {e.reading}</strong>}
        </li>
      ))}
    </ul>
  );
}
