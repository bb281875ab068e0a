/** Steps a number where it stands in its text, so that unit, ± and note stay. */

import type { Value } from "../../api.ts";

const steps: Record<string, number> = {
  mm: 1,
  cm: 0.1,
  m: 0.001,
  in: 0.125,
  ft: 0.01,
  kg: 0.5,
  g: 10,
  lb: 1,
  "°": 1,
  deg: 1,
  rad: 0.01,
  N: 1,
};

/** stepOf returns by how much the value is stepped, in its own unit. */
export function stepOf(v: Pick<Value, "unit" | "value">): number {
  return steps[v.unit] ?? 10 ** Math.floor(Math.log10(Math.max(Math.abs(v.value), 1e-3)) - 1);
}

/** stepped returns the text with its first number moved by so many steps; null if there is no plain number. */
export function stepped(text: string, v: Pick<Value, "unit" | "value">, by: number): string | null {
  const found = /[-\u2212+]?\d+(?:\.\d+)?/.exec(text);
  if (!found || /^\s*\d+\s+\d+\/|^\s*\d+\/\d/.test(text.slice(found.index))) return null;
  const step = stepOf(v);
  const now = Number(found[0].replace("\u2212", "-"));
  const digits = Math.max(decimals(found[0]), decimals(String(step)));
  const next = Number((now + by * step).toFixed(digits));
  return text.slice(0, found.index) + String(next) + text.slice(found.index + found[0].length);
}

const decimals = (text: string): number => (text.split(".")[1] ?? "").length;
