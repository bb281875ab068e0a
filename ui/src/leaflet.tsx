/**
 * The page for a client: one file with the explanation inside. The page builds
 * it from this script, its styles and the explanation as JSON (explain/leaf.ts).
 */

import "./style/theme.css";
import "./style/controls.css";
import "./style/drawing.css";
import "./style/explain.css";
import "./style/print.css";

import { render } from "preact";
import type { LeafData } from "./explain/leaf.ts";
import { ExplainView } from "./explain/view.tsx";
import { imperial, metric } from "./units.ts";
import { words } from "./words.ts";

const data = JSON.parse(document.getElementById("explanation")!.textContent!) as LeafData;

render(
  <main class="leaflet">
    <h1>{data.explanation.preview.name}</h1>
    <ExplainView explanation={data.explanation} units={data.imperial ? imperial : metric} />
    <section class="care">
      <h2>{words.why.care}</h2>
      <ul>
        {data.explanation.preview.cautions.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ul>
    </section>
    <p class="faint small">{words.explain.made}</p>
  </main>,
  document.getElementById("page")!,
);
