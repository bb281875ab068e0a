/** How large the machine and its ribbon are shown, and that it stays so while it is changed. */

import { useRef } from "preact/hooks";
import type { Preview } from "../../api.ts";
import { withBodies } from "../../drawing/bodybox.ts";
import { distance } from "../../drawing/place.ts";
import { ceiling, fitWith, ribbonOf, withPerson } from "../../drawing/ribbon.ts";
import { onScreen, type Size, type View } from "../../drawing/view.ts";

/** ribbonShare is the greatest width of the ribbon over the lesser side of its picture. */
const ribbonShare = 0.19;
const edge = 20; // px round the machine
const foot = 16; // px below it, for the scales

export interface Scales {
  view: View;
  full: number; // N, of a ribbon as wide as it goes
  perNewton: number; // px
}

/** scalesFor fits the preview into the size. */
export function scalesFor(p: Preview, size: Size): Scales | null {
  if (!p.curve || !p.drawing) return null;
  const ribbon = withPerson(ribbonOf(p.curve, "lifting", p.band), p.person);
  const full = ceiling(ribbon);
  const wide = ribbonShare * Math.min(size.width, size.height);
  const box = withBodies({ low: p.drawing.low, high: p.drawing.high }, p.frames);
  return {
    view: fitWith(box, ribbon, wide, full, { ...size, height: size.height - foot }, edge),
    full,
    perNewton: wide / full,
  };
}

/** useScales returns the scales of the stored machine. They change only when they have to. */
export function useScales(settled: Preview | null, size: Size | null): Scales | null {
  const kept = useRef<{ scales: Scales; size: Size; of: Preview } | null>(null);
  if (!settled || !size) return null;
  const before = kept.current;
  if (before && before.of === settled && before.size === size) return before.scales;
  const next = scalesFor(settled, size);
  if (!next) return before?.scales ?? null;
  const same = before && before.size.width === size.width && before.size.height === size.height;
  const scales = same && near(before.scales, next, size) ? before.scales : next;
  kept.current = { scales, size, of: settled };
  return scales;
}

/** near reports whether a picture may stay as it is though a new one would be fitted otherwise. */
function near(before: Scales, next: Scales, size: Size): boolean {
  const wider = next.full / before.full;
  const larger = next.view.scale / before.view.scale;
  const middle: [number, number] = [
    (size.width / 2 - next.view.origin[0]) / next.view.scale,
    (next.view.origin[1] - size.height / 2) / next.view.scale,
  ];
  const off = distance(onScreen(before.view, middle), [size.width / 2, size.height / 2]);
  return wider > 0.4 && wider < 1.5 && larger > 0.93 && larger < 1.25 && off < 0.08 * Math.min(size.width, size.height);
}
