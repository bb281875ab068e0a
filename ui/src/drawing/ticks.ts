/** Round numbers for axes. */

/** step returns the least of 1, 2, 2.5 and 5 times a power of ten that parts the span into at most `most` pieces. */
export function step(span: number, most: number): number {
  const least = span / Math.max(1, most);
  if (!(least > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  return power * ([1, 2, 2.5, 5, 10].find((k) => k * power >= least * (1 - 1e-9)) ?? 10);
}

/** ticks returns the multiples of a round step from low to high, at most `most` pieces. */
export function ticks(low: number, high: number, most: number): number[] {
  const by = step(high - low, most);
  const out: number[] = [];
  for (let k = Math.ceil(low / by - 1e-9); k * by <= high + by * 1e-9; k++) out.push(k === 0 ? 0 : k * by);
  return out;
}

/** Range is an interval of an axis. */
export type Range = [number, number];

/** rounded widens the range to round numbers that hold 0. */
export function rounded([low, high]: Range, most: number): Range {
  const from = Math.min(0, low);
  const to = Math.max(0, high, from + 1e-9);
  const by = step(to - from, most);
  return [Math.floor(from / by + 1e-9) * by, Math.ceil(to / by - 1e-9) * by];
}
