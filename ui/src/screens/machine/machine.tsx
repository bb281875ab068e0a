/** A machine: its drawing with the load ribbon, its curve, and what decides. */

import { signal } from "@preact/signals";
import { useEffect, useMemo, useState } from "preact/hooks";
import { BackLink } from "../../parts/backlink.tsx";
import { Choice } from "../../parts/choice.tsx";
import { Menu } from "../../parts/menu.tsx";
import { Notice, ProblemList } from "../../parts/notes.tsx";
import { PersonPicker } from "../../parts/personpicker.tsx";
import { Tabs } from "../../parts/tabs.tsx";
import { useWide } from "../../parts/wide.ts";
import type { Bench } from "../../state/bench.ts";
import { Player } from "../../state/player.ts";
import { remove } from "../../state/room.ts";
import { go, write } from "../../state/route.ts";
import { pounds } from "../../state/taste.ts";
import { trainee } from "../../state/trainee.ts";
import { SafeBench } from "../../state/unkept.ts";
import { words } from "../../words.ts";
import { Board, type Mode, mode } from "./board.tsx";
import { ConflictDialog } from "./conflict.tsx";
import { CurveView } from "./curve.tsx";
import { HistoryDialog } from "./history.tsx";
import { MeasurePane } from "./measure.tsx";
import { PersonPane } from "./person.tsx";
import { SetPane } from "./set.tsx";
import { SheetPane } from "./sheet.tsx";
import { StrokeBar } from "./stroke.tsx";
import { Trouble } from "./trouble.tsx";
import { WhyPane } from "./why.tsx";

type Tab = "curve" | "person" | "set" | "measure" | "why" | "sheet";
const tab = signal<Tab>("curve");

export function MachineScreen({ id }: { id: string }) {
  const bench = useMemo(() => new SafeBench(id), [id]);
  const player = useMemo(() => new Player(bench), [bench]);
  useEffect(
    () => () => {
      player.close();
      bench.close();
    },
    [bench, player],
  );
  useEffect(() => {
    const again = () => {
      if (bench.sheet.value) bench.again();
    };
    const stops = [pounds.subscribe(again), trainee.subscribe(again)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [bench]);
  return (
    <div class="machine-screen" onKeyDown={(e) => shortcut(e, bench)}>
      <Head bench={bench} />
      <Trouble bench={bench} />
      <div class="machine-left">
        <Mends bench={bench} />
        <Board bench={bench} />
        <StrokeBar bench={bench} player={player} />
      </div>
      <Right bench={bench} />
      {bench.conflict.value && <ConflictDialog bench={bench} conflict={bench.conflict.value} />}
    </div>
  );
}

/** shortcut undoes and redoes by the usual keys, but not while text is typed. */
function shortcut(e: KeyboardEvent, bench: Bench): void {
  if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== "z") return;
  if (e.target instanceof HTMLTextAreaElement || (e.target instanceof HTMLInputElement && e.target.type === "text"))
    return;
  e.preventDefault();
  if (e.shiftKey) bench.redo();
  else bench.undo();
}

const dots = (
  <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
    <path
      class="fill-icon"
      d="M12 4a2 2 0 1 1 0 4 2 2 0 0 1 0-4zm0 6a2 2 0 1 1 0 4 2 2 0 0 1 0-4zm0 6a2 2 0 1 1 0 4 2 2 0 0 1 0-4z"
    />
  </svg>
);

function Head({ bench }: { bench: Bench }) {
  const sheet = bench.sheet.value;
  const name = bench.name.value;
  const leave = async () => {
    if (!sheet || !confirm(words.machine.removeSure(name))) return;
    if (await remove(sheet.id, sheet.revision, trainee.value)) go({ screen: "room" });
  };
  const [past, setPast] = useState(false);
  const show = (button: HTMLElement) => {
    const menu = button.closest("details");
    menu?.querySelector("summary")?.focus(); // the dialog gives the focus back there
    if (menu) menu.open = false;
    setPast(true);
  };
  return (
    <div class="machine-head" data-saving={bench.saving.value ? "yes" : "no"}>
      <BackLink to={{ screen: "room" }} label={words.machine.back} />
      <h1>{name}</h1>
      <div class="machine-actions">
        <IconButton
          label={words.machine.undo}
          d="M8 5L4 9l4 4M4 9h9a6 6 0 0 1 0 12h-3"
          off={!sheet?.undo}
          act={() => bench.undo()}
        />
        <IconButton
          label={words.machine.redo}
          d="M16 5l4 4-4 4M20 9h-9a6 6 0 0 0 0 12h3"
          off={!sheet?.redo}
          act={() => bench.redo()}
        />
        <a class="button strong wide-only" href={write({ screen: "explain", id: bench.id })}>
          {words.machine.explain}
        </a>
        <Menu label={words.machine.more} icon={dots}>
          <a class="button narrow-only" href={write({ screen: "explain", id: bench.id })}>
            {words.machine.explain}
          </a>
          <a class="button" href={write({ screen: "compare", ids: [bench.id] })}>
            {words.machine.compare}
          </a>
          <button type="button" onClick={(e) => show(e.currentTarget)}>
            {words.history.open}
          </button>
          <button type="button" onClick={() => void leave()}>
            {words.machine.remove}
          </button>
        </Menu>
      </div>
      {past && <HistoryDialog bench={bench} close={() => setPast(false)} />}
    </div>
  );
}

function IconButton({ label, d, off, act }: { label: string; d: string; off: boolean; act: () => void }) {
  return (
    <button type="button" class="icon" aria-label={label} title={label} disabled={off} onClick={act}>
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        <path class="line-icon" d={d} />
      </svg>
    </button>
  );
}

/** Mends tells how the board is used, or what stands in the way. */
function Mends({ bench }: { bench: Bench }) {
  const problems = bench.problems.value;
  const trying = bench.trying.value;
  return (
    <div class="board-head">
      <Choice
        label={words.machine.modes.label}
        hideLabel
        options={[
          { value: "work", name: words.machine.modes.work },
          { value: "alter", name: words.machine.modes.alter },
        ]}
        value={mode.value}
        choose={(v) => (mode.value = v as Mode)}
      />
      {problems.length > 0 ? (
        <div class="board-says warn-text" role="alert">
          {trying && <strong>{words.machine.cannot}</strong>}
          <ProblemList problems={problems.slice(0, 1)} />
        </div>
      ) : bench.notice.value ? (
        <Notice text={bench.notice.value} />
      ) : (
        <p class="board-says faint wide-only">{words.machine.modeHints[mode.value]}</p>
      )}
      <PersonPicker />
    </div>
  );
}

function Right({ bench }: { bench: SafeBench }) {
  const wide = useWide();
  const all = words.machine.tabs;
  const tabs: { value: Tab; name: string }[] = [
    ...(wide ? [] : [{ value: "curve" as Tab, name: all.curve }]),
    ...(trainee.value ? [{ value: "person" as Tab, name: words.person.tab }] : []),
    { value: "set", name: all.set },
    { value: "measure", name: all.measure },
    { value: "why", name: all.why },
    { value: "sheet", name: all.sheet },
  ];
  const open = tabs.some((t) => t.value === tab.value) ? tab.value : tabs[0]!.value;
  return (
    <div class="machine-right">
      {wide && <Lead bench={bench} />}
      {wide && <CurveView bench={bench} />}
      <Tabs label={all.label} tabs={tabs} open={open} choose={(t) => (tab.value = t as Tab)}>
        {open === "curve" && (
          <div class="pane-body">
            <CurveView bench={bench} />
            <Lead bench={bench} />
            <a class="button strong narrow-only" href={write({ screen: "explain", id: bench.id })}>
              {words.machine.explainStroke}
            </a>
          </div>
        )}
        {open === "person" && <PersonPane bench={bench} />}
        {open === "set" && <SetPane bench={bench} />}
        {open === "measure" && <MeasurePane bench={bench} />}
        {open === "why" && (
          <>
            {!wide && <Lead bench={bench} />}
            <WhyPane bench={bench} />
          </>
        )}
        {open === "sheet" && <SheetPane bench={bench} />}
      </Tabs>
    </div>
  );
}

function Lead({ bench }: { bench: Bench }) {
  return <p class="verdict">{bench.shown.value?.words[0]}</p>;
}
