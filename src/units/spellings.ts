import type { BaseUnit } from "./dimension.js";

/**
 * One unit: how it is written, what it measures, and how it turns into the base unit.
 * A value in the base unit is `number * times / over`; both are exact in decimal, so that 35 cm is 0.35 m to the bit.
 */
export interface UnitRow {
  /** The spelling that the formatter writes. */
  readonly name: string;
  readonly base: BaseUnit;
  readonly times: number;
  readonly over: number;
  /** Other spellings that are read and formatted away. */
  readonly also: readonly string[];
}

/** Every unit that a recipe may use. */
export const unitTable: readonly UnitRow[] = [
  { name: "m", base: "m", times: 1, over: 1, also: ["metre", "metres", "meter", "meters"] },
  {
    name: "cm",
    base: "m",
    times: 1,
    over: 100,
    also: ["centimetre", "centimetres", "centimeter", "centimeters"],
  },
  {
    name: "mm",
    base: "m",
    times: 1,
    over: 1000,
    also: ["millimetre", "millimetres", "millimeter", "millimeters"],
  },
  { name: "ft", base: "m", times: 0.3048, over: 1, also: ["foot", "feet"] },
  { name: "in", base: "m", times: 0.0254, over: 1, also: ["inch", "inches"] },
  { name: "m2", base: "m2", times: 1, over: 1, also: ["m²"] },
  { name: "s", base: "s", times: 1, over: 1, also: ["sec", "secs", "second", "seconds"] },
  { name: "ms", base: "s", times: 1, over: 1000, also: ["millisecond", "milliseconds"] },
  { name: "us", base: "s", times: 1, over: 1_000_000, also: ["µs", "μs", "microsecond", "microseconds"] },
  { name: "min", base: "s", times: 60, over: 1, also: ["minute", "minutes"] },
  { name: "Ws", base: "J", times: 1, over: 1, also: ["J", "joule", "joules", "ws"] },
  { name: "W", base: "W", times: 1, over: 1, also: ["watt", "watts"] },
  { name: "kW", base: "W", times: 1000, over: 1, also: ["kilowatt", "kilowatts"] },
  { name: "lm", base: "lm", times: 1, over: 1, also: ["lumen", "lumens"] },
  { name: "lm s", base: "lm s", times: 1, over: 1, also: ["lumen second", "lumen seconds"] },
  { name: "lx", base: "lx", times: 1, over: 1, also: ["lux"] },
  { name: "klx", base: "lx", times: 1000, over: 1, also: [] },
  { name: "fc", base: "lx", times: 1, over: 0.09290304, also: ["footcandle", "footcandles"] },
  { name: "lx s", base: "lx s", times: 1, over: 1, also: ["lux second", "lux seconds"] },
  { name: "cd", base: "cd", times: 1, over: 1, also: ["candela", "candelas"] },
  { name: "cd s", base: "cd s", times: 1, over: 1, also: ["candela second", "candela seconds"] },
  { name: "lm/W", base: "lm/W", times: 1, over: 1, also: [] },
  { name: "deg", base: "deg", times: 1, over: 1, also: ["°", "degree", "degrees"] },
  { name: "rad", base: "deg", times: 180 / Math.PI, over: 1, also: ["radian", "radians"] },
  { name: "kg", base: "kg", times: 1, over: 1, also: ["kilogram", "kilograms", "kilo", "kilos"] },
  { name: "g", base: "kg", times: 1, over: 1000, also: ["gram", "grams"] },
  { name: "lb", base: "kg", times: 0.45359237, over: 1, also: ["lbs", "pound", "pounds"] },
  { name: "%", base: "1", times: 1, over: 100, also: [] },
  { name: "EV", base: "EV", times: 1, over: 1, also: [] },
  { name: "K", base: "K", times: 1, over: 1, also: ["kelvin", "kelvins"] },
  { name: "stop", base: "stop", times: 1, over: 1, also: ["stops"] },
  { name: "mired", base: "mired", times: 1, over: 1, also: ["mireds"] },
];

const bySpelling: ReadonlyMap<string, UnitRow> = new Map(
  unitTable.flatMap((row) => [row.name, ...row.also].map((word) => [word, row] as const)),
);

/** The unit with this spelling, or null. Capital letters count: `mm` is a length, `MM` is nothing. */
export function findUnit(spelling: string): UnitRow | null {
  return bySpelling.get(spelling) ?? null;
}

/** The spelling that the formatter writes, or null for a word that is no unit. */
export function canonicalUnit(spelling: string): string | null {
  return findUnit(spelling)?.name ?? null;
}

/** Every spelling, or every one of a dimension, for suggestions. */
export function unitSpellings(base?: BaseUnit): readonly string[] {
  return [...bySpelling].flatMap(([word, row]) => (base === undefined || row.base === base ? [word] : []));
}

/** A number in this unit as a number in its base unit. */
export function toBase(row: UnitRow, amount: number): number {
  return (amount * row.times) / row.over;
}

/** A number in the base unit as a number in this unit. */
export function fromBase(row: UnitRow, amount: number): number {
  return (amount * row.over) / row.times;
}
