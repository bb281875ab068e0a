/** The figure as an SVG file or pixels that stand alone, in light colours. */

import { h, render } from "preact";
import type { Preview } from "../api.ts";
import type { Size } from "../drawing/view.ts";
import { Figure } from "../parts/figure/figure.tsx";
import type { Layer } from "../parts/figure/stage.ts";
import drawingStyle from "../style/drawing.css?inline";
import themeStyle from "../style/theme.css?inline";
import type { Units } from "../units.ts";
import { stageFor } from "./view.tsx";

/** picture returns the figure at a position of its curve as the text of an SVG file. */
export function picture(p: Preview, position: number, show: ReadonlySet<Layer>, size: Size, units: Units): string {
  const stage = stageFor(p, position, size, units);
  if (!stage) return "";
  const box = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  render(h(Figure, { stage, show, id: "unsure", trail: p.frames }), box as unknown as Element);
  const inner = new XMLSerializer().serializeToString(box).replace(/^<svg[^>]*>|<\/svg>$/g, "");
  render(null, box as unknown as Element);
  const { width, height } = size;
  return `<svg xmlns="http://www.w3.org/2000/svg" data-theme="light" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><style>${themeStyle}${drawingStyle}</style><rect width="100%" height="100%" fill="#ffffff"/>${inner}</svg>`;
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
