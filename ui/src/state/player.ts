/** Plays the stroke at its tempo. */

import { effect, signal } from "@preact/signals";
import type { Bench } from "./bench.ts";
import { travelAt } from "./travel.ts";

export class Player {
  readonly playing = signal(false);
  #frame = 0;
  #since = 0;

  constructor(private readonly bench: Bench) {
    this.stopWatching = effect(() => {
      if (!this.bench.settled.value?.stroke) this.pause();
    });
  }

  readonly stopWatching: () => void;

  toggle(): void {
    if (this.playing.value) this.pause();
    else this.play();
  }

  play(): void {
    if (!this.bench.settled.value?.stroke) return;
    this.playing.value = true;
    this.#since = performance.now();
    this.#next();
  }

  pause(): void {
    cancelAnimationFrame(this.#frame);
    this.playing.value = false;
  }

  close(): void {
    this.pause();
    this.stopWatching();
  }

  #next(): void {
    this.#frame = requestAnimationFrame((now) => {
      const { stroke, curve } = this.bench.settled.value ?? {};
      if (!this.playing.value || !stroke || !curve) return;
      this.bench.share.value = travelAt(stroke, Math.max(0, now - this.#since) / 1000) / (curve.travel.at(-1) || 1);
      this.#next();
    });
  }
}
