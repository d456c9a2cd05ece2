import { exp2 } from "../core/exp2.js";

/** Exposure value of settings: log2(N^2 / t), N the exact f-number, t in seconds. */
export function exposureValue(fNumber: number, time: number): number {
  return Math.log2((fNumber * fNumber) / time);
}

/** Exposure value of settings, referred to ISO 100: log2(N^2 / t) - log2(S / 100). */
export function exposureValue100(fNumber: number, time: number, iso: number): number {
  return exposureValue(fNumber, time) - Math.log2(iso / 100);
}

/** Illuminance (lx) of an exposure value at ISO 100: E = C 2^EV / 100. Undefined where it leaves the range of numbers. */
export function illuminanceAtExposureValue(ev100: number, c: number): number | undefined {
  return finite((c * exp2(ev100)) / 100);
}

/** Luminance (cd/m2) of an exposure value at ISO 100: L = K 2^EV / 100. Undefined where it leaves the range of numbers. */
export function luminanceAtExposureValue(ev100: number, k: number): number | undefined {
  return finite((k * exp2(ev100)) / 100);
}

/** Exposure value at ISO 100 of an illuminance (lx): log2(100 E / C). */
export function exposureValueOfIlluminance(illuminance: number, c: number): number {
  return Math.log2((100 * illuminance) / c);
}

/** Exposure value at ISO 100 of a luminance (cd/m2): log2(100 L / K). */
export function exposureValueOfLuminance(luminance: number, k: number): number {
  return Math.log2((100 * luminance) / k);
}

/**
 * Illuminance (lx) that the rule of f/16 at 1/ISO s stands for: 256 C, for every ISO. The rule is common practice,
 * no source; the number follows from the incident-light equation.
 */
export function sunnySixteenIlluminance(c: number): number {
  return 256 * c;
}

function finite(value: number): number | undefined {
  return Number.isFinite(value) ? value : undefined;
}
