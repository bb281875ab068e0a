/** Puts script, styles and an explanation into one HTML file that needs nothing else. */

import type { Explanation } from "../api.ts";

export interface LeafData {
  explanation: Explanation;
  imperial: boolean;
}

/** leaf returns the file. What people wrote stands in it as text or JSON only. */
export function leaf(data: LeafData, script: string, style: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'">
<title>${escaped(data.explanation.preview.name)}</title>
<style>${style.replace(/<\/style/gi, "<\\/style")}</style>
</head>
<body>
<div id="page"></div>
<script type="application/json" id="explanation">${JSON.stringify(slim(data)).replace(/</g, "\\u003c")}</script>
<script>${script.replace(/<\/script/gi, "<\\/script")}</script>
</body>
</html>
`;
}

const entities: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

export const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => entities[c]!);

/** slim leaves out what the presentation does not show: the sheet itself and how it was taken apart. */
export function slim({ explanation, imperial }: LeafData): LeafData {
  const preview = { ...explanation.preview, text: "", structure: null, stroke: null };
  return { explanation: { ...explanation, preview }, imperial };
}
