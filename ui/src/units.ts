/** Numbers as the reader wants them: SI inside, metric or imperial outside. */

export interface Units {
  imperial: boolean;
  /** force and travel are for axes: a number without its unit. */
  force: { unit: string; perUnit: number };
  travel: { unit: string; perUnit: number };
  length: { unit: string; perUnit: number; digits: number };
  mass: { unit: string; perUnit: number };
}

const standardGravity = 9.80665; // m/s², exact by definition: 3rd CGPM (1901)
const pound = 0.45359237; // kg, exact: international yard and pound agreement (1959)
const inch = 0.0254; // m, exact: same

export const metric: Units = {
  imperial: false,
  force: { unit: "N", perUnit: 1 },
  travel: { unit: "cm", perUnit: 0.01 },
  length: { unit: "mm", perUnit: 0.001, digits: 0 },
  mass: { unit: "kg", perUnit: 1 },
};

export const imperial: Units = {
  imperial: true,
  force: { unit: "lbf", perUnit: pound * standardGravity },
  travel: { unit: "in", perUnit: inch },
  length: { unit: "in", perUnit: inch, digits: 2 },
  mass: { unit: "lb", perUnit: pound },
};

/** fixed writes x with the given digits after the point and a true minus sign. */
export function fixed(x: number, digits: number): string {
  const text = x.toFixed(digits);
  return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "\u2212");
}

const spaced = (number: string, unit: string): string => `${number}\u00a0${unit}`;

export const force = (u: Units, newtons: number): string =>
  spaced(fixed(newtons / u.force.perUnit, Math.abs(newtons / u.force.perUnit) < 10 ? 1 : 0), u.force.unit);

export const travel = (u: Units, metres: number): string =>
  spaced(fixed(metres / u.travel.perUnit, u.imperial ? 1 : 0), u.travel.unit);

export const lengthText = (u: Units, metres: number): string =>
  spaced(fixed(metres / u.length.perUnit, u.length.digits), u.length.unit);

export const mass = (u: Units, kilograms: number): string =>
  spaced(fixed(kilograms / u.mass.perUnit, kilograms < 10 * u.mass.perUnit ? 1 : 0), u.mass.unit);

/** texts are the units that a sheet's own text may end in, and what one is in SI. */
const texts: Record<string, { perUnit: number; imperial: boolean; shown: (other: number) => string }> = {
  kg: { perUnit: 1, imperial: false, shown: (kg) => spaced(short(kg / pound), "lb") },
  mm: { perUnit: 0.001, imperial: false, shown: (m) => spaced(tenths(m / inch), "in") },
  cm: { perUnit: 0.01, imperial: false, shown: (m) => spaced(tenths(m / inch), "in") },
  N: { perUnit: 1, imperial: false, shown: (n) => spaced(short(n / imperial.force.perUnit), "lbf") },
  lb: { perUnit: pound, imperial: true, shown: (kg) => spaced(tenths(kg), "kg") },
  in: { perUnit: inch, imperial: true, shown: (m) => spaced(short(m * 1000), "mm") },
  lbf: { perUnit: pound * standardGravity, imperial: true, shown: (n) => spaced(short(n), "N") },
};

const tenths = (x: number): string => fixed(x, 1).replace(/\.0$/, "");
const short = (x: number): string => (Math.abs(x) >= 10 ? fixed(x, 0) : tenths(x));

/**
 * beside returns a text of the sheet, such as a setting's value, with the same quantity behind it in the reader's
 * units, if it is written in the other ones: "40 kg (88 lb)". Other texts are returned as they are.
 */
export function beside(u: Units, text: string): string {
  const [, number, unit] = /^(-?\d+(?:\.\d+)?) ?([a-zA-Z]+)$/.exec(text) ?? [];
  const known = unit ? texts[unit] : undefined;
  return known && known.imperial !== u.imperial ? `${text} (${known.shown(Number(number) * known.perUnit)})` : text;
}

/** held returns the mass in kg whose weight is the given force in N. */
export const held = (newtons: number): number => newtons / standardGravity;

export const work = (joules: number): string => spaced(fixed(joules, joules < 10 ? 1 : 0), "J");

export const percent = (share: number): string => spaced(fixed(100 * share, 0), "%");

export const ratio = (x: number): string => fixed(x, 2);
