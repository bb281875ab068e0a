/** Explains one stroke of a machine, and hands it out. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Explanation, Look, Problem } from "../api.ts";
import { canFilm, type FilmJob, gif, png, svg, webm } from "../explain/film.ts";
import { leaf } from "../explain/leaf.ts";
import { ExplainView } from "../explain/view.tsx";
import { BackLink } from "../parts/backlink.tsx";
import { TroubleNote } from "../parts/notes.tsx";
import { ask, troubleOf } from "../server/client.ts";
import { settingsOf } from "../state/settings.ts";
import { pounds, units } from "../state/taste.ts";
import { trainee, who } from "../state/trainee.ts";
import { percent } from "../units.ts";
import { words } from "../words.ts";

const positions = 61; // enough for a smooth stroke, and small enough to be sent

export function ExplainScreen({ id }: { id: string }) {
  const explanation = useSignal<Explanation | null>(null);
  const trouble = useSignal<Problem | null>(null);
  const settings = settingsOf(id).value;
  useEffect(() => {
    const look: Look = {
      settings,
      positions,
      frames: "all",
      imperial: pounds.value,
      ...who(),
      tempo: { up: 2, top: 0.5, down: 3, bottom: 0.5 },
    };
    ask("POST /api/explain", { in: { sheet: id, look } })
      .then((e) => {
        explanation.value = e;
        trouble.value = null;
      })
      .catch((err) => (trouble.value = troubleOf(err)));
  }, [id, settings, pounds.value, trainee.value]);
  const e = explanation.value;
  return (
    <div class="explain-screen">
      <div class="screen-head">
        <BackLink to={{ screen: "machine", id }} label={words.explain.previous} />
        <h1>{e ? words.explain.title(e.preview.name) : words.loading}</h1>
      </div>
      {trouble.value && <TroubleNote problem={trouble.value} />}
      {e && e.steps.length > 0 && <ExplainView explanation={e} units={units.value} />}
      {e && <Take id={id} explanation={e} />}
    </div>
  );
}

/** Take hands the explanation out, in the form that is wanted. */
function Take({ id, explanation: e }: { id: string; explanation: Explanation }) {
  const progress = useSignal<number | null>(null);
  const writing = useSignal(false);
  const trouble = useSignal<Problem | null>(null);
  const stop = useRef<AbortController | null>(null);
  useEffect(() => () => stop.current?.abort(), []);
  const guarded = async (make: (signal: AbortSignal) => Promise<void>) => {
    stop.current = new AbortController();
    trouble.value = null;
    try {
      await make(stop.current.signal);
    } catch (err) {
      if (!stop.current.signal.aborted) trouble.value = troubleOf(err);
    } finally {
      progress.value = null;
      writing.value = false;
    }
  };
  const shown = { preview: e.preview, units: units.value };
  const film = (make: (job: FilmJob) => Promise<Blob>, ending: string) =>
    guarded(async (signal) => {
      progress.value = 0;
      const job: FilmJob = { ...shown, progress: (p) => (progress.value = p), signal };
      save(await make(job), e.preview.name, ending);
    });
  const page = () =>
    guarded(async () => {
      const text = leaf(
        { explanation: e, imperial: pounds.value },
        await asset("leaflet.js"),
        await asset("leaflet.css"),
      );
      save(new Blob([text], { type: "text/html" }), e.preview.name, "html");
    });
  const report = (ext: string) =>
    guarded(async (signal) => {
      writing.value = true;
      const path = { id, ext };
      const made = await ask("GET /api/sheets/{id}/report/{ext}", { path, query: reportQuery(e), signal });
      save(made, e.preview.name, ext, words.explain.report);
    });
  const busy = progress.value !== null || writing.value;
  return (
    <section class="take">
      <h2>{words.explain.take}</h2>
      <div class="row">
        <button type="button" class="strong" onClick={() => void page()}>
          {words.explain.formats.html}
        </button>
        <button type="button" onClick={() => void guarded(async () => save(await png(shown), e.preview.name, "png"))}>
          {words.explain.formats.png}
        </button>
        <button type="button" disabled={busy} onClick={() => void film(gif, "gif")}>
          {words.explain.formats.gif}
        </button>
        {canFilm() && (
          <button type="button" disabled={busy} onClick={() => void film(webm, "webm")}>
            {words.explain.formats.webm}
          </button>
        )}
        <button type="button" onClick={() => void guarded(async () => save(svg(shown), e.preview.name, "svg"))}>
          {words.explain.formats.svg}
        </button>
        {(["pdf", "html"] as const).map((ext) => (
          <button type="button" disabled={busy} onClick={() => void report(ext)} key={ext}>
            {ext === "html" ? words.explain.formats.report : words.explain.formats.pdf}
          </button>
        ))}
      </div>
      <p class="faint small">{words.explain.htmlHint}</p>
      {writing.value && (
        <div class="row" role="status">
          <progress aria-label={words.explain.writing} />
          <span>{words.explain.writing}</span>
          <button type="button" onClick={() => stop.current?.abort()}>
            {words.cancel}
          </button>
        </div>
      )}
      {progress.value !== null && (
        <div class="row" role="status">
          <progress max={1} value={progress.value} aria-label={words.explain.film("")} />
          <span>{words.explain.film(percent(progress.value))}</span>
          <button type="button" onClick={() => stop.current?.abort()}>
            {words.cancel}
          </button>
        </div>
      )}
      {trouble.value && <TroubleNote problem={trouble.value} />}
      <Message text={e.message} />
    </section>
  );
}

function Message({ text }: { text: string }) {
  const area = useRef<HTMLTextAreaElement>(null);
  const said = useSignal("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      said.value = words.explain.copied;
    } catch {
      // no clipboard over plain http: mark it, so that the device can copy it
      area.current?.select();
      said.value = words.explain.copyByHand;
    }
  };
  return (
    <div class="message">
      <h3>{words.explain.message}</h3>
      <textarea ref={area} readOnly rows={9} value={text} aria-label={words.explain.message} />
      <div class="row">
        <button type="button" onClick={() => void copy()}>
          {words.explain.copy}
        </button>
        <span role="status">{said.value}</span>
      </div>
    </div>
  );
}

async function asset(name: string): Promise<string> {
  const answer = await fetch(new URL(name, document.baseURI));
  if (!answer.ok) throw new Error(words.trouble.status(answer.status));
  return answer.text();
}

/** reportQuery asks for a report of what is explained: these settings, units and person. */
function reportQuery(e: Explanation): Record<string, string | string[]> {
  const set = e.preview.settings.map((c) => `${c.setting}=${c.value}`);
  return { set, ...(pounds.value ? { units: "imperial" } : {}), ...who() };
}

/** fileName returns a name every system takes. */
export const fileName = (name: string, ending: string, kind = ""): string =>
  `${
    name
      .replace(/[^\p{L}\p{N}]+/gu, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 60) || "machine"
  }${kind && `-${kind}`}.${ending}`;

function save(file: Blob, name: string, ending: string, kind = ""): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = fileName(name, ending, kind);
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
