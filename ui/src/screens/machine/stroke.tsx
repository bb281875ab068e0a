/** The stroke: where in its travel the machine stands, by hand or at a tempo. */

import type { Bench } from "../../state/bench.ts";
import type { Player } from "../../state/player.ts";
import { units } from "../../state/taste.ts";
import { force, held, mass, percent } from "../../units.ts";
import { words } from "../../words.ts";

export function StrokeBar({ bench, player }: { bench: Bench; player: Player }) {
  const playing = player.playing.value;
  const here = hereText(bench);
  const side = bench.shown.value?.side ?? "";
  return (
    <div class="stroke">
      <button
        type="button"
        class="round"
        aria-label={playing ? words.machine.pause : words.machine.play}
        disabled={!bench.settled.value?.stroke}
        onClick={() => player.toggle()}
      >
        <svg viewBox="0 0 24 24" width="22" height="22" aria-hidden="true">
          <path class="fill-icon" d={playing ? "M7 5h4v14H7zM13 5h4v14h-4z" : "M8 5l11 7-11 7z"} />
        </svg>
      </button>
      <div class="rail">
        <input
          type="range"
          min="0"
          max="100"
          step="1"
          value={Math.round(bench.share.value * 100)}
          aria-label={words.machine.scrub}
          aria-valuetext={[here[0], side, here[1]].filter(Boolean).join(", ")}
          onInput={(e) => {
            player.pause();
            bench.share.value = Number(e.currentTarget.value) / 100;
          }}
        />
        <span class="rail-thirds" aria-hidden="true">
          {words.thirds.map((name) => (
            <span key={name}>{name}</span>
          ))}
        </span>
      </div>
      <output class="here-text">
        <strong>{here[0]}</strong>
        {side && <span class="side">{side}</span>}
        <span>{here[1]}</span>
      </output>
    </div>
  );
}

/** hereText says the force where the machine stands, and what mass would weigh as much. */
function hereText(bench: Bench): [string, string] {
  const f = bench.shown.value?.curve?.lift[bench.position.value];
  const share = percent(bench.share.value);
  if (f === null || f === undefined) return [words.machine.gapHere, bench.frame.value?.gap || share];
  return [force(units.value, f), words.machine.heldMass(mass(units.value, held(f)))];
}
