/** The shell: which screen is shown, the way between them, and how the page looks. */

import { useEffect, useState } from "preact/hooks";
import type { Problem } from "./api.ts";
import { Beam } from "./parts/beam.tsx";
import { TroubleNote } from "./parts/notes.tsx";
import { BuildScreen } from "./screens/build/build.tsx";
import { CompareScreen } from "./screens/compare/compare.tsx";
import { ExplainScreen } from "./screens/explain.tsx";
import { MachineScreen } from "./screens/machine/machine.tsx";
import { PeopleScreen } from "./screens/people.tsx";
import { RoomScreen } from "./screens/room.tsx";
import { troubleOf } from "./server/client.ts";
import { type Route, route } from "./state/route.ts";
import { begin } from "./state/session.ts";
import { words } from "./words.ts";

export function App() {
  const [ready, setReady] = useState(false);
  const [trouble, setTrouble] = useState<Problem | null>(null);
  useEffect(() => {
    begin()
      .then(() => setReady(true))
      .catch((err) => setTrouble(troubleOf(err)));
  }, []);
  const now = route.value;
  return (
    <div class={`shell on-${now.screen}`}>
      <a class="skip" href="#content" onClick={toContent}>
        {words.skip}
      </a>
      <Beam route={now} />
      <main id="content" tabIndex={-1}>
        {trouble && <TroubleNote problem={trouble} />}
        {ready && <Screen route={now} />}
      </main>
    </div>
  );
}

/** toContent moves the focus without leaving the screen, whose address stands after the #. */
function toContent(e: Event): void {
  e.preventDefault();
  document.getElementById("content")?.focus();
}

function Screen({ route: r }: { route: Route }) {
  switch (r.screen) {
    case "room":
      return <RoomScreen />;
    case "machine":
      return <MachineScreen id={r.id} key={r.id} />;
    case "explain":
      return <ExplainScreen id={r.id} key={r.id} />;
    case "build":
      return <BuildScreen family={r.family} />;
    case "compare":
      return <CompareScreen ids={r.ids} />;
    case "people":
      return <PeopleScreen />;
  }
}
