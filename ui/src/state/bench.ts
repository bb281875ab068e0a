/** The machine being looked at: what is stored, what is tried, and where in its travel it stands. */

import { batch, computed, type ReadonlySignal, signal } from "@preact/signals";
import type {
  Ask,
  Choice,
  Edit,
  ForceReading,
  Frame,
  Look,
  Preview,
  Problem,
  Saved,
  Sheet,
  SheetProblem,
  Tempo,
} from "../api.ts";
import { bandAbout } from "../drawing/band.ts";
import { at } from "../drawing/ribbon.ts";
import { ask, troubleOf } from "../server/client.ts";
import { Latest } from "../server/latest.ts";
import { Line } from "../server/line.ts";
import { words } from "../words.ts";
import { painted } from "./painted.ts";
import { remember, settingsOf } from "./settings.ts";
import { pounds } from "./taste.ts";
import { who } from "./trainee.ts";

/** settleAfter is how long nothing must change before all poses are asked for, ms. */
const settleAfter = 120;

/** quickPositions is how many places of the travel are computed while a finger moves. */
const quickPositions = 41;

/** Conflicting is two texts of one sheet of which only one can stay. */
export interface Conflicting {
  yours: string;
  current: Sheet;
}

/** Quick is a question asked while a finger moves. */
interface Quick {
  ask: Ask;
  since: number; // ms, as performance.now
  along?: () => void; // what is to change on the page together with the answer
}

export class Bench {
  readonly sheet = signal<Sheet | null>(null);
  readonly settled = signal<Preview | null>(null); // as stored, with every pose
  readonly trial = signal<Preview | null>(null); // with what is being tried
  readonly edits = signal<Edit[]>([]); // being tried
  readonly problems = signal<SheetProblem[]>([]); // why the text or the trial cannot be used
  readonly trouble = signal<Problem | null>(null);
  readonly notice = signal("");
  readonly conflict = signal<Conflicting | null>(null);
  readonly choices: ReadonlySignal<Choice[]>; // settings that differ from their default
  readonly share = signal(0); // of the travel
  readonly tempo = signal<Tempo>({ up: 2, top: 1, down: 3, bottom: 1 });
  readonly saving = signal(false);
  readonly readings = signal<ForceReading[]>([]); // off a scale

  readonly trying = computed(() => this.edits.value.length > 0);
  readonly shown = computed(() => this.trial.value ?? this.settled.value);
  readonly name = computed(() => this.shown.value?.name || this.sheet.value?.name || "");
  readonly position = computed(() => {
    const curve = this.shown.value?.curve;
    return curve ? at(curve.travel, this.share.value) : 0;
  });
  readonly frame = computed<Frame | null>(() => {
    const preview = this.shown.value;
    if (!preview?.frames.length) return null;
    return preview.frames.find((f) => f.position === this.position.value) ?? preview.frames[0]!;
  });

  #writing: Promise<void> = Promise.resolve();
  #timer = 0;
  #channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("steelyard") : null;
  #line = new Line();
  #measured: Preview | null = null; // the latest with an error band
  #quick = new Latest<Quick, Preview>(
    (question) => this.#line.ask(question.ask),
    (answer, question) => this.#tried(answer, question),
    (err, question) => {
      question.along?.();
      this.#failed(err);
    },
  );
  #careful = new Latest<Ask, Preview>(
    (question) => ask("POST /api/preview", { in: question }),
    (answer, question) => {
      if (question.edits === this.edits.value) this.#tried(answer);
    },
    (err) => this.#failed(err),
  );
  #full = new Latest<Ask, Preview>(
    (question) => ask("POST /api/preview", { in: question }),
    (answer) => this.#settle(answer),
    (err) => this.#failed(err),
  );

  constructor(readonly id: string) {
    this.choices = settingsOf(id);
    if (this.#channel) this.#channel.onmessage = (e) => this.#elsewhere(e.data);
    this.#line.open();
    void this.open();
  }

  /** close ends all that goes on. */
  close(): void {
    clearTimeout(this.#timer);
    this.#quick.forget();
    this.#careful.forget();
    this.#full.forget();
    this.#line.close();
    this.#channel?.close();
  }

  /** open reads the sheet as it is stored. */
  async open(): Promise<void> {
    try {
      this.sheet.value = await ask("GET /api/sheets/{id}", { path: { id: this.id } });
      this.settle();
      this.readings.value = (await ask("GET /api/sheets/{id}/readings", { path: { id: this.id } })).readings;
    } catch (err) {
      this.#failed(err);
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
      this.#failed(err);
    }
  }

  /** look says how the machine is set: with every pose, or quickly with only the one it stands in and no band. */
  look(every: boolean): Look {
    return {
      settings: this.choices.value,
      frames: every ? "all" : "one",
      share: this.share.value,
      imperial: pounds.value,
      ...(every ? { structure: true, tempo: this.tempo.value, ...who() } : { noBand: true, positions: quickPositions }),
    };
  }

  /** settle asks for the stored machine with every pose. */
  settle(): void {
    clearTimeout(this.#timer);
    this.#full.ask({ sheet: this.id, look: this.look(true) });
  }

  /**
   * attempt shows what edits would do, and stores nothing. Since is when the
   * finger moved, for timing; along is done in one step with showing it.
   */
  attempt(edits: Edit[], since = performance.now(), along?: () => void): void {
    this.edits.value = edits;
    this.#quick.ask({ ask: { sheet: this.id, edits, look: this.look(false) }, since, ...(along && { along }) });
    this.#later(() =>
      this.#careful.ask({ sheet: this.id, edits, look: { ...this.look(false), noBand: false, ...who() } }),
    );
  }

  /** trySheet shows what a whole text would do, and stores nothing. */
  trySheet(text: string): void {
    this.#quick.ask({ ask: { text, look: { ...this.look(false), structure: true } }, since: performance.now() });
  }

  /** drop goes back to what is stored. */
  drop(): void {
    clearTimeout(this.#timer);
    this.#quick.forget();
    batch(() => {
      this.edits.value = [];
      this.trial.value = null;
      this.problems.value = this.settled.value?.problems ?? [];
    });
  }

  /** choose sets a setting, at once and with every pose soon after. */
  choose(setting: string, value: string): void {
    const usual = this.shown.value?.structure?.settings ?? this.settled.value?.structure?.settings;
    const isDefault = usual?.find((s) => s.name === setting)?.default === value;
    const rest = this.choices.value.filter((c) => c.setting !== setting);
    remember(this.id, isDefault ? rest : [...rest, { setting, value }]);
    this.#quick.ask({
      ask: { sheet: this.id, edits: this.edits.value, look: this.look(false) },
      since: performance.now(),
    });
    this.#later(() => this.settle());
  }

  /** usual sets everything as it usually stands. */
  usual(): void {
    remember(this.id, []);
    this.settle();
  }

  /** again asks anew, after units or tempo have changed. */
  again(): void {
    this.#later(() => this.settle());
  }

  /** keep stores the edits. What cannot be used is not stored. */
  keep(edits: Edit[]): void {
    this.#quick.forget();
    this.#careful.forget();
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

  /** #later does it when nothing has changed for a while. */
  #later(act: () => void): void {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(act, settleAfter);
  }

  /** #write lets one write follow the other, each from the revision the one before left. */
  #write(send: (revision: number) => Promise<Saved>): void {
    clearTimeout(this.#timer);
    this.#full.forget();
    this.saving.value = true;
    this.#writing = this.#writing.then(async () => {
      try {
        this.#saved(await send(this.sheet.value?.revision ?? 0));
      } catch (err) {
        this.drop();
        this.#failed(err);
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
      if (saved.preview) this.#settle(saved.preview);
    });
    if (!saved.preview) this.settle();
    this.#channel?.postMessage({ id: this.id, revision: saved.sheet.revision });
  }

  #settle(answer: Preview): void {
    if (answer.problems.some((p) => p.path === "settings") && this.choices.value.length) {
      this.notice.value = words.machine.settingsGone;
      this.usual();
      return;
    }
    batch(() => {
      this.problems.value = answer.problems;
      this.#measured = answer.band ? answer : null;
      if (answer.curve || !this.settled.value) this.settled.value = answer;
      else this.settled.value = { ...this.settled.value, text: answer.text, problems: answer.problems };
      if (!this.edits.value.length) this.trial.value = null;
    });
  }

  #tried(answer: Preview, quick?: Quick): void {
    batch(() => {
      quick?.along?.();
      if (answer.problems.length || this.problems.value.length) this.problems.value = answer.problems;
      // what has not been asked for is as it was
      const structure = answer.structure ?? this.settled.value?.structure ?? null;
      const measured = this.#measured;
      if (answer.band) this.#measured = answer;
      const band =
        answer.band ??
        (measured?.band && answer.curve ? bandAbout(measured.band, measured.curve!, answer.curve) : null);
      if (answer.curve) this.trial.value = { ...answer, structure, band };
    });
    if (quick) painted(quick.since);
  }

  #failed(err: unknown): void {
    const problem = troubleOf(err);
    batch(() => {
      if (problem.code === "conflict" && problem.current) {
        this.conflict.value = { yours: problem.yours ?? "", current: problem.current };
        this.sheet.value = problem.current;
      } else if (problem.problems?.length) this.problems.value = problem.problems;
      else this.trouble.value = problem;
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
