/** The machine being looked at: as it is stored, with what is being tried, and where in its travel it stands. */

import { batch, computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Ask, Choice, Edit, Frame, Look, Preview, Problem, Sheet, SheetProblem, Tempo } from "../api.ts";
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

/** Quick is a question asked while a finger moves. */
interface Quick {
  ask: Ask;
  since: number; // ms, as performance.now
  along?: () => void; // what is to change on the page together with the answer
  last?: true; // no careful question follows
}

/** Asking is a machine on the page. It stores nothing: see Bench. */
export class Asking {
  readonly sheet = signal<Sheet | null>(null);
  readonly settled = signal<Preview | null>(null); // as stored, with every pose
  readonly trial = signal<Preview | null>(null); // with what is being tried
  readonly edits = signal<Edit[]>([]); // being tried
  readonly problems = signal<SheetProblem[]>([]); // why the text or the trial cannot be used
  readonly trouble = signal<Problem | null>(null);
  readonly notice = signal("");
  readonly choices: ReadonlySignal<Choice[]>; // settings that differ from their default
  readonly share = signal(0); // of the travel
  readonly tempo = signal<Tempo>({ up: 2, top: 1, down: 3, bottom: 1 });

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

  #timer = 0;
  #line = new Line();
  #measured: Preview | null = null; // the latest with an error band
  #quick = new Latest<Quick, Preview>(
    (question) => this.#line.ask(question.ask),
    (answer, question) => this.#tried(answer, question),
    (err, question) => {
      question.along?.();
      this.failed(err);
    },
  );
  #careful = new Latest<Ask, Preview>(
    (question) => ask("POST /api/preview", { in: question }),
    (answer, question) => {
      if (question.edits === this.edits.value) this.#tried(answer);
    },
    (err) => this.failed(err),
  );
  #full = new Latest<Ask, Preview>(
    (question) => ask("POST /api/preview", { in: question }),
    (answer) => this.settledAs(answer),
    (err) => this.failed(err),
  );

  constructor(readonly id: string) {
    this.choices = settingsOf(id);
    this.#line.open();
  }

  /** close ends all that goes on. */
  close(): void {
    this.forgetQuestions();
    this.#line.close();
  }

  /** open reads the sheet as it is stored. */
  async open(): Promise<void> {
    try {
      this.sheet.value = await ask("GET /api/sheets/{id}", { path: { id: this.id } });
      this.settle();
    } catch (err) {
      this.failed(err);
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
    this.#hurry(since, along);
    this.#later(() =>
      this.#careful.ask({ sheet: this.id, edits, look: { ...this.look(false), noBand: false, ...who() } }),
    );
  }

  /** ready shows the machine as it is drawn while a finger moves, so that nothing is done for the first time at its first move. */
  ready(): void {
    this.#hurry();
  }

  /** trySheet shows what a whole text would do, and stores nothing. */
  trySheet(text: string): void {
    this.#quick.ask({
      ask: { text, look: { ...this.look(false), structure: true } },
      since: performance.now(),
      last: true,
    });
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
    this.#hurry();
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

  /** #hurry asks for the machine with what is being tried. */
  #hurry(since = performance.now(), along?: () => void): void {
    const question: Ask = { sheet: this.id, edits: this.edits.value, look: this.look(false) };
    this.#quick.ask({ ask: question, since, ...(along && { along }) });
  }

  /** #later does it when nothing has changed for a while. */
  #later(act: () => void): void {
    clearTimeout(this.#timer);
    this.#timer = window.setTimeout(act, settleAfter);
  }

  /** settledAs takes what the stored machine does. */
  protected settledAs(answer: Preview): void {
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
      // words that change sixty times a second cannot be read
      const words = quick && !quick.last ? (this.shown.value?.words ?? answer.words) : answer.words;
      if (answer.curve) this.trial.value = { ...answer, structure, band, words };
    });
    if (quick) painted(quick.since);
  }

  /** failed shows why there is no answer. */
  protected failed(err: unknown): void {
    const problem = troubleOf(err);
    if (problem.problems?.length) this.problems.value = problem.problems;
    else this.trouble.value = problem;
  }

  /** forgetQuestions drops what has been asked and not answered. */
  protected forgetQuestions(): void {
    clearTimeout(this.#timer);
    this.#quick.forget();
    this.#careful.forget();
    this.#full.forget();
  }
}
