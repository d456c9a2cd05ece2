import { exp2 } from "../core/exp2.js";

/** Stops from one amount of light to another: log2(a / b); + means more light in a. Undefined unless both are above 0. */
export function stopsBetween(a: number, b: number): number | undefined {
  if (!(a > 0) || !(b > 0)) return undefined;
  const stops = Math.log2(a) - Math.log2(b);
  return Number.isFinite(stops) ? stops : undefined;
}

/** The factor in light of a number of stops: 2^stops. Undefined where it leaves the range of numbers. */
export function factorOfStops(stops: number): number | undefined {
  const factor = exp2(stops);
  return Number.isFinite(factor) ? factor : undefined;
}

/** Stops between two f-numbers above 0: 2 log2(n2 / n1); + means less light at n2. */
export function stopsBetweenFNumbers(n1: number, n2: number): number {
  return 2 * Math.log2(n2 / n1);
}

/** Stops between two times above 0: log2(t2 / t1); + means more light at t2. */
export function stopsBetweenTimes(t1: number, t2: number): number {
  return Math.log2(t2 / t1);
}

/** Stops between two ISO speeds above 0: log2(s2 / s1); + means brighter at s2. */
export function stopsBetweenIso(s1: number, s2: number): number {
  return Math.log2(s2 / s1);
}

/** Stops that a filter of optical density D takes: D log2(10), from D = -log10(transmittance) (ISO 5). */
export function stopsOfDensity(density: number): number {
  return density * Math.log2(10);
}

/** Optical density of a filter that takes a number of stops. */
export function densityOfStops(stops: number): number {
  return stops / Math.log2(10);
}

/** Stops that a transmittance (above 0, up to 1) takes: -log2(T). */
export function stopsOfTransmittance(transmittance: number): number {
  return -Math.log2(transmittance);
}

/** Stops gained by n equal flashes on one frame: log2(n), n from 1. */
export function stopsOfPops(pops: number): number {
  return Math.log2(pops);
}

/** Stops of a share of full power (above 0): log2(share); - means less light. */
export function stopsOfPower(share: number): number {
  return Math.log2(share);
}

/** Stops of a reflectance (above 0) from the grey card of 18 %: log2(reflectance / 0.18). Common practice, no source. */
export function stopsFromGrey(reflectance: number): number {
  return Math.log2(reflectance / 0.18);
}

/** f-number of several lights together, each given by its own f-number: the root of the sum of squares. */
export function sumOfFNumbers(fNumbers: readonly number[]): number {
  let sum = 0;
  for (const n of fNumbers) sum += n * n;
  return Math.sqrt(sum);
}
