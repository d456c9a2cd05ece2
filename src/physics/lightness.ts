/** Slope of L* near black, (29/3) to the third power: 24389 / 27 (CIE 15). */
const SLOPE = 903.296_296_296_296_3;

/**
 * Reflectance of a CIE lightness: Y/Yn = ((L* + 16) / 116)^3 above L* = 8, L* / 903.2963 below (CIE 15).
 *
 * @param lightness - L*, 0 to 100.
 * @returns Reflectance as a share, 0 to 1.
 */
export function reflectanceFromLightness(lightness: number): number {
  const root = (lightness + 16) / 116;
  return lightness > 8 ? root * root * root : lightness / SLOPE;
}

/**
 * CIE lightness of a reflectance, the inverse of `reflectanceFromLightness`.
 *
 * @param reflectance - Share of light thrown back, 0 or more.
 * @returns L*, 100 for a reflectance of 1.
 */
export function lightnessFromReflectance(reflectance: number): number {
  return reflectance > 216 / 24_389 ? 116 * Math.cbrt(reflectance) - 16 : reflectance * SLOPE;
}
