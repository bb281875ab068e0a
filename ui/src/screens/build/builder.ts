/** Leads through building from a photo: what is answered, what the server makes of it, and the step that is on. */

import { signal } from "@preact/signals";
import type { Family, PhotoSide, Preview, Problem, Surveyed } from "../../api.ts";
import { ask, troubleOf } from "../../server/client.ts";
import { Latest } from "../../server/latest.ts";
import { words } from "../../words.ts";
import { type Answers, blank, buildOf, type Measure, surveyOf, untapped } from "./answers.ts";
import { put, usable } from "./build.tsx";
import { missing, type StepName, stepsOf } from "./taps.ts";
import { upload } from "./upload.ts";

const survey = (a: Answers): Promise<Surveyed> => ask("POST /api/survey", { in: surveyOf(a) });

/**
 * Builder measures what is tapped as it changes, so that errors and outlines
 * show at once. A step is only left once the server can use what was tapped in
 * it; what it refuses stays as it is, to be mended.
 */
export class Builder {
  readonly answers = signal<Answers>(null!);
  readonly step = signal<StepName>("scale");
  readonly measure = signal<Measure | null>(null);
  readonly sides = signal<PhotoSide[]>([]); // between which the nearer one is asked
  readonly preview = signal<Preview | null>(null);
  readonly trouble = signal<Problem | null>(null);
  readonly busy = signal(false);

  #latest = new Latest<Answers, Surveyed>(
    survey,
    (surveyed, answers) => (this.measure.value = { answers, surveyed }),
    () => (this.measure.value = null), // told on leaving the step, when it should be complete
  );

  constructor(readonly family: Family) {
    this.answers.value = blank(family, `${words.build.usual}: ${family.name}`);
  }

  get steps(): StepName[] {
    return stepsOf(this.family, this.sides.value);
  }

  change = (part: Partial<Answers>): void => {
    this.answers.value = { ...this.answers.value, ...part };
    if (this.step.value !== "values") this.#remeasure();
  };

  /** take begins with a photo, once it is stored; until then the one before stays, taps and all. */
  take = (file: File): Promise<void> =>
    this.#guarded(async () => {
      const photo = await upload(file);
      this.#latest.forget();
      this.answers.value = { ...this.answers.value, ...untapped(this.family), photo };
      this.step.value = "scale";
      this.measure.value = null;
    });

  turn = (by: 1 | -1): Promise<void> =>
    this.#guarded(async () => {
      const measure = by > 0 ? await this.#leave() : null;
      const to = this.steps[this.steps.indexOf(this.step.value) + by]!;
      if (measure && to === "done") await this.#look(measure);
      this.step.value = to;
    });

  /** keep puts the machine in the room, with the photo behind its drawing. */
  keep = (): Promise<void> =>
    this.#guarded(async () => {
      const answers = this.answers.value;
      const backdrop = { photo: answers.photo!.id, survey: surveyOf(answers) };
      await put(usable(this.preview.value!), (id) =>
        ask("PUT /api/sheets/{id}/backdrop", { path: { id }, in: backdrop }),
      );
    });

  forget(): void {
    this.#latest.forget();
  }

  #remeasure(): void {
    const a = this.answers.value;
    const complete = missing("scale", this.family, a) === 0 && missing("upright", this.family, a) === 0;
    if (a.photo && complete) this.#latest.ask(a);
  }

  /** #leave measures what was tapped, and finds out whether the nearer side has to be asked. */
  async #leave(): Promise<Measure> {
    const scaled = this.step.value === "scale";
    const answers = this.answers.value;
    const surveyed = await survey(scaled ? { ...answers, near: null } : answers);
    if (scaled) {
      this.sides.value = surveyed.sides;
      if (!surveyed.sides.length) this.answers.value = { ...this.answers.value, near: null };
    }
    this.measure.value = { answers, surveyed };
    return this.measure.value;
  }

  async #look(measure: Measure): Promise<void> {
    const build = buildOf(this.family, measure, words.build.measured);
    this.preview.value = await ask("POST /api/families/{id}", { path: { id: this.family.id }, in: build });
    usable(this.preview.value);
  }

  async #guarded(work: () => Promise<void>): Promise<void> {
    this.busy.value = true;
    try {
      await work();
      this.trouble.value = null;
    } catch (err) {
      this.trouble.value = troubleOf(err);
    } finally {
      this.busy.value = false;
    }
  }
}
