/** A slider under a chart: its thumb stands under the chart's cursor. */

import { margin } from "../drawing/chart.ts";
import { words } from "../words.ts";

/** thumb is how wide browsers draw the thumb, px; its middle stays half of that within the slider's ends. */
const thumb = 16;

const inset = {
  marginLeft: `${margin.left - thumb / 2}px`,
  width: `calc(100% - ${margin.left + margin.right - thumb}px)`,
};

/** share is where along the chart the cursor stands, 0 to 1. */
export function Scrub({ share, scrub }: { share: number; scrub: (share: number) => void }) {
  return (
    <input
      type="range"
      min="0"
      max="100"
      style={inset}
      value={Math.round(share * 100)}
      aria-label={words.machine.scrub}
      onInput={(e) => scrub(Number(e.currentTarget.value) / 100)}
    />
  );
}
