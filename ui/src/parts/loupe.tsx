/** A round glass beside the finger, with what the finger hides, magnified. */

import type { ComponentChildren } from "preact";
import type { Place } from "../drawing/place.ts";
import type { Size, View } from "../drawing/view.ts";

const radius = 52; // px
const power = 2;
const above = 96; // px from finger to the loupe's middle

/** glassFor returns the middle of the glass for a finger at the place, px: above it, or below where there is no room. */
export function glassFor(at: Place, size: Size): Place {
  const y = at[1] > above + radius ? at[1] - above : at[1] + above;
  return [Math.min(size.width - radius - 2, Math.max(radius + 2, at[0])), y];
}

/** nearer returns the view as the glass shows it, with the place under the finger in its middle. */
export function nearer(v: View, at: Place, glass: Place): View {
  return {
    scale: v.scale * power,
    origin: [glass[0] + power * (v.origin[0] - at[0]), glass[1] + power * (v.origin[1] - at[1])],
  };
}

export function Loupe({ glass: [x, y], children }: { glass: Place; children: ComponentChildren }) {
  return (
    <g class="loupe" aria-hidden="true">
      <clipPath id="loupe-glass">
        <circle cx={x} cy={y} r={radius} />
      </clipPath>
      <circle class="glass" cx={x} cy={y} r={radius} />
      <g clip-path="url(#loupe-glass)">{children}</g>
      <path
        class="cross"
        d={`M${x - 12} ${y}H${x - 3}M${x + 3} ${y}H${x + 12}M${x} ${y - 12}V${y - 3}M${x} ${y + 3}V${y + 12}`}
      />
      <circle class="frame" cx={x} cy={y} r={radius} />
    </g>
  );
}

/** Magnified shows a part of the page, by its id, as the glass does. The browser makes it anew whenever that part changes. */
export function Magnified({ of, at, glass: [x, y] }: { of: string; at: Place; glass: Place }) {
  return <use href={`#${of}`} transform={`translate(${x - power * at[0]} ${y - power * at[1]}) scale(${power})`} />;
}
