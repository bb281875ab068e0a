/** What every part of a figure needs to draw itself. */

import type { Drawing, Frame } from "../../api.ts";
import { moved, type Place } from "../../drawing/place.ts";
import type { Laid } from "../../drawing/ribbon.ts";
import { onScreen, type Size, type View } from "../../drawing/view.ts";
import type { Units } from "../../units.ts";

export interface Stage {
  drawing: Drawing;
  frame: Frame;
  laid: Laid;
  view: View;
  size: Size;
  units: Units;
}

/** screen returns a mover of places on the link, at the measured pose in m, to the screen. */
export function screen(s: Stage, link: number): (p: Place) => Place {
  const pose = s.frame.poses[link];
  const move = pose ? moved(pose) : (p: Place) => p;
  return (p) => onScreen(s.view, move(p));
}

/** Layers that can be shown or not. */
export type Layer =
  | "ribbon"
  | "arms" // of load and contact
  | "loadArm"
  | "contactArm"
  | "rope"
  | "gravity"
  | "forces"
  | "names"
  | "band"
  | "friction"
  | "axis"
  | "travels"
  | "ghost"; // both ends of the travel, faintly
