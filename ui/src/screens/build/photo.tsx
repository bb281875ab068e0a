/** Builds a machine from a photo: scale, plumb line, points, cam, numbers, look. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Family, Pixel, Preview, Problem, Surveyed } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { units } from "../../state/taste.ts";
import { lengthText } from "../../units.ts";
import { words } from "../../words.ts";
import { type Answers, blank, buildOf, scaleNeeds, surveyOf } from "./answers.ts";
import { put, usable } from "./build.tsx";
import { BuildPreview, NameField, ValueFields } from "./fields.tsx";
import { type Mark, PhotoBoard, type PhotoBoardProps } from "./photoboard.tsx";
import { ScaleFields } from "./scale.tsx";
import { upload } from "./upload.ts";

type StepName = keyof typeof words.build.steps;

export function PhotoBuild({ family }: { family: Family }) {
  const answers = useSignal<Answers>(blank(family, `${words.build.usual}: ${family.name}`));
  const step = useSignal<StepName>("scale");
  const surveyed = useSignal<Surveyed | null>(null);
  const preview = useSignal<Preview | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const busy = useSignal(false);
  const a = answers.value;
  const change = (part: Partial<Answers>) => (answers.value = { ...answers.value, ...part });
  const steps: StepName[] = ["scale", "plumb", "points", ...(family.cam ? (["cam"] as const) : []), "values", "done"];

  const guarded = async (work: () => Promise<void>) => {
    busy.value = true;
    try {
      await work();
      trouble.value = null;
    } catch (err) {
      trouble.value = troubleOf(err);
    } finally {
      busy.value = false;
    }
  };
  const measure = async () => {
    surveyed.value = await ask("POST /api/survey", { in: surveyOf(answers.value) });
  };
  const look = async () => {
    await measure();
    const build = buildOf(family, answers.value, surveyed.value!, words.build.measured);
    preview.value = await ask("POST /api/families/{id}", { path: { id: family.id }, in: build });
    usable(preview.value);
  };
  const turn = (by: 1 | -1) =>
    guarded(async () => {
      const to = steps[steps.indexOf(step.value) + by]!;
      if (by > 0 && step.value === "scale") {
        await measure(); // a scale that cannot be is told at once
        if (surveyed.value?.ambiguous && !answers.value.near) return; // the next question is which side was nearer
      }
      if (to === "done") await look();
      step.value = to;
    });
  const keep = () =>
    guarded(async () => {
      const { photo } = answers.value;
      const survey = surveyOf(answers.value);
      await put(usable(preview.value!), (id) =>
        ask("PUT /api/sheets/{id}/backdrop", { path: { id }, in: { photo: photo!.id, survey } }),
      );
    });

  const at = step.value;
  useEffect(() => document.getElementById("content")?.scrollTo(0, 0), [at]);

  if (!a.photo) {
    const take = (file: File) =>
      guarded(async () => {
        change({ photo: await upload(file) });
      });
    return <ChoosePhoto take={take} busy={busy.value} trouble={trouble.value} />;
  }
  return (
    <>
      <ol class="progress-steps">
        {steps.map((s) => (
          <li aria-current={s === step.value ? "step" : undefined} key={s}>
            {words.build.steps[s]}
          </li>
        ))}
      </ol>
      <div class="build-grid">
        {step.value === "done" ? (
          <div>
            <BuildPreview preview={preview.value} />
          </div>
        ) : (
          <PhotoBoard
            photo={a.photo}
            {...boardFor(step.value, family, a, change)}
            {...(step.value === "scale" && surveyed.value?.rim.length ? { rim: surveyed.value.rim } : {})}
          />
        )}
        <div class="guide">
          <Guide step={step.value} family={family} answers={a} change={change} surveyed={surveyed.value} />
          {trouble.value && <TroubleNote problem={trouble.value} />}
          <div class="row">
            {step.value !== "scale" && (
              <button type="button" disabled={busy.value} onClick={() => void turn(-1)}>
                {words.build.previous}
              </button>
            )}
            {step.value === "done" ? (
              <button
                type="button"
                class="strong"
                disabled={busy.value || !preview.value?.curve}
                onClick={() => void keep()}
              >
                {words.build.put}
              </button>
            ) : (
              <button
                type="button"
                class="strong"
                disabled={busy.value || missing(step.value, family, a) > 0}
                onClick={() => void turn(1)}
              >
                {step.value === "plumb" && !a.plumb.length ? words.build.skip : words.build.next}
              </button>
            )}
          </div>
        </div>
      </div>
    </>
  );
}

interface ChoosePhotoProps {
  take: (file: File) => void;
  busy: boolean;
  trouble: Problem | null;
}

function ChoosePhoto({ take, busy, trouble }: ChoosePhotoProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div class="empty">
      <p>{words.build.photoHint}</p>
      {trouble && <TroubleNote problem={trouble} />}
      <button type="button" class="strong" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? words.build.reading : words.build.choosePhoto}
      </button>
      <input
        ref={input}
        class="unseen"
        type="file"
        accept="image/jpeg,image/png,image/*"
        tabIndex={-1}
        aria-label={words.build.choosePhoto}
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          e.currentTarget.value = "";
          if (file) take(file);
        }}
      />
    </div>
  );
}

/** missing returns how many taps the step still needs. */
export function missing(step: StepName, family: Family, a: Answers): number {
  switch (step) {
    case "scale":
      return Math.max(0, scaleNeeds(a.scale)[0] - a.scaleTaps.length);
    case "plumb":
      return a.plumb.length === 1 ? 1 : 0;
    case "points":
      return family.points.filter((p, i) => !p.optional && !a.points[i]).length;
    case "cam":
      return a.cam.length ? Math.max(0, (family.cam?.least ?? 0) - a.cam.length) : 0;
  }
  return 0;
}

type Change = (part: Partial<Answers>) => void;

/** listed lets taps fill and move a plain list. */
function listed(taps: Pixel[], most: number, name: (i: number) => string, set: (taps: Pixel[]) => void) {
  return {
    marks: taps.map((at, i): Mark => ({ at, name: name(i) })),
    more: taps.length < most,
    place: (at: Pixel) => set([...taps, at]),
    move: (i: number, at: Pixel) => set(taps.map((old, k) => (k === i ? at : old))),
  };
}

const mostCam = 60;

/** boardFor returns what taps on the photo mean in the step. */
function boardFor(step: StepName, family: Family, a: Answers, change: Change): Omit<PhotoBoardProps, "photo"> {
  const number = (i: number) => String(i + 1);
  switch (step) {
    case "scale": {
      const join = a.scale === "line" ? "line" : "round";
      return { ...listed(a.scaleTaps, scaleNeeds(a.scale)[1], number, (scaleTaps) => change({ scaleTaps })), join };
    }
    case "plumb":
      return { ...listed(a.plumb, 2, number, (plumb) => change({ plumb })), join: "line" };
    case "cam":
      return { ...listed(a.cam, mostCam, number, (cam) => change({ cam })), join: "round" };
  }
  const tapped = a.points.flatMap((at, i) => (at ? [{ i, at, name: family.points[i]!.name }] : []));
  const next = a.points.indexOf(null);
  const set = (i: number, at: Pixel) => change({ points: a.points.map((old, k) => (k === i ? at : old)) });
  return {
    marks: tapped,
    more: step === "points" && next >= 0,
    place: (at) => set(next, at),
    move: (k, at) => set(tapped[k]!.i, at),
  };
}

interface GuideProps {
  step: StepName;
  family: Family;
  answers: Answers;
  change: Change;
  surveyed: Surveyed | null;
}

function Guide({ step, family, answers: a, change, surveyed }: GuideProps) {
  switch (step) {
    case "scale":
      return <ScaleFields answers={a} change={change} ambiguous={surveyed?.ambiguous ?? false} />;
    case "plumb":
      return (
        <>
          <h2>{words.build.steps.plumb}</h2>
          <p>{words.build.plumbHint}</p>
          <label class="check">
            <input type="checkbox" checked={a.mirror} onChange={() => change({ mirror: !a.mirror })} />
            {words.build.mirror}
          </label>
          <TakeBack count={a.plumb.length} back={() => change({ plumb: a.plumb.slice(0, -1) })} />
          <ul>
            {surveyed?.words.map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </>
      );
    case "points":
      return <PointQuestions family={family} answers={a} change={change} />;
    case "cam":
      return (
        <>
          <h2>{family.cam!.ask}</h2>
          <p>{family.cam!.hint}</p>
          <p class="faint">{words.build.camHint(family.cam!.least)}</p>
          <p role="status">{words.build.camCount(a.cam.length)}</p>
          <TakeBack count={a.cam.length} back={() => change({ cam: a.cam.slice(0, -1) })} />
        </>
      );
    case "values":
      return (
        <>
          <NameField value={a.name} change={(name) => change({ name })} />
          <ValueFields asks={family.values} values={a.values} change={(values) => change({ values })} />
        </>
      );
    case "done":
      return <Errors family={family} answers={a} surveyed={surveyed} />;
  }
}

function TakeBack({ count, back }: { count: number; back: () => void }) {
  return (
    <div class="row">
      <button type="button" disabled={!count} onClick={back}>
        {words.build.again}
      </button>
    </div>
  );
}

function PointQuestions({ family, answers: a, change }: { family: Family; answers: Answers; change: Change }) {
  const next = a.points.indexOf(null);
  const asked = next >= 0 ? family.points[next] : undefined;
  const last = a.points.map((p) => p !== null).lastIndexOf(true);
  return (
    <>
      {asked && (
        <div role="status">
          <h2>{asked.ask}</h2>
          <p>
            {asked.hint} {asked.optional && <span class="faint">({words.build.optional})</span>}
          </p>
        </div>
      )}
      <ul class="asked">
        {family.points.map((p, i) => (
          <li key={p.name}>
            <span>{p.name}</span>
            <span class="faint">{a.points[i] ? "✓" : i === next ? words.build.tapNext : ""}</span>
          </li>
        ))}
      </ul>
      <TakeBack count={last + 1} back={() => change({ points: a.points.map((p, i) => (i === last ? null : p)) })} />
    </>
  );
}

/** Errors tells how far each measured point may be off. */
function Errors({ family, answers: a, surveyed }: { family: Family; answers: Answers; surveyed: Surveyed | null }) {
  let k = 0;
  const rows = family.points.flatMap((p, i) => {
    const place = a.points[i] ? surveyed?.places[k++] : undefined;
    return place ? [{ name: p.name, plus: Math.max(...place.plus) }] : [];
  });
  return (
    <>
      <h2>{words.build.steps.done}</h2>
      <ul class="asked">
        {rows.map((r) => (
          <li key={r.name}>
            <span>{r.name}</span>
            <span>{words.build.error(lengthText(units.value, r.plus))}</span>
          </li>
        ))}
      </ul>
      <ul>
        {surveyed?.words.map((w) => (
          <li key={w}>{w}</li>
        ))}
      </ul>
    </>
  );
}
