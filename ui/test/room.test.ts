import { afterEach, expect, test, vi } from "vitest";
import { furnish, recover, refresh, remove, take } from "../src/state/room.ts";

/** asked collects what is asked of the server, which answers with an empty room. */
function listening(): string[] {
  const asked: string[] = [];
  vi.stubGlobal("fetch", async (path: string, init: RequestInit) => {
    asked.push(`${init.method} ${path}`);
    return new Response("{}", { headers: { "Content-Type": "application/json" } });
  });
  return asked;
}

afterEach(() => vi.unstubAllGlobals());

test("whatever changes the room brings it back for the same person", async () => {
  const asked = listening();
  await refresh("amy");
  await furnish(true, "amy");
  await remove("lever", 3, "amy");
  await recover("lever", "amy");
  await take(new Blob(["x"]), "amy");
  expect(asked).toEqual([
    "GET /api/room?person=amy",
    "POST /api/demo?person=amy",
    "DELETE /api/sheets/lever?revision=3&person=amy",
    "POST /api/sheets/lever/recover",
    "GET /api/room?person=amy",
    "POST /api/import?person=amy",
  ]);
});

test("nobody is not asked for, nor who is being removed", async () => {
  const asked = listening();
  await refresh("");
  await remove("amy", 1, "amy");
  expect(asked).toEqual(["GET /api/room", "DELETE /api/sheets/amy?revision=1"]);
});
