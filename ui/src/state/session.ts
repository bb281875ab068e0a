/** Trades the token in the address for a cookie, once, and takes it out of the address. */

import { ask } from "../server/client.ts";
import { correct } from "./route.ts";

/** begin signs this browser in if it came with a token. It throws a Trouble. */
export async function begin(): Promise<void> {
  const token = /^#(?:token=)?([0-9a-f]{32})$/.exec(location.hash)?.[1];
  if (!token) return;
  correct({ screen: "room" });
  await ask("POST /api/session", { in: { token } });
}
