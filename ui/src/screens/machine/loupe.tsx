/** Shows, beside the finger and magnified, what the finger hides. */

import type { Place } from "../../drawing/place.ts";
import type { Size } from "../../drawing/view.ts";

const radius = 52; // px
const power = 2;
const above = 96; // px from finger to the loupe's middle

export function Loupe({ at, size, of }: { at: Place; size: Size; of: string }) {
  const y = at[1] > above + radius ? at[1] - above : at[1] + above;
  const x = Math.min(size.width - radius - 2, Math.max(radius + 2, at[0]));
  return (
    <g class="loupe" aria-hidden="true">
      <clipPath id="loupe-glass">
        <circle cx={x} cy={y} r={radius} />
      </clipPath>
      <circle class="glass" cx={x} cy={y} r={radius} />
      <g clip-path="url(#loupe-glass)">
        <use href={`#${of}`} transform={`translate(${x - power * at[0]} ${y - power * at[1]}) scale(${power})`} />
      </g>
      <path
        class="cross"
        d={`M${x - 12} ${y}H${x - 3}M${x + 3} ${y}H${x + 12}M${x} ${y - 12}V${y - 3}M${x} ${y + 3}V${y + 12}`}
      />
      <circle class="frame" cx={x} cy={y} r={radius} />
    </g>
  );
}
