/**
 * The dimensions of what is written, as exponents of independent bases. Angle and luminous intensity are bases of
 * their own, so that degrees never add to plain numbers and candelas never to lumens.
 */
export interface Exponents {
  readonly length: number;
  readonly time: number;
  readonly energy: number;
  readonly flux: number;
  readonly intensity: number;
  readonly angle: number;
  readonly mass: number;
}

const none: Exponents = { length: 0, time: 0, energy: 0, flux: 0, intensity: 0, angle: 0, mass: 0 };

/** The base unit in which a dimension is kept and given out in JSON. */
export type BaseUnit =
  | "1"
  | "m"
  | "m2"
  | "s"
  | "J"
  | "W"
  | "lm"
  | "lm s"
  | "lx"
  | "lx s"
  | "cd"
  | "cd s"
  | "lm/W"
  | "deg"
  | "kg"
  | "f"
  | "ISO"
  | "EV"
  | "K"
  | "stop"
  | "mired";

/** Dimensions that multiply and divide, each with its base unit, its exponents and the words used in messages. */
export const linearDimensions = [
  { unit: "1", exponents: none, words: "a plain number" },
  { unit: "m", exponents: { ...none, length: 1 }, words: "a length" },
  { unit: "m2", exponents: { ...none, length: 2 }, words: "an area" },
  { unit: "s", exponents: { ...none, time: 1 }, words: "a time" },
  { unit: "J", exponents: { ...none, energy: 1 }, words: "an energy" },
  { unit: "W", exponents: { ...none, energy: 1, time: -1 }, words: "a power in watts" },
  { unit: "lm", exponents: { ...none, flux: 1 }, words: "a luminous flux" },
  { unit: "lm s", exponents: { ...none, flux: 1, time: 1 }, words: "a luminous energy" },
  { unit: "lx", exponents: { ...none, flux: 1, length: -2 }, words: "an illuminance" },
  { unit: "lx s", exponents: { ...none, flux: 1, length: -2, time: 1 }, words: "a luminous exposure" },
  { unit: "cd", exponents: { ...none, intensity: 1 }, words: "a luminous intensity" },
  { unit: "cd s", exponents: { ...none, intensity: 1, time: 1 }, words: "an intensity over the flash" },
  { unit: "lm/W", exponents: { ...none, flux: 1, energy: -1, time: 1 }, words: "a luminous efficacy" },
  { unit: "deg", exponents: { ...none, angle: 1 }, words: "an angle" },
  { unit: "kg", exponents: { ...none, mass: 1 }, words: "a mass" },
] as const satisfies readonly { unit: BaseUnit; exponents: Exponents; words: string }[];

/** Scales that do not multiply: points on a scale, and the differences between two of them. */
export const scaleDimensions = [
  { unit: "f", words: "an f-number", kind: "point" },
  { unit: "ISO", words: "an ISO sensitivity", kind: "point" },
  { unit: "EV", words: "an exposure value", kind: "point" },
  { unit: "K", words: "a colour temperature", kind: "point" },
  { unit: "stop", words: "a number of stops", kind: "difference" },
  { unit: "mired", words: "a mired shift", kind: "difference" },
] as const satisfies readonly { unit: BaseUnit; words: string; kind: "point" | "difference" }[];

/** The words for a dimension as used in messages: "a length". */
export function dimensionWords(unit: BaseUnit): string {
  const found =
    linearDimensions.find((row) => row.unit === unit) ?? scaleDimensions.find((row) => row.unit === unit);
  return found?.words ?? unit;
}

/** The exponents of a linear dimension; null for points and differences on a scale. */
export function exponentsOf(unit: BaseUnit): Exponents | null {
  return linearDimensions.find((row) => row.unit === unit)?.exponents ?? null;
}

/** Multiplies (`sign` 1) or divides (`sign` -1) two sets of exponents. */
export function combine(a: Exponents, b: Exponents, sign: 1 | -1): Exponents {
  return {
    length: a.length + sign * b.length,
    time: a.time + sign * b.time,
    energy: a.energy + sign * b.energy,
    flux: a.flux + sign * b.flux,
    intensity: a.intensity + sign * b.intensity,
    angle: a.angle + sign * b.angle,
    mass: a.mass + sign * b.mass,
  };
}

/** The named dimension with these exponents; null where the trade has no name for it. */
export function namedDimension(e: Exponents): BaseUnit | null {
  const row = linearDimensions.find(
    ({ exponents: x }) =>
      x.length === e.length &&
      x.time === e.time &&
      x.energy === e.energy &&
      x.flux === e.flux &&
      x.intensity === e.intensity &&
      x.angle === e.angle &&
      x.mass === e.mass,
  );
  return row?.unit ?? null;
}
