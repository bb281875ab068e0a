/** A new machine: what it is like, how it is measured, and the answers. */

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Families, Family, Preview, Problem } from "../../api.ts";
import { BackLink } from "../../parts/backlink.tsx";
import { Choice } from "../../parts/choice.tsx";
import { TroubleNote } from "../../parts/notes.tsx";
import { ask, troubleOf } from "../../server/client.ts";
import { go, write } from "../../state/route.ts";
import { words } from "../../words.ts";
import { PhotoBuild } from "./photo.tsx";
import { TapeBuild } from "./tape.tsx";

const families = signal<Families | null>(null);
const trouble = signal<Problem | null>(null);
const how = signal<"photo" | "tape">("photo");

export function BuildScreen({ family: id }: { family: string }) {
  useEffect(() => {
    ask("GET /api/families")
      .then((f) => (families.value = f))
      .catch((err) => (trouble.value = troubleOf(err)));
  }, []);
  const family = families.value?.families.find((f) => f.id === id);
  return (
    <div class="build-screen">
      <div class="screen-head">
        {id && <BackLink to={{ screen: "build", family: "" }} label={words.build.previous} />}
        <h1>{family ? family.name : words.build.title}</h1>
      </div>
      {trouble.value && <TroubleNote problem={trouble.value} />}
      {!families.value && !trouble.value && <p class="faint">{words.loading}</p>}
      {families.value && !family && <Choose families={families.value.families} />}
      {family && <Measure family={family} key={family.id} />}
    </div>
  );
}

function Choose({ families: all }: { families: Family[] }) {
  const empty = async () => {
    try {
      const example = await ask("GET /api/example/{kind}", { path: { kind: "machine" } });
      await put(await example.text());
    } catch (err) {
      trouble.value = troubleOf(err);
    }
  };
  return (
    <>
      <p class="lead">{words.build.lead}</p>
      <ul class="families">
        {all.map((f) => (
          <li key={f.id}>
            <a href={write({ screen: "build", family: f.id })}>
              <strong>{f.name}</strong>
              <span class="faint">{f.about}</span>
            </a>
          </li>
        ))}
      </ul>
      <button type="button" onClick={() => void empty()}>
        {words.build.empty}
      </button>
    </>
  );
}

function Measure({ family }: { family: Family }) {
  const choice = (
    <Choice
      label={words.build.how}
      options={[
        { value: "photo", name: words.build.photo },
        { value: "tape", name: words.build.tape },
      ]}
      value={how.value}
      choose={(v) => (how.value = v as "photo" | "tape")}
    />
  );
  if (how.value === "photo") return <PhotoBuild family={family} how={choice} />;
  return (
    <>
      {choice}
      <TapeBuild family={family} />
    </>
  );
}

/** put stores a sheet, with the photo behind it if there is one, and leads to it. */
export async function put(text: string, backdrop?: (id: string) => Promise<unknown>): Promise<void> {
  const saved = await ask("POST /api/sheets", { in: { text } });
  if (backdrop) await backdrop(saved.sheet.id);
  go({ screen: "machine", id: saved.sheet.id });
}

/** usable returns the sheet of a preview, or throws what is wrong with it. */
export function usable(p: Preview): string {
  if (p.problems.length) throw new Error(p.problems.map((x) => x.message).join(" "));
  return p.text;
}
