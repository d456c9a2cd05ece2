import { exp2 } from "../core/exp2.js";

/** The full stops as they are engraved, from f/0.5 (two stops wider than f/1) on; common practice. */
const FULL_STOPS = [0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128, 180, 256];

/** An f-number as meters show it: the full stop at or below it and tenths of a stop, f/8 +0.7. */
export interface FNumberReading {
  /** The engraved full stop: 8, 11, 16. */
  readonly base: number;
  /** 0 to 9. */
  readonly tenths: number;
}

/** Exact f-number k thirds of a stop from f/1: 2^(k/6). Undefined where it leaves the range of numbers. */
export function fNumberOfThirds(thirds: number): number | undefined {
  const whole = Math.floor(thirds / 6);
  const n = exp2(whole) * exp2((thirds - 6 * whole) / 6);
  return Number.isFinite(n) && n > 0 ? n : undefined;
}

/** Whole stops from f/1 of an f-number above 0: 2 log2(N). */
export function stopsFromFOne(fNumber: number): number {
  return 2 * Math.log2(fNumber);
}

/**
 * Splits an exact f-number (above 0) into the full stop below and tenths of a stop, rounded to the nearest tenth.
 * Full stops beyond the engraved ones are given with two digits.
 */
export function splitFNumber(fNumber: number): FNumberReading {
  const tenths = Math.round(10 * stopsFromFOne(fNumber));
  const whole = Math.floor(tenths / 10);
  return { base: FULL_STOPS[whole + 2] ?? twoDigits(exp2(whole / 2)), tenths: tenths - 10 * whole };
}

function twoDigits(value: number): number {
  return Number(value.toPrecision(2));
}
