import { writeNumber } from "../../core/write-number.js";
import { steppedNumber, sweepValue } from "./sweep-value.js";
import type { Steps, SweepModel } from "./types.js";

/** A value of a sweep as people read it: `1/4` for two stops below full, `1.17 m` for a seventh of the way. */
export function sweepLabel(sweep: SweepModel, index: number): string {
  const { range } = sweep;
  const { written } = sweepValue(sweep, index);
  if (range.kind === "list") return written;
  const { steps } = range;
  const number = steppedNumber(steps, index);
  if (steps.form === "stops-below") return powerLabel(steps, number, written);
  const rounded = writeNumber(Number(number.toFixed(decimalsOf(steps))));
  return written.replace(writeNumber(Math.abs(number)), rounded.replace(/^-/, ""));
}

/** The number of a value in the unit of its sweep; null where the values are not numbers. */
export function sweepNumber({ range }: SweepModel, index: number): number | null {
  return range.kind === "list" ? (range.values[index]?.number ?? null) : steppedNumber(range.steps, index);
}

/** The unit of those numbers; null where there are none. */
export function sweepUnit({ range }: SweepModel): string | null {
  const unit = range.kind === "list" ? range.unit : range.steps.unit;
  return unit === "" ? "1" : unit;
}

/** Whole stops below full as the fraction on the dial, thirds of a stop as fractions of one. */
function powerLabel(steps: Steps, below: number, written: string): string {
  const whole = Math.round(below);
  if (Math.abs(below - whole) < 1e-9 && whole <= 10) return whole === 0 ? "full" : `1/${1 << whole}`;
  const thirds = Math.round(3 * below);
  if (Math.abs(3 * below - thirds) < 1e-6) return `full - ${thirds}/3 stop`;
  return written.replace(writeNumber(below), writeNumber(Number(below.toFixed(decimalsOf(steps)))));
}

/** Decimals with which neighbours still differ in two figures, at most nine. */
function decimalsOf({ scale, step, from, to }: Steps): number {
  const least = scale === "linear" ? Math.abs(step) : Math.min(from, to) * Math.min(1, Math.abs(step) / 2);
  return least > 0 ? Math.max(0, Math.min(9, Math.ceil(-Math.log10(least)) + 1)) : 2;
}
