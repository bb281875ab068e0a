/** Requests to the server, typed by the list of routes. */

import type { Problem, Progress, Routes } from "../api.ts";
import { words } from "../words.ts";

type Key = keyof Routes;

/** Options of a route: nothing may be left out that it needs. */
interface Options<K extends Key> {
  path?: Routes[K]["path"];
  query?: Record<string, string | string[]>;
  in?: Routes[K]["in"];
  signal?: AbortSignal;
}

/** Trouble is what the server, or the way to it, had against a request. */
export class Trouble extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

/** troubleOf returns any failure as a problem to be shown. */
export function troubleOf(err: unknown): Problem {
  if (err instanceof Trouble) return err.problem;
  return { code: "internal", message: err instanceof Error ? err.message : String(err) };
}

/** addressOf returns where a route is asked. */
export function addressOf(route: Key, path: Record<string, string> = {}, query: Options<Key>["query"] = {}): string {
  const place = route
    .slice(route.indexOf(" ") + 1)
    .replace(/\{(\w+)\}/g, (_, name) => encodeURIComponent(path[name] ?? ""));
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    for (const one of Array.isArray(value) ? value : [value]) search.append(name, one);
  }
  return search.size ? `${place}?${search}` : place;
}

async function send<K extends Key>(route: K, o: Options<K>): Promise<Response> {
  const raw = o.in instanceof Blob;
  const init: RequestInit = {
    method: route.slice(0, route.indexOf(" ")),
    signal: o.signal ?? null,
    credentials: "same-origin",
  };
  if (o.in !== undefined) {
    init.body = raw ? (o.in as Blob) : JSON.stringify(o.in);
    init.headers = { "Content-Type": raw ? (o.in as Blob).type : "application/json" };
  }
  let answer: Response;
  try {
    answer = await fetch(addressOf(route, o.path as Record<string, string>, o.query), init);
  } catch (err) {
    if (o.signal?.aborted) throw err;
    throw new Trouble({ code: "internal", message: words.trouble.unreachable });
  }
  if (!answer.ok) throw new Trouble(await problemIn(answer));
  return answer;
}

async function problemIn(answer: Response): Promise<Problem> {
  try {
    const problem = (await answer.json()) as Problem;
    if (problem.message) return problem;
  } catch {
    // not ours: fall through
  }
  return { code: "internal", message: words.trouble.status(answer.status) };
}

/** ask sends a request and returns the answer. It throws a Trouble. */
export async function ask<K extends Key>(route: K, o: Options<K> = {}): Promise<Routes[K]["out"]> {
  const answer = await send(route, o);
  if (answer.status === 204) return undefined as Routes[K]["out"];
  const kind = answer.headers.get("Content-Type") ?? "";
  return (kind.startsWith("application/json") ? await answer.json() : await answer.blob()) as Routes[K]["out"];
}

/** watch sends a request that is answered by events, tells of progress and returns the last answer. */
export async function watch<K extends Key>(
  route: K,
  o: Options<K>,
  progress: (p: Progress) => void,
): Promise<Routes[K]["out"]> {
  const answer = await send(route, o);
  const reader = answer.body!.pipeThrough(new TextDecoderStream()).getReader();
  let text = "";
  for (;;) {
    const { value, done } = await reader.read();
    if (done) throw new Trouble({ code: "internal", message: words.trouble.unreachable });
    text += value;
    for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
      const [name, data] = event(text.slice(0, end));
      text = text.slice(end + 2);
      if (name === "progress") progress(data as Progress);
      if (name === "failed") throw new Trouble(data as Problem);
      if (name === "done") {
        void reader.cancel();
        return data as Routes[K]["out"];
      }
    }
  }
}

/** event returns name and data of one server-sent event. */
export function event(block: string): [string, unknown] {
  let name = "message";
  let data = "";
  for (const line of block.split("\n")) {
    if (line.startsWith("event:")) name = line.slice(6).trim();
    if (line.startsWith("data:")) data += line.slice(5);
  }
  return [name, data ? JSON.parse(data) : null];
}
