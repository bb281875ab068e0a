/** In which order the machines of a room stand, and which are looked for. */

import type { MachineCard } from "../api.ts";

export type Order = "name" | "force" | "start" | "middle" | "end" | "fit";

const third = { start: 0, middle: 1, end: 2 } as const;

/** sorted returns the machines in the order; those that cannot be computed come last. */
export function sorted(machines: readonly MachineCard[], order: Order): MachineCard[] {
  const byName = [...machines].sort((a, b) => a.name.localeCompare(b.name));
  if (order === "name") return byName;
  const weight = (m: MachineCard): number => {
    if (!m.sign) return Number.NEGATIVE_INFINITY;
    if (order === "fit") return m.fit && !m.fit.trouble ? m.fit.reached * m.fit.inRange : -1;
    return order === "force" ? m.sign.peak : shareOf(m.sign.thirds, third[order]);
  };
  return byName.sort((a, b) => {
    const [x, y] = [weight(a), weight(b)];
    return x === y ? 0 : y > x ? 1 : -1; // the sort is stable: equals stay in order of name
  });
}

/** shareOf returns which part of the three mean forces the given third has. */
function shareOf(thirds: readonly number[], i: number): number {
  const all = thirds.reduce((sum, f) => sum + Math.abs(f), 0);
  return all > 0 ? Math.abs(thirds[i] ?? 0) / all : 0;
}

/** musclesOf lists the muscles that any of the machines trains. */
export const musclesOf = (machines: readonly MachineCard[]): string[] =>
  [...new Set(machines.flatMap((m) => m.muscles))].sort((a, b) => a.localeCompare(b));

/** matches reports whether each word is found in the machine's name, notes, loading or contact. */
export function matches(m: MachineCard, text: string): boolean {
  const all = [m.name, m.notes, m.loads, m.contact, ...m.exercises, ...m.muscles].join(" ").toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
