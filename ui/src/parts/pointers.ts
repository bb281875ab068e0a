/** Fingers, pens and the mouse on one element: one holds something, two pinch. */

import type { Place } from "../drawing/place.ts";

/** Grip is what one finger holds. */
export interface Grip {
  move(at: Place, e: PointerEvent): void;
  end(): void;
  cancel(): void; // put back what was held
}

export interface Touched {
  hold(at: Place, e: PointerEvent): Grip;
  pinch(from: [Place, Place], to: [Place, Place]): void;
}

/** fingers listens on the element, whose own or whose parent's touch-action must be none, and returns how to stop. */
export function fingers(element: Element, touched: () => Touched): () => void {
  const down = new Map<number, Place>();
  let grip: Grip | null = null;
  const where = (e: PointerEvent): Place => {
    const box = element.getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const onDown = (e: PointerEvent) => {
    if (e.button !== 0) return;
    element.setPointerCapture(e.pointerId);
    down.set(e.pointerId, where(e));
    if (down.size === 1) grip = touched().hold(where(e), e);
    else {
      grip?.cancel();
      grip = null;
    }
  };
  const onMove = (e: PointerEvent) => {
    const before = down.get(e.pointerId);
    if (!before) return;
    const now = where(e);
    if (now[0] === before[0] && now[1] === before[1]) return; // told twice
    if (down.size === 2) {
      const still = [...down].find(([id]) => id !== e.pointerId)![1];
      touched().pinch([still, before], [still, now]);
    }
    down.set(e.pointerId, now);
    grip?.move(now, e);
  };
  const onUp = (e: PointerEvent) => {
    if (e.type === "pointerup") onMove(e); // it may be let go at a place not told before
    if (!down.delete(e.pointerId)) return;
    if (e.type === "pointercancel") grip?.cancel();
    else grip?.end();
    grip = null;
  };
  const listeners: [string, (e: PointerEvent) => void][] = [
    ["pointerdown", onDown],
    ["pointerrawupdate", onMove], // where it can be had: as it comes, and not only before the next frame
    ["pointermove", onMove],
    ["pointerup", onUp],
    ["pointercancel", onUp],
  ];
  for (const [name, f] of listeners) element.addEventListener(name, f as EventListener);
  return () => {
    for (const [name, f] of listeners) element.removeEventListener(name, f as EventListener);
  };
}
