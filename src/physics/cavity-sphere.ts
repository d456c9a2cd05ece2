/**
 * Mean illuminance in a closed matt sphere over its direct part: 1 / (1 - rho) (Walsh, Photometry; Goebel, Appl. Opt. 6
 * (1967) 125).
 *
 * @param reflectance - Share of light the wall throws back, 0 to below 1.
 * @returns A plain number, 1 or more, or undefined for a wall that keeps nothing, where the light never ends.
 */
export function sphereGain(reflectance: number): number | undefined {
  return reflectance < 1 ? 1 / (1 - reflectance) : undefined;
}

/**
 * Multiplier of a matt sphere with black openings: M = rho / (1 - rho (1 - f)) (Goebel 1967).
 *
 * @param reflectance - Reflectance of the wall, 0 to 1.
 * @param openings - Share of the sphere's surface that is open, 0 to 1.
 * @returns A plain number, or undefined when nothing is lost and the light never ends.
 */
export function sphereMultiplier(reflectance: number, openings: number): number | undefined {
  const lost = 1 - reflectance * (1 - openings);
  return lost > 0 ? reflectance / lost : undefined;
}

/**
 * Mean illuminance on the wall of a closed matt sphere with a lamp in it: flux / (4 pi r r (1 - rho)).
 *
 * @param flux - Luminous flux of the lamp in lumens.
 * @param radius - Radius of the sphere in metres, above 0.
 * @param reflectance - Reflectance of the wall, 0 to below 1.
 * @returns Lux, or undefined for a wall that keeps nothing.
 */
export function sphereWallIlluminance(flux: number, radius: number, reflectance: number): number | undefined {
  const gain = sphereGain(reflectance);
  return gain === undefined ? undefined : (flux * gain) / (4 * Math.PI * radius * radius);
}
