import type { Quantity } from "../../units/quantity.js";
import { findUnit, fromBase } from "../../units/spellings.js";
import type { End } from "./ends.js";
import { stopsPerDoubling } from "./sweep-value.js";
import type { Steps } from "./types.js";

/** Forms of which the values lie on a dial with equal stops. */
const inStops = (end: End): boolean => end.base === "f" || end.base === "ISO" || end.form === "shutter";
/** Amounts that may step in stops as well as by themselves. */
const mayStop: ReadonlySet<End["base"]> = new Set(["J", "s", "lm", "lm s", "lx", "cd", "cd s", "W"]);

/** Whether steps of this unit between values of this kind are equal stops. */
export function goesInStops(from: End, unit: Quantity["unit"]): boolean {
  return inStops(from) || (unit === "stop" && mayStop.has(from.base));
}

/** Stops from one end to another number: + where the number grows. */
const stopsFrom = ({ number, unit }: End, to: number): number =>
  stopsPerDoubling(unit) * Math.log2(to / number);

/** So many values from one end to another number in its unit, both met. */
export function countedSteps(from: End, to: number, count: number): Steps {
  const scale = inStops(from) ? "stops" : "linear";
  const way = scale === "stops" ? stopsFrom(from, to) : to - from.number;
  return {
    form: from.form,
    scale,
    from: from.number,
    to: count === 1 ? from.number : to,
    step: count === 1 ? 0 : way / (count - 1),
    count,
    unit: from.unit,
  };
}

/**
 * Steps of one size from one end towards another number in its unit.
 * @param size - More than nothing: stops where `byStops`, else of the base unit of the ends.
 * @returns `whole`: how many steps the way is long; a whole number where the other end is met.
 */
export function equalSteps(
  from: End,
  to: number,
  size: Quantity,
  byStops: boolean,
): { readonly steps: Steps; readonly whole: number } {
  const row = findUnit(from.unit);
  const step = byStops || row === null ? size.value : Number(fromBase(row, size.value).toPrecision(15));
  const way = byStops ? stopsFrom(from, to) : to - from.number;
  const whole = Math.abs(way) / step;
  const steps: Steps = {
    form: from.form,
    scale: byStops ? "stops" : "linear",
    from: from.number,
    to,
    step: way < 0 ? -step : step,
    count: Math.floor(whole + 1e-9) + 1,
    unit: from.unit,
  };
  return { steps, whole };
}
