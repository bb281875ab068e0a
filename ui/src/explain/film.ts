/** One repetition as a GIF or WebM, made in the browser. */

import { applyPalette, GIFEncoder, quantize } from "gifenc";
import type { Preview } from "../api.ts";
import { at } from "../drawing/ribbon.ts";
import type { Layer } from "../parts/figure/stage.ts";
import { travelAt } from "../state/travel.ts";
import type { Units } from "../units.ts";
import { words } from "../words.ts";
import { onCanvas, picture } from "./picture.ts";

const size = { width: 640, height: 480 };
const show: ReadonlySet<Layer> = new Set<Layer>(["ribbon", "loadArm", "contactArm", "forces", "names"]);
const mostFrames = 90;
const colours = 64;

/** still is the size of a picture that does not move, px. */
const stillSize = { width: 1280, height: 960 };

export interface FilmJob {
  preview: Preview;
  units: Units;
  progress: (share: number) => void;
  signal: AbortSignal;
}

/** Shot is one picture of the film and how long it stands, ms. */
interface Shot {
  position: number;
  still: number;
}

/** shots returns the pictures of one repetition; pictures that would be alike stand longer instead. */
export function shots(p: Preview): Shot[] {
  const { stroke, curve } = p;
  if (!stroke || !curve) return [];
  const whole = stroke.time.at(-1) ?? 0;
  const n = Math.min(mostFrames, Math.max(12, Math.round(whole * 15)));
  const still = (whole / n) * 1000;
  const out: Shot[] = [];
  for (let i = 0; i < n; i++) {
    const share = travelAt(stroke, (i / n) * whole) / (curve.travel.at(-1) || 1);
    const position = at(curve.travel, share);
    const last = out.at(-1);
    if (last?.position === position) last.still += still;
    else out.push({ position, still });
  }
  return out;
}

/** hardest returns the position of the greatest force. */
const hardest = (p: Preview): number => {
  const lift = (p.curve?.lift ?? []).map((f) => f ?? Number.NEGATIVE_INFINITY);
  return lift.indexOf(Math.max(...lift));
};

/** svg returns the stroke at its hardest place as a drawing. */
export const svg = (job: Pick<FilmJob, "preview" | "units">): Blob =>
  new Blob([picture(job.preview, hardest(job.preview), show, size, job.units)], { type: "image/svg+xml" });

/** png returns the stroke at its hardest place as a picture. */
export async function png(job: Pick<FilmJob, "preview" | "units">): Promise<Blob> {
  const canvas = canvasOf(false, stillSize);
  await onCanvas(picture(job.preview, hardest(job.preview), show, size, job.units), canvas);
  const made = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
  if (!made) throw new Error(words.explain.noPicture);
  return made;
}

/** canvasOf returns a canvas that is drawn on, and for a GIF read back, again and again. */
function canvasOf(willReadFrequently: boolean, { width, height } = size): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  canvas.getContext("2d", { willReadFrequently });
  return canvas;
}

/** gif returns an animated GIF of one repetition. */
export async function gif(job: FilmJob): Promise<Blob> {
  const canvas = canvasOf(true);
  const encoder = GIFEncoder();
  const all = shots(job.preview);
  let palette: number[][] | null = null;
  for (const [i, shot] of all.entries()) {
    job.signal.throwIfAborted();
    await onCanvas(picture(job.preview, shot.position, show, size, job.units), canvas);
    const { data } = canvas.getContext("2d")!.getImageData(0, 0, size.width, size.height);
    palette ??= quantize(data, colours);
    const pixels = applyPalette(data, palette);
    encoder.writeFrame(pixels, size.width, size.height, { palette: i === 0 ? palette : undefined, delay: shot.still });
    job.progress((i + 1) / all.length);
  }
  encoder.finish();
  return new Blob([encoder.bytes().buffer as ArrayBuffer], { type: "image/gif" });
}

/** canFilm reports whether this browser makes WebM films. */
export const canFilm = (): boolean =>
  typeof MediaRecorder !== "undefined" && MediaRecorder.isTypeSupported("video/webm");

/** webm returns a film of one repetition; it takes as long as the repetition. */
export async function webm(job: FilmJob): Promise<Blob> {
  const canvas = canvasOf(false);
  const all = shots(job.preview);
  const images = new Map<number, string>();
  for (const s of all) images.set(s.position, picture(job.preview, s.position, show, size, job.units));
  await onCanvas(images.get(all[0]!.position)!, canvas);
  const recorder = new MediaRecorder(canvas.captureStream(30), {
    mimeType: "video/webm",
    videoBitsPerSecond: 2_500_000,
  });
  const parts: Blob[] = [];
  recorder.ondataavailable = (e) => parts.push(e.data);
  const stopped = new Promise((done) => (recorder.onstop = done));
  recorder.start();
  try {
    for (const [i, shot] of all.entries()) {
      job.signal.throwIfAborted();
      const due = performance.now() + shot.still;
      await onCanvas(images.get(shot.position)!, canvas);
      await new Promise((done) => setTimeout(done, Math.max(0, due - performance.now())));
      job.progress((i + 1) / all.length);
    }
  } finally {
    recorder.stop();
  }
  await stopped;
  return new Blob(parts, { type: "video/webm" });
}
