/**
 * Reflectance of a reflection density: R = 10^-D (ISO 5-4).
 *
 * @param density - D, 0 for a perfect white.
 * @returns Share of light thrown back.
 */
export function reflectanceFromDensity(density: number): number {
  return Math.exp(-density * Math.LN10);
}

/**
 * Reflection density of a reflectance: D = -log10 R (ISO 5-4).
 *
 * @param reflectance - Share of light thrown back, above 0.
 * @returns Density, or undefined for a reflectance of 0, whose density has no end.
 */
export function densityFromReflectance(reflectance: number): number | undefined {
  return reflectance > 0 ? -Math.log(reflectance) / Math.LN10 : undefined;
}
