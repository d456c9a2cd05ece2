const FOOT_M = 0.3048;

/**
 * Illuminance in footcandles: 1 fc is 1 lumen on a square foot, and a foot is 0.3048 m exactly.
 *
 * @param lux - Illuminance in lux.
 * @returns Footcandles.
 */
export function footcandlesFromLux(lux: number): number {
  return lux * FOOT_M * FOOT_M;
}

/**
 * Illuminance in lux, the inverse of `footcandlesFromLux`.
 *
 * @param footcandles - Illuminance in footcandles.
 * @returns Lux.
 */
export function luxFromFootcandles(footcandles: number): number {
  return footcandles / (FOOT_M * FOOT_M);
}
