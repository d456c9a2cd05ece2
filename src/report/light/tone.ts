/**
 * The tone of a surface in a picture that is exposed by an incident meter and not edited: its reflectance times the
 * light on it over the light that was exposed for, by the curve of sRGB.
 *
 * @param linear - 1 is white; more is clipped.
 * @returns 0 to 255, not rounded.
 *
 * Source: IEC 61966-2-1, from memory.
 */
export function tone(linear: number): number {
  if (linear >= 1) return 255;
  if (!(linear > 0)) return 0;
  const curved = linear <= 0.003_130_8 ? 12.92 * linear : 1.055 * Math.exp(Math.log(linear) / 2.4) - 0.055;
  return 255 * curved;
}
