/** Builds a machine from a photo, one step at a time: the photo to tap on, the question beside it, and the way on. */

import type { ComponentChildren } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import type { Family } from "../../api.ts";
import { TroubleNote } from "../../parts/notes.tsx";
import { words } from "../../words.ts";
import type { Answers } from "./answers.ts";
import { Builder } from "./builder.ts";
import { ChoosePhoto, PhotoButton } from "./choosephoto.tsx";
import { BuildPreview, NameField, ValueFields } from "./fields.tsx";
import { NearerStep } from "./nearer.tsx";
import { PhotoBoard } from "./photoboard.tsx";
import { CamStep, Errors, PointStep } from "./places.tsx";
import { ScaleStep } from "./scale.tsx";
import { boardFor, lastTaken, missing, type StepName } from "./taps.ts";
import { UprightStep } from "./upright.tsx";

interface PhotoBuildProps {
  family: Family;
  how: ComponentChildren; // the other way to measure, offered until there is a photo
}

export function PhotoBuild({ family, how }: PhotoBuildProps) {
  const builder = useMemo(() => new Builder(family), [family.id]);
  const at = builder.step.value;
  useEffect(() => () => builder.forget(), []);
  useEffect(() => document.getElementById("content")?.scrollTo(0, 0), [at]);

  const a = builder.answers.value;
  if (!a.photo)
    return (
      <>
        {how}
        <ChoosePhoto take={builder.take} busy={builder.busy.value} trouble={builder.trouble.value} />
      </>
    );
  const surveyed = builder.measure.value?.surveyed ?? null;
  return (
    <>
      <Progress steps={builder.steps} at={at} />
      <div class="build-grid">
        {at === "done" ? (
          <div>
            <BuildPreview preview={builder.preview.value} />
          </div>
        ) : (
          <PhotoBoard key={at} photo={a.photo} {...boardFor(at, family, a, surveyed, builder.change)} />
        )}
        <div class="guide">
          <Guide builder={builder} />
          <div class="guide-end">
            {builder.trouble.value && <TroubleNote problem={builder.trouble.value} />}
            <Ways builder={builder} />
          </div>
        </div>
      </div>
    </>
  );
}

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

/** Guide asks what the step asks. */
function Guide({ builder }: { builder: Builder }) {
  const { family, change } = builder;
  const a = builder.answers.value;
  const measure = builder.measure.value;
  switch (builder.step.value) {
    case "scale":
      return (
        <>
          <ScaleStep answers={a} change={change} />
          <div class="row">
            <PhotoButton label={words.build.anotherPhoto} take={builder.take} busy={builder.busy.value} />
          </div>
        </>
      );
    case "near":
      return <NearerStep sides={builder.sides.value} answers={a} change={change} />;
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

const tapped: readonly StepName[] = ["scale", "upright", "points", "cam"];

/** skips reports whether the step would be left without an answer. */
const skips = (at: StepName, a: Answers): boolean =>
  (at === "upright" && !a[a.upright].length) || (at === "cam" && !a.cam.length);

/** Ways leads back, takes a tap back, and leads on. */
function Ways({ builder }: { builder: Builder }) {
  const at = builder.step.value;
  const a = builder.answers.value;
  const busy = builder.busy.value;
  const back = lastTaken(at, a);
  return (
    <div class="row">
      {at !== "scale" && (
        <button type="button" disabled={busy} onClick={() => void builder.turn(-1)}>
          {words.build.previous}
        </button>
      )}
      {tapped.includes(at) && (
        <button type="button" disabled={!back} onClick={() => back && builder.change(back)}>
          {words.build.again}
        </button>
      )}
      {at === "done" ? (
        <button
          type="button"
          class="strong"
          disabled={busy || !builder.preview.value?.curve}
          onClick={() => void builder.keep()}
        >
          {words.build.put}
        </button>
      ) : (
        <button
          type="button"
          class="strong"
          disabled={busy || missing(at, builder.family, a) > 0}
          onClick={() => void builder.turn(1)}
        >
          {skips(at, a) ? words.build.skip : words.build.next}
        </button>
      )}
    </div>
  );
}
