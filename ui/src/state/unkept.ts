/**
 * A bench that loses no change the program could not store: it stays on the
 * drawing, is remembered in this browser, and goes out with the next try.
 */

import { batch, computed, signal } from "@preact/signals";
import type { Edit, Preview } from "../api.ts";
import { carried } from "../drawing/carried.ts";
import { ask } from "../server/client.ts";
import { Bench } from "./bench.ts";
import { kept } from "./taste.ts";

const all = kept<Record<string, Edit[]>>("unkept", {});
const none: Edit[] = [];

/** Draft is a sheet's text being written, and the revision it was begun from. */
export interface Draft {
  text: string;
  from: number;
}

export class SafeBench extends Bench {
  readonly unkept = computed(() => all.value[this.id] ?? none); // could not be stored
  readonly draft = signal<Draft | null>(null);

  #sending: Edit[] | null = null;
  #waiting: Edit[] = []; // until the write under way has ended
  #drawn: Preview | null = null; // with what is sent or could not be stored
  #stopWatching = this.saving.subscribe((saving) => {
    if (!saving) this.#ended();
  });

  override close(): void {
    this.#stopWatching();
    super.close();
  }

  override async open(): Promise<void> {
    await super.open();
    if (this.sheet.value && this.unkept.value.length) await this.#draw();
  }

  override attempt(edits: Edit[], since?: number, along?: () => void): void {
    super.attempt(this.#withUnkept(edits), since, along);
  }

  override keep(edits: Edit[]): void {
    this.#drawn = this.trial.value ?? this.#drawn;
    this.#waiting.push(...edits);
    this.#send();
  }

  override drop(): void {
    super.drop();
    const edits = this.#sending ?? this.unkept.value;
    if (!edits.length) return;
    batch(() => {
      this.edits.value = edits;
      this.trial.value = this.#drawn;
    });
  }

  /** #draw shows what could not be stored: computed if anybody answers, else with the points where they were left. */
  async #draw(): Promise<void> {
    const edits = this.unkept.value;
    const before = this.#drawn ?? this.settled.value;
    this.#drawn = before && carried(before, edits);
    this.drop();
    try {
      const look = { ...this.look(false), structure: true };
      const drawn = await ask("POST /api/preview", { in: { sheet: this.id, edits, look } });
      if (this.edits.value !== edits || !drawn.curve) return;
      this.#drawn = drawn;
      this.drop();
    } catch {
      // that nobody answers is told already
    }
  }

  override undo(): void {
    if (this.unkept.value.length) this.discard();
    else super.undo();
  }

  /** retry stores what could not be stored, or reads the machine anew. */
  retry(): void {
    this.trouble.value = null;
    if (this.unkept.value.length && this.sheet.value) this.#send();
    else void this.open();
  }

  /** discard gives up what could not be stored. */
  discard(): void {
    this.#remember(none);
    this.trouble.value = null;
    this.drop();
  }

  /** #withUnkept puts further edits behind those that could not be stored. */
  #withUnkept(edits: Edit[]): Edit[] {
    const before = this.unkept.value;
    return before.length ? [...before, ...edits.filter((e) => !before.includes(e))] : edits;
  }

  #send(): void {
    if (this.saving.value) return;
    const edits = this.#withUnkept(this.#waiting);
    this.#waiting = [];
    if (!edits.length) return;
    this.#sending = edits;
    this.trouble.value = null;
    super.keep(edits);
  }

  /** #ended sorts out what became of the edits that were sent. */
  #ended(): void {
    const sent = this.#sending;
    if (!sent) return;
    this.#sending = null;
    if (this.trouble.value) {
      this.#remember([...sent, ...this.#waiting]);
      this.#waiting = [];
      void this.#draw();
      return;
    }
    // stored, or refused for a reason that is told and that trying again would not change
    this.#remember(none);
    if (this.edits.value === sent) {
      batch(() => {
        this.edits.value = [];
        this.trial.value = null;
      });
    }
    this.#send();
  }

  #remember(edits: Edit[]): void {
    if (!edits.length && !this.unkept.value.length) return;
    const { [this.id]: _, ...rest } = all.value;
    all.value = edits.length ? { ...rest, [this.id]: edits } : rest;
  }
}
