/**
 * The board: everything stored, for one person if one is given, since every answer replaces it. The person comes from
 * state/trainee.ts, which itself looks at the room.
 */

import { signal } from "@preact/signals";
import type { Problem, Room } from "../api.ts";
import { ask, troubleOf } from "../server/client.ts";

export const room = signal<Room | null>(null);
export const roomTrouble = signal<Problem | null>(null);

async function keeping(answer: Promise<Room>): Promise<boolean> {
  try {
    room.value = await answer;
    roomTrouble.value = null;
    return true;
  } catch (err) {
    roomTrouble.value = troubleOf(err);
    return false;
  }
}

const whom = (person: string): { query?: { person: string } } => (person ? { query: { person } } : {});

/** refresh reads the board anew. */
export const refresh = (person: string): Promise<boolean> => keeping(ask("GET /api/room", whom(person)));

/** furnish brings the demo room back, or takes it away. */
export const furnish = (present: boolean, person: string): Promise<boolean> =>
  keeping(ask("POST /api/demo", { in: { present }, ...whom(person) }));

/** remove takes a sheet off the board; it can be brought back. */
export const remove = (id: string, revision: number, person: string): Promise<boolean> =>
  keeping(
    ask("DELETE /api/sheets/{id}", {
      path: { id },
      query: { revision: String(revision), ...whom(person === id ? "" : person).query },
    }),
  );

/** recover brings a removed sheet back. */
export async function recover(id: string, person: string): Promise<void> {
  try {
    await ask("POST /api/sheets/{id}/recover", { path: { id } });
    await refresh(person);
  } catch (err) {
    roomTrouble.value = troubleOf(err);
  }
}

/** take reads an archive into the room. */
export const take = (archive: Blob, person: string): Promise<boolean> =>
  keeping(
    ask("POST /api/import", {
      in: archive.type ? archive : new Blob([archive], { type: "application/zip" }),
      ...whom(person),
    }),
  );
