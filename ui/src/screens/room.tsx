/** The room: a board of machines, each by its sign. */

import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Fit, MachineCard, Room } from "../api.ts";
import { Choice } from "../parts/choice.tsx";
import { sentence, TroubleNote } from "../parts/notes.tsx";
import { PersonPicker } from "../parts/personpicker.tsx";
import { SignPicture } from "../parts/sign.tsx";
import { addressOf } from "../server/client.ts";
import { matches, musclesOf, type Order, sorted } from "../state/order.ts";
import { furnish, recover, refresh, room, roomTrouble, take } from "../state/room.ts";
import { write } from "../state/route.ts";
import { kept, units } from "../state/taste.ts";
import { trainee } from "../state/trainee.ts";
import { force, percent } from "../units.ts";
import { words } from "../words.ts";

const order = kept<Order>("order", "name");
const wanted = signal("");
const muscle = signal("");
const picked = signal<string[]>([]);
const most = 6; // machines to be compared

const orders = Object.entries(words.room.sorts).map(([value, name]) => ({ value, name }));

export function RoomScreen() {
  useEffect(() => void refresh(trainee.value), [trainee.value]);
  const now = room.value;
  return (
    <div class="room-screen">
      <div class="screen-head">
        <h1>{words.room.title}</h1>
        {now && now.machines.length > 0 && (
          <a class="button strong" href={write({ screen: "build", family: "" })}>
            {words.room.add}
          </a>
        )}
      </div>
      {roomTrouble.value && <TroubleNote problem={roomTrouble.value} retry={() => void refresh(trainee.value)} />}
      {!now && !roomTrouble.value && <p class="faint">{words.loading}</p>}
      {now && (now.machines.length ? <Board room={now} /> : <Empty />)}
      {now && <More room={now} />}
    </div>
  );
}

function Empty() {
  return (
    <div class="empty">
      <h2>{words.room.emptyTitle}</h2>
      <p>{words.room.empty}</p>
      <div class="row">
        <a class="button strong" href={write({ screen: "build", family: "" })}>
          {words.room.add}
        </a>
        <button type="button" onClick={() => void furnish(true, trainee.value)}>
          {words.room.demoIn}
        </button>
      </div>
    </div>
  );
}

function Board({ room: r }: { room: Room }) {
  const shown = sorted(
    r.machines.filter((m) => matches(m, wanted.value) && (!muscle.value || m.muscles.includes(muscle.value))),
    trainee.value || order.value !== "fit" ? order.value : "name",
  );
  const chosen = picked.value.filter((id) => r.machines.some((m) => m.id === id));
  return (
    <>
      <p class="lead">{words.room.lead}</p>
      <div class="board-tools">
        <label class="find">
          <span>{words.room.find}</span>
          <input
            type="search"
            placeholder={words.room.findHint}
            value={wanted.value}
            onInput={(e) => (wanted.value = e.currentTarget.value)}
          />
        </label>
        <Choice
          label={words.room.sort}
          options={trainee.value ? [...orders, { value: "fit", name: words.room.sortFit }] : orders}
          value={order.value}
          choose={(v) => (order.value = v as Order)}
        />
        <div class="pickers">
          <label class="muscle-picker">
            <span>{words.room.muscle}</span>
            <select value={muscle.value} onChange={(e) => (muscle.value = e.currentTarget.value)}>
              <option value="">{words.room.anyMuscle}</option>
              {musclesOf(r.machines).map((m) => (
                <option value={m} key={m}>
                  {m}
                </option>
              ))}
            </select>
          </label>
          <PersonPicker />
        </div>
      </div>
      <p class="faint" role="status">
        {shown.length ? words.room.count(shown.length) : words.room.none}
      </p>
      <ul class="board">
        {shown.map((m) => (
          <Card machine={m} chosen={chosen} key={m.id} />
        ))}
      </ul>
      {chosen.length > 0 && (
        <div class="picked">
          <a class="button strong" href={write({ screen: "compare", ids: chosen })}>
            {words.room.compare(chosen.length)}
          </a>
          {chosen.length >= most && <p class="small">{words.room.full}</p>}
        </div>
      )}
    </>
  );
}

function Card({ machine: m, chosen }: { machine: MachineCard; chosen: string[] }) {
  const on = chosen.includes(m.id);
  const toggle = () => {
    picked.value = on ? chosen.filter((id) => id !== m.id) : [...chosen, m.id];
  };
  return (
    <li class="card">
      <a href={write({ screen: "machine", id: m.id })}>
        <div class="card-sign">{m.sign ? <SignPicture sign={m.sign} /> : <span class="no-sign">?</span>}</div>
        <div class="card-words">
          <strong>{m.name}</strong>
          <span class="loads">{m.sign ? words.room.loads(m.loads) : words.room.untested}</span>
          <span class="faint">{m.sign ? words.room.upTo(force(units.value, m.sign.peak)) : sentence(m.trouble)}</span>
          {m.fit && <FitLines fit={m.fit} />}
        </div>
      </a>
      <label class="pick" title={words.room.pick(m.name)}>
        <input
          type="checkbox"
          checked={on}
          disabled={!on && (chosen.length >= most || !m.sign)}
          onChange={toggle}
          aria-label={words.room.pick(m.name)}
        />
      </label>
    </li>
  );
}

/** FitLines says how the machine suits the person. */
function FitLines({ fit }: { fit: Fit }) {
  if (fit.trouble) return <span class="faint small fit-trouble">{sentence(fit.trouble)}</span>;
  const share = fit.reached * fit.inRange;
  return (
    <span class="fit-lines small">
      {fit.effort !== null && <span>{words.person.fit(percent(fit.effort), fit.limiting)}</span>}
      {share < 0.995 && <span class="warn-text">{words.person.reach(percent(share))}</span>}
    </span>
  );
}

function More({ room: r }: { room: Room }) {
  const file = useRef<HTMLInputElement>(null);
  return (
    <details class="more">
      <summary>{words.room.more}</summary>
      <div class="row">
        <a class="button" href={addressOf("GET /api/export.zip")} download="steelyard.zip">
          {words.room.export}
        </a>
        <button type="button" onClick={() => file.current?.click()}>
          {words.room.import}
        </button>
        <input
          ref={file}
          class="unseen"
          type="file"
          accept=".zip,application/zip"
          tabIndex={-1}
          aria-label={words.room.import}
          onChange={(e) => {
            const chosen = e.currentTarget.files?.[0];
            e.currentTarget.value = "";
            if (chosen) void take(chosen, trainee.value);
          }}
        />
        <button type="button" onClick={() => void furnish(!r.demo, trainee.value)}>
          {r.demo ? words.room.demoOut : words.room.demoIn}
        </button>
      </div>
      {r.removed.length > 0 && (
        <>
          <h2>{words.room.removed}</h2>
          <ul class="plain-list">
            {r.removed.map((s) => (
              <li key={s.id}>
                <span>{s.name}</span>
                <button
                  type="button"
                  onClick={() => void recover(s.id, trainee.value)}
                  aria-label={`${words.room.recover}: ${s.name}`}
                >
                  {words.room.recover}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p class="faint">
        {words.room.folder} <code>{r.folder}</code>
      </p>
    </details>
  );
}
