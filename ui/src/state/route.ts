/** The place in the page, told by the address after #. */

import { signal } from "@preact/signals";

export type Route =
  | { screen: "room" }
  | { screen: "machine"; id: string }
  | { screen: "explain"; id: string }
  | { screen: "build"; family: string }
  | { screen: "compare"; ids: string[] }
  | { screen: "people" };

/** read returns the place an address names; the room for one that names none. */
export function read(hash: string): Route {
  const [screen, ...rest] = hash.replace(/^#\/?/, "").split("/").map(decoded);
  switch (screen) {
    case "machine":
    case "explain":
      return rest[0] ? { screen, id: rest[0] } : { screen: "room" };
    case "build":
      return { screen, family: rest[0] ?? "" };
    case "compare":
      return { screen, ids: rest.filter(Boolean).slice(0, 6) };
    case "people":
      return { screen };
  }
  return { screen: "room" };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** write returns the address of a place. */
export function write(r: Route): string {
  const parts: string[] = [r.screen];
  if ("id" in r) parts.push(r.id);
  if ("family" in r && r.family) parts.push(r.family);
  if ("ids" in r) parts.push(...r.ids);
  return `#/${parts.map(encodeURIComponent).join("/")}`;
}

export const route = signal<Route>(read(location.hash));

addEventListener("hashchange", () => {
  route.value = read(location.hash);
});

/** go leads to a place. */
export function go(r: Route): void {
  location.hash = write(r);
}

/** correct replaces the address without a step to go back to. */
export function correct(r: Route): void {
  history.replaceState(null, "", write(r));
  route.value = r;
}
