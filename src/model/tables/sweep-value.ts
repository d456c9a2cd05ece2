import { exp2 } from "../../core/exp2.js";
import { writeNumber } from "../../core/write-number.js";
import { exactShutter, nominalFNumber, nominalIso, nominalShutter } from "../../units/nominal.js";
import type { Quantity } from "../../units/quantity.js";
import { findUnit, toBase } from "../../units/spellings.js";
import { belowFull, dialNumber, full, output, setTo } from "../make/lamps.js";
import { along, left, right, tape } from "../make/points.js";
import { reflecting } from "../make/surroundings.js";
import type { Steps, SweepModel } from "./types.js";

/** How many values a sweep has. */
export function sweepLength({ range }: SweepModel): number {
  return range.kind === "list" ? range.values.length : range.steps.count;
}

/** One value of a sweep: as a recipe says it, and as the checked model has it. */
export interface SweepValue {
  readonly written: string;
  /** Null where rows are checked as text. */
  readonly value: unknown;
}

/** The value of a sweep at an index from 0. */
export function sweepValue({ range, target }: SweepModel, index: number): SweepValue {
  if (range.kind === "list") return range.values[index] ?? { written: "", value: null };
  const quantity = steppedQuantity(range.steps, index);
  const value = modelValue(range.steps, quantity);
  return { written: writtenOf(value), value: target.kind === "property" ? value : null };
}

/** The number of a stepped sweep at an index, in the unit of its ends. The ends are met to the last bit. */
export function steppedNumber({ scale, from, to, step, count, unit }: Steps, index: number): number {
  if (index === 0) return from;
  const last = scale === "linear" ? tidy(from + step * index) : from;
  if (scale === "linear")
    return index === count - 1 && Math.abs(last - to) <= 1e-9 * Math.abs(to) ? to : last;
  const turned = from * exp2((step * index) / stopsPerDoubling(unit));
  return index === count - 1 && Math.abs(turned / to - 1) < 1e-9 ? to : turned;
}

/** Two stops double an f-number; one stop doubles everything else. */
export const stopsPerDoubling = (unit: string): number => (unit === "f" ? 2 : 1);

/** Takes the last digits off a sum, so that 1 + 2 * 0.1 is 1.2. */
function tidy(value: number): number {
  return Number(value.toPrecision(12)) + 0;
}

function steppedQuantity(steps: Steps, index: number): Quantity {
  const number = steppedNumber(steps, index);
  const { unit } = steps;
  if (unit === "f")
    return { value: number, unit, written: `f/${writeNumber(nominalFNumber(number) ?? number)}` };
  if (unit === "ISO")
    return { value: number, unit, written: `ISO ${writeNumber(nominalIso(number) ?? number)}` };
  const row = unit === "" ? null : findUnit(unit);
  if (row === null) return { value: number, unit: "1", written: writeNumber(number) };
  return { value: toBase(row, number), unit: row.base, written: `${writeNumber(number)} ${row.name}` };
}

function modelValue({ form }: Steps, quantity: Quantity): unknown {
  switch (form) {
    case "plain":
      return quantity;
    case "shutter":
      return shutter(quantity);
    case "tape":
      return tape(quantity as Quantity<"m">);
    case "bearing":
      return bearing(quantity as Quantity<"deg">);
    case "direction":
      return along(bearing(quantity as Quantity<"deg">));
    case "stops-below":
      return quantity.value === 0 ? full : belowFull(quantity as Quantity<"stop">);
    case "energy":
      return setTo(quantity as Quantity<"J">);
    case "dial":
      return dialNumber(quantity as Quantity<"1">);
    case "output":
      return output(quantity as Quantity<"lm">);
    case "surface":
      return reflecting(quantity as Quantity<"1">);
    default:
      return form satisfies never;
  }
}

/** An exposure time, one of the series as it is on the dial. */
function shutter(time: Quantity): Quantity {
  const nominal = nominalShutter(time.value);
  return {
    ...time,
    value: exactShutter(time.value),
    written: nominal === null ? time.written : `${nominal} s`,
  };
}

/** A bearing from a signed angle, + to camera-right. */
function bearing(angle: Quantity<"deg">): ReturnType<typeof left> {
  const size = { ...angle, value: Math.abs(angle.value), written: angle.written.replace(/^-/, "") };
  return angle.value > 0 ? right(size) : left(size);
}

function writtenOf(value: unknown): string {
  return (value as { readonly written: string }).written;
}
