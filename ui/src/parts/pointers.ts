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
    if (down.size === 2) {
      const still = [...down].find(([id]) => id !== e.pointerId)![1];
      touched().pinch([still, before], [still, now]);
    }
    down.set(e.pointerId, now);
    grip?.move(now, e);
  };
  const onUp = (e: PointerEvent) => {
    if (!down.delete(e.pointerId)) return;
    if (e.type === "pointercancel") grip?.cancel();
    else grip?.end();
    grip = null;
  };
  // where it can be had, a move is told as it comes and not only before the next frame
  const moves = "onpointerrawupdate" in globalThis ? "pointerrawupdate" : "pointermove";
  const listeners: [string, (e: PointerEvent) => void][] = [
    ["pointerdown", onDown],
    [moves, onMove],
    ["pointerup", onUp],
    ["pointercancel", onUp],
  ];
  for (const [name, f] of listeners) element.addEventListener(name, f as EventListener);
  return () => {
    for (const [name, f] of listeners) element.removeEventListener(name, f as EventListener);
  };
}
