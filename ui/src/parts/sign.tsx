/** A machine's sign: its load ribbon alone, thick where it is heavy, the ring at the start. */

import type { Sign } from "../api.ts";
import { around } from "../drawing/place.ts";
import { ceiling, fitWith, type Ribbon } from "../drawing/ribbon.ts";
import { RibbonShape } from "./figure/ribbon.tsx";

const side = 96; // px

export function SignPicture({ sign }: { sign: Sign }) {
  const force = sign.force.map((f) => f ?? Number.NaN);
  const third = Math.round((sign.path.length - 1) / 3);
  const ribbon: Ribbon = {
    base: sign.path,
    side: sign.normal,
    force,
    low: force,
    high: force,
    thirds: [third, 2 * third],
  };
  const box = around(sign.path);
  if (!box) return null;
  const full = ceiling(ribbon);
  const wide = 0.34 * side;
  const view = fitWith(box, ribbon, wide, full, { width: side, height: side }, 10);
  return (
    <svg class="sign" viewBox={`0 0 ${side} ${side}`} aria-hidden="true">
      <RibbonShape laid={{ ribbon, view, perNewton: wide / full, full }} hatch="" band={false} />
    </svg>
  );
}
