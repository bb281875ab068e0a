/**
 * Builds a machine from a photo, one step at a time. What is tapped is measured
 * by the server as it changes, so that the ± and the outlines found show at
 * once; a step is only left once the server can use what was tapped in it.
 */

import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import type { Family, PhotoSide, Preview, Problem, Surveyed } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { Latest } from "../../server/latest.ts";
import { words } from "../../words.ts";
import { type Answers, blank, buildOf, type Measure, surveyOf, untapped } from "./answers.ts";
import { put, usable } from "./build.tsx";
import { ChoosePhoto, PhotoButton } from "./choosephoto.tsx";
import { BuildPreview, NameField, ValueFields } from "./fields.tsx";
import { NearerStep } from "./nearer.tsx";
import { PhotoBoard } from "./photoboard.tsx";
import { CamStep, Errors, PointStep } from "./places.tsx";
import { ScaleStep } from "./scale.tsx";
import { boardFor, type Change, lastTaken, missing, type StepName, stepsOf } from "./taps.ts";
import { upload } from "./upload.ts";
import { UprightStep } from "./upright.tsx";

interface PhotoBuildProps {
  family: Family;
  how: ComponentChildren; // the other way to measure, offered until there is a photo
}

export function PhotoBuild({ family, how }: PhotoBuildProps) {
  const answers = useSignal<Answers>(blank(family, `${words.build.usual}: ${family.name}`));
  const step = useSignal<StepName>("scale");
  const measure = useSignal<Measure | null>(null);
  const sides = useSignal<PhotoSide[]>([]); // between which the nearer one is asked
  const preview = useSignal<Preview | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const busy = useSignal(false);
  const a = answers.value;
  const change: Change = (part) => (answers.value = { ...answers.value, ...part });

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
  const take = (file: File) =>
    guarded(async () => {
      change({ ...untapped(family), photo: await upload(file) });
      step.value = "scale";
      measure.value = null;
    });
  const look = async (m: Measure) => {
    preview.value = await ask("POST /api/families/{id}", {
      path: { id: family.id },
      in: buildOf(family, m, words.build.measured),
    });
    usable(preview.value);
  };
  const leave = async (): Promise<Measure> => {
    const tapped = answers.value;
    // which side was nearer only counts where the sizes leave it open
    const near = step.value === "scale" ? null : tapped.near;
    const surveyed = await survey({ ...tapped, near });
    if (step.value === "scale") {
      sides.value = surveyed.sides;
      if (!surveyed.sides.length) change({ near: null });
    }
    measure.value = { answers: answers.value, surveyed };
    return measure.value;
  };
  const turn = (by: 1 | -1) =>
    guarded(async () => {
      const measured = by > 0 ? await leave() : null;
      const steps = stepsOf(family, sides.value);
      const to = steps[steps.indexOf(step.value) + by]!;
      if (measured && to === "done") await look(measured);
      step.value = to;
    });
  const keep = () =>
    guarded(async () => {
      const { photo } = answers.value;
      await put(usable(preview.value!), (id) =>
        ask("PUT /api/sheets/{id}/backdrop", {
          path: { id },
          in: { photo: photo!.id, survey: surveyOf(answers.value) },
        }),
      );
    });

  const at = step.value;
  useEffect(() => document.getElementById("content")?.scrollTo(0, 0), [at]);
  useMeasured(family, at, a, measure);

  if (!a.photo)
    return (
      <>
        {how}
        <ChoosePhoto take={(file) => void take(file)} busy={busy.value} trouble={trouble.value} />
      </>
    );
  const back = lastTaken(at, a);
  return (
    <>
      <Progress steps={stepsOf(family, sides.value)} at={at} />
      <div class="build-grid">
        {at === "done" ? (
          <div>
            <BuildPreview preview={preview.value} />
          </div>
        ) : (
          <PhotoBoard key={at} photo={a.photo} {...boardFor(at, family, a, measure.value?.surveyed ?? null, change)} />
        )}
        <div class="guide">
          <Guide step={at} family={family} answers={a} change={change} measure={measure.value} sides={sides.value} />
          {at === "scale" && (
            <div class="row">
              <PhotoButton label={words.build.anotherPhoto} take={(file) => void take(file)} busy={busy.value} />
            </div>
          )}
          <div class="guide-end">
            {trouble.value && <TroubleNote problem={trouble.value} />}
            <div class="row">
              {at !== "scale" && (
                <button type="button" disabled={busy.value} onClick={() => void turn(-1)}>
                  {words.build.previous}
                </button>
              )}
              {at !== "near" && at !== "values" && at !== "done" && (
                <button type="button" disabled={!back} onClick={() => back && change(back)}>
                  {words.build.again}
                </button>
              )}
              {at === "done" ? (
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
                  disabled={busy.value || missing(at, family, a) > 0}
                  onClick={() => void turn(1)}
                >
                  {skips(at, a) ? words.build.skip : words.build.next}
                </button>
              )}
            </div>
          </div>
        </div>
      </div>
    </>
  );
}

const survey = (a: Answers): Promise<Surveyed> => ask("POST /api/survey", { in: surveyOf(a) });

/** useMeasured keeps the measure up with what is tapped; what cannot be measured yet is told on leaving the step. */
function useMeasured(family: Family, at: StepName, a: Answers, measure: { value: Measure | null }) {
  const latest = useMemo(
    () =>
      new Latest<Answers, Surveyed>(
        survey,
        (surveyed, answers) => (measure.value = { answers, surveyed }),
        () => (measure.value = null),
      ),
    [family.id],
  );
  useEffect(() => () => latest.forget(), []);
  const { photo, sizes, cropped, near, upright, plumb, level, mirror, points, cam } = a;
  useEffect(() => {
    if (photo && at !== "done" && missing("scale", family, a) === 0 && missing("upright", family, a) === 0)
      latest.ask(a);
  }, [at, photo, sizes, cropped, near, upright, plumb, level, mirror, points, cam]);
}

/** skips reports whether the step would be left without an answer. */
const skips = (at: StepName, a: Answers): boolean =>
  (at === "upright" && !a[a.upright].length) || (at === "cam" && !a.cam.length);

function Progress({ steps, at }: { steps: readonly StepName[]; at: StepName }) {
  return (
    <ol class="progress-steps">
      {steps.map((s) => (
        <li aria-current={s === at ? "step" : undefined} key={s}>
          {words.build.steps[s]}
        </li>
      ))}
    </ol>
  );
}

interface GuideProps {
  step: StepName;
  family: Family;
  answers: Answers;
  change: Change;
  measure: Measure | null;
  sides: readonly PhotoSide[];
}

function Guide({ step, family, answers: a, change, measure, sides }: GuideProps) {
  switch (step) {
    case "scale":
      return <ScaleStep answers={a} change={change} />;
    case "near":
      return <NearerStep sides={sides} answers={a} change={change} />;
    case "upright":
      return <UprightStep answers={a} change={change} />;
    case "points":
      return <PointStep family={family} answers={a} measure={measure} />;
    case "cam":
      return <CamStep family={family} answers={a} measure={measure} />;
    case "values":
      return (
        <>
          <NameField value={a.name} change={(name) => change({ name })} />
          <ValueFields asks={family.values} values={a.values} change={(values) => change({ values })} />
        </>
      );
    case "done":
      return measure && <Errors family={family} measure={measure} />;
  }
}
