import { writeNumber } from "../core/write-number.js";
import type { BaseUnit } from "./dimension.js";
import { exactFNumber, exactIso, exactShutter } from "./nominal.js";
import type {
  Angle,
  Efficacy,
  Energy,
  Flux,
  FStop,
  Illuminance,
  Intensity,
  IntensityTime,
  Kelvin,
  Length,
  LuminousEnergy,
  Mass,
  Mired,
  Plain,
  Quantity,
  Sensitivity,
  Spread,
  Stops,
  Time,
} from "./quantity.js";
import { findUnit, toBase } from "./spellings.js";

/** A quantity with its written form; the one place where the two are put together. */
export function quantity<U extends BaseUnit>(unit: U, value: number, written: string): Quantity<U> {
  return { value, unit, written };
}

/** A number in a unit of the table, as a quantity: `inUnit("cm", 40)`. Throws for a word that is no unit. */
export function inUnit<U extends BaseUnit>(name: string, base: U, amount: number): Quantity<U> {
  const row = findUnit(name);
  if (row === null || row.base !== base) throw new Error(`${name} does not measure what ${base} measures`);
  return quantity(base, toBase(row, amount), `${writeNumber(amount)} ${row.name}`);
}

/** The quantity as a recipe says it, its tolerance included. */
export function say(q: Quantity): string {
  return q.plusMinus === undefined ? q.written : `${q.written} +- ${q.plusMinus.written}`;
}

/** The same quantity with a tolerance: `plusMinus(m(5), cm(5))`; a plain number counts as per cent. */
export function plusMinus<Q extends Quantity>(q: Q, tolerance: Quantity): Q {
  const spread: Spread = {
    value: tolerance.value,
    unit: tolerance.unit === "1" && q.unit !== "1" ? "%" : tolerance.unit,
    written: tolerance.written,
  };
  return { ...q, plusMinus: spread };
}

/** Metres. */
export const m = (amount: number): Length => inUnit("m", "m", amount);
/** Centimetres. */
export const cm = (amount: number): Length => inUnit("cm", "m", amount);
/** Millimetres. */
export const mm = (amount: number): Length => inUnit("mm", "m", amount);
/** Feet, and inches if given: `ft(5, 7.5)`. */
export function ft(feet: number, inches?: number): Length {
  if (inches === undefined) return inUnit("ft", "m", feet);
  const value = feet * 0.3048 + inches * 0.0254;
  return quantity("m", value, `${writeNumber(feet)} ft ${writeNumber(inches)} in`);
}
/** Inches. */
export const inch = (amount: number): Length => inUnit("in", "m", amount);
/** Degrees. */
export const deg = (amount: number): Angle => inUnit("deg", "deg", amount);
/** Seconds, taken as written. */
export const s = (amount: number): Time => inUnit("s", "s", amount);
/** Milliseconds. */
export const ms = (amount: number): Time => inUnit("ms", "s", amount);
/** A shutter speed of one over `n` seconds; nominal ones stand for their exact series value (1/60 is 1/64 s). */
export const shutterOneOver = (n: number): Time =>
  quantity("s", exactShutter(1 / n), `1/${writeNumber(n)} s`);
/** Watt-seconds, which are joules. */
export const ws = (amount: number): Energy => inUnit("Ws", "J", amount);
/** Kilograms. */
export const kg = (amount: number): Mass => inUnit("kg", "kg", amount);
/** A plain number. */
export const number = (amount: number): Plain => quantity("1", amount, writeNumber(amount));
/** A share in per cent: `percent(18)` is 0.18. */
export const percent = (amount: number): Plain => inUnit("%", "1", amount);
/** An f-number; nominal ones stand for their exact series value (f/11 is 11.31). */
export const fNumber = (n: number): FStop => quantity("f", exactFNumber(n), `f/${writeNumber(n)}`);
/** An ISO sensitivity; nominal ones stand for their exact series value. */
export const iso = (n: number): Sensitivity => quantity("ISO", exactIso(n), `ISO ${writeNumber(n)}`);
/** Kelvin. */
export const kelvin = (amount: number): Kelvin => inUnit("K", "K", amount);
/** Stops. */
export const stops = (amount: number): Stops => inUnit("stop", "stop", amount);
/** A number of thirds of a stop, written as a fraction. */
export const thirdStops = (thirds: number): Stops =>
  quantity("stop", thirds / 3, `${writeNumber(thirds)}/3 stop`);
/** A mired shift. */
export const mired = (amount: number): Mired => inUnit("mired", "mired", amount);
/** Lux. */
export const lx = (amount: number): Illuminance => inUnit("lx", "lx", amount);
/** Lumens. */
export const lm = (amount: number): Flux => inUnit("lm", "lm", amount);
/** Lumen seconds. */
export const lmSeconds = (amount: number): LuminousEnergy => inUnit("lm s", "lm s", amount);
/** Candelas. */
export const cd = (amount: number): Intensity => inUnit("cd", "cd", amount);
/** Candela seconds. */
export const cdSeconds = (amount: number): IntensityTime => inUnit("cd s", "cd s", amount);
/** Lumens to the watt, which are lumen seconds to the watt-second. */
export const lmPerWatt = (amount: number): Efficacy => inUnit("lm/W", "lm/W", amount);
