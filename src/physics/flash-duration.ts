import { exp2 } from "../core/exp2.js";
import { power } from "../math/power.js";

/**
 * Ratio of the two durations of a flash that dies away exponentially: t0.1 (above 10 % of the peak) over t0.5 (above
 * 50 %), ln 10 / ln 2. The levels: ISO 2827:1988 (edition from memory).
 */
export function durationRatio(): number {
  return Math.LN10 / Math.LN2;
}

/** Duration (s) above a share (0 to 1) of the peak, from the time constant of the decay: tau ln(1 / share). */
export function durationAbove(timeConstant: number, share: number): number {
  return -timeConstant * Math.log(share);
}

/** Share (0 to 1) of a flash inside a shutter time that starts with it: 1 - 2^(-t / t0.5), both above 0. */
export function shareInsideShutter(halfDuration: number, shutter: number): number {
  return 1 - exp2(-shutter / halfDuration);
}

/**
 * Share (0 to 1) of a flash that dies away exponentially which comes later than a time after its start:
 * 10^(-t / t0.1), both in s.
 */
export function tailShare(tenthDuration: number, time: number): number {
  return exp2((-time / tenthDuration) * Math.log2(10));
}

/**
 * Time (s) corrected for reciprocity failure by Schwarzschild's form: t^p, with t from 1 s up and p of the material.
 * Times below 1 s come back as they are. Undefined where it leaves the range of numbers.
 */
export function schwarzschildTime(metered: number, p: number): number | undefined {
  if (metered < 1) return metered;
  const corrected = power(metered, p);
  return Number.isFinite(corrected) ? corrected : undefined;
}

/** Blur on the sensor, in the unit of length of the speed, of a thing that moves across: speed time magnification. */
export function motionBlur(speed: number, time: number, magnification: number): number {
  return speed * time * magnification;
}
