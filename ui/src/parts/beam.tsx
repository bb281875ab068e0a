/** The beam: the way between the screens, with the poise hanging under where one is. */

import { type Route, write } from "../state/route.ts";
import { words } from "../words.ts";
import { TasteMenu } from "./taste.tsx";

const places: { at: Route; screens: Route["screen"][]; name: string }[] = [
  { at: { screen: "room" }, screens: ["room", "machine", "explain"], name: words.places.room },
  { at: { screen: "build", family: "" }, screens: ["build"], name: words.places.build },
  { at: { screen: "compare", ids: [] }, screens: ["compare"], name: words.places.compare },
  { at: { screen: "people" }, screens: ["people"], name: words.places.people },
];

export function Beam({ route }: { route: Route }) {
  return (
    <header class="beam">
      <span class="mark">
        <svg viewBox="0 0 32 32" width="28" height="28" aria-hidden="true">
          <path class="mark-beam" d="M2 11h28M8 4v7M22 11v5" />
          <circle class="mark-ring" cx="8" cy="5" r="3" />
          <path class="mark-poise" d="M17 16h10l3 12H14z" />
        </svg>
        <span class="mark-name">{words.app}</span>
      </span>
      <nav aria-label={words.places.label}>
        <ul>
          {places.map((p) => {
            const current = p.screens.includes(route.screen);
            return (
              <li key={p.name}>
                <a href={write(p.at)} aria-current={current ? "page" : undefined}>
                  {p.name}
                </a>
              </li>
            );
          })}
        </ul>
      </nav>
      <TasteMenu />
    </header>
  );
}
