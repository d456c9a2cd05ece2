/**
 * Guide numbers are in metres at ISO 100 (ISO 1230:1992, 2007): GN = N d. They grow with the root of the speed and
 * of the energy. All values are above 0.
 */

/** f-number at a distance (m) and a speed: GN sqrt(S / 100) / d. */
export function guideNumberFNumber(guideNumber: number, iso: number, distance: number): number {
  return (guideNumber * Math.sqrt(iso / 100)) / distance;
}

/** Distance (m) at which a guide number gives an f-number: GN sqrt(S / 100) / N. */
export function guideNumberDistance(guideNumber: number, iso: number, fNumber: number): number {
  return (guideNumber * Math.sqrt(iso / 100)) / fNumber;
}

/** Guide number (m) at a share of full power: GN sqrt(share). */
export function guideNumberAtPower(guideNumber: number, share: number): number {
  return guideNumber * Math.sqrt(share);
}

/** A guide number in feet: 1 ft is 0.3048 m. */
export function guideNumberInFeet(guideNumber: number): number {
  return guideNumber / 0.3048;
}

/** Guide number (m) of several flashes side by side: luminous exposures add, sqrt(sum GN^2). */
export function combinedGuideNumber(guideNumbers: readonly number[]): number {
  let sum = 0;
  for (const gn of guideNumbers) sum += gn * gn;
  return Math.sqrt(sum);
}

/** Guide number (m) from the axial intensity over the flash (cd s): sqrt(Q S / C). */
export function guideNumberFromIntensity(candelaSeconds: number, iso: number, c: number): number {
  return Math.sqrt((candelaSeconds * iso) / c);
}

/** Axial intensity over the flash (cd s) from a guide number: GN^2 C / 100. */
export function intensityFromGuideNumber(guideNumber: number, c: number): number {
  return (guideNumber * guideNumber * c) / 100;
}
