/** The figure as an SVG file or pixels that stand alone, in light colours. */

import { h, render } from "preact";
import type { Preview } from "../api.ts";
import type { Size } from "../drawing/view.ts";
import { Figure } from "../parts/figure/figure.tsx";
import type { Layer } from "../parts/figure/stage.ts";
import drawingStyle from "../style/drawing.css?inline";
import themeStyle from "../style/theme.css?inline";
import type { Units } from "../units.ts";
import { bodyOf, stageFor } from "./view.tsx";

/** plain returns the drawing's styles with the colours of paper put in, for drawing programs that know no variables. */
export function plain(theme: string, drawing: string): string {
  const light = new Map<string, string>();
  const first = theme.slice(0, theme.indexOf("}")); // the first rule is the light one
  for (const [, name, value] of first.matchAll(/(--[\w-]+):\s*([^;}]+)/g)) light.set(name!, value!.trim());
  return drawing.replace(/var\((--[\w-]+)\)/g, (all, name) => light.get(name) ?? all);
}

const style = `${plain(themeStyle, drawingStyle)}text{font-family:system-ui,"Segoe UI",Roboto,"Noto Sans","DejaVu Sans",sans-serif}`;

/** picture returns the figure at a position of its curve as the text of an SVG file. */
export function picture(p: Preview, position: number, show: ReadonlySet<Layer>, size: Size, units: Units): string {
  const stage = stageFor(p, position, size, units);
  if (!stage) return "";
  const box = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  render(h(Figure, { stage, show, id: "unsure", trail: p.frames, ...bodyOf(stage) }), box as unknown as Element);
  const inner = new XMLSerializer().serializeToString(box).replace(/^<svg[^>]*>|<\/svg>$/g, "");
  render(null, box as unknown as Element);
  const { width, height } = size;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><style>${style}</style><rect width="100%" height="100%" fill="#ffffff"/>${inner}</svg>`;
}

/** painted draws an SVG text on the canvas. */
export async function onCanvas(svg: string, canvas: HTMLCanvasElement): Promise<void> {
  const image = new Image();
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    image.src = address;
    await image.decode();
    canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  } finally {
    URL.revokeObjectURL(address);
  }
}
