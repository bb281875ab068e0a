/** The machine being looked at and what of it is stored: changes, one after the other, and readings. */

import { batch, signal } from "@preact/signals";
import type { Edit, ForceReading, Saved, Sheet } from "../api.ts";
import { ask, troubleOf } from "../server/client.ts";
import { words } from "../words.ts";
import { Asking } from "./asking.ts";

/** Conflicting is two texts of one sheet of which only one can stay. */
export interface Conflicting {
  yours: string;
  current: Sheet;
}

export class Bench extends Asking {
  readonly conflict = signal<Conflicting | null>(null);
  readonly saving = signal(false);
  readonly readings = signal<ForceReading[]>([]); // off a scale

  #writing: Promise<void> = Promise.resolve();
  #channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("steelyard") : null;

  constructor(id: string) {
    super(id);
    if (this.#channel) this.#channel.onmessage = (e) => this.#elsewhere(e.data);
    void this.open();
  }

  override close(): void {
    super.close();
    this.#channel?.close();
  }

  override async open(): Promise<void> {
    await super.open();
    if (!this.sheet.value) return;
    try {
      this.readings.value = (await ask("GET /api/sheets/{id}/readings", { path: { id: this.id } })).readings;
    } catch (err) {
      this.failed(err);
    }
  }

  /** reading returns a force in N read off a scale at a place of the travel in m, as the machine is set. */
  reading(travel: number, force: number): ForceReading {
    return { travel, force, plus: 0, settings: this.choices.value, note: "" };
  }

  /** weigh stores the forces read off a scale. */
  async weigh(readings: ForceReading[]): Promise<void> {
    try {
      const kept = await ask("PUT /api/sheets/{id}/readings", { path: { id: this.id }, in: { readings } });
      this.readings.value = kept.readings;
    } catch (err) {
      this.failed(err);
    }
  }

  /** keep stores the edits. What cannot be used is not stored. */
  keep(edits: Edit[]): void {
    this.#write((revision) =>
      ask("PATCH /api/sheets/{id}", { path: { id: this.id }, in: { revision, edits, look: this.look(true) } }),
    );
  }

  /** rewrite stores a whole text. */
  rewrite(text: string, from = this.sheet.value?.revision ?? 0): void {
    this.#write(() =>
      ask("PUT /api/sheets/{id}", { path: { id: this.id }, in: { revision: from, text, look: this.look(true) } }),
    );
  }

  undo(): void {
    this.#write((revision) =>
      ask("POST /api/sheets/{id}/undo", { path: { id: this.id }, in: { revision, look: this.look(true) } }),
    );
  }

  redo(): void {
    this.#write((revision) =>
      ask("POST /api/sheets/{id}/redo", { path: { id: this.id }, in: { revision, look: this.look(true) } }),
    );
  }

  /** mine ends a conflict by storing this side's text over the other's. */
  mine(): void {
    const c = this.conflict.value;
    this.conflict.value = null;
    if (c) this.rewrite(c.yours, c.current.revision);
  }

  /** theirs ends a conflict by taking the other side's text. */
  theirs(): void {
    this.conflict.value = null;
    void this.open();
  }

  /** #write lets one write follow the other, each from the revision the one before left. */
  #write(send: (revision: number) => Promise<Saved>): void {
    this.forgetQuestions();
    this.saving.value = true;
    this.#writing = this.#writing.then(async () => {
      try {
        this.#saved(await send(this.sheet.value?.revision ?? 0));
      } catch (err) {
        this.drop();
        this.failed(err);
        this.settle();
      } finally {
        this.saving.value = false;
      }
    });
  }

  #saved(saved: Saved): void {
    batch(() => {
      this.sheet.value = saved.sheet;
      this.notice.value = saved.merged;
      this.trouble.value = null;
      this.edits.value = [];
      if (saved.preview) this.settledAs(saved.preview);
    });
    if (!saved.preview) this.settle();
    this.#channel?.postMessage({ id: this.id, revision: saved.sheet.revision });
  }

  /** failed also tells a conflict, of which both texts are kept. */
  protected override failed(err: unknown): void {
    const problem = troubleOf(err);
    if (problem.code !== "conflict" || !problem.current) {
      super.failed(err);
      return;
    }
    batch(() => {
      this.conflict.value = { yours: problem.yours ?? "", current: problem.current! };
      this.sheet.value = problem.current!;
    });
  }

  /** #elsewhere hears that another page of this browser has stored a sheet. */
  #elsewhere(told: { id: string; revision: number }): void {
    if (told.id !== this.id || told.revision <= (this.sheet.value?.revision ?? 0)) return;
    if (this.edits.value.length || this.saving.value) return; // the write itself will find out
    this.notice.value = words.machine.changedElsewhere;
    void this.open();
  }
}
