import type { Chromaticity } from "./chromaticity.js";

/** One light of a mixture: its chromaticity and how much of it arrives. */
export interface ColouredLight {
  readonly colour: Chromaticity;
  /** Illuminance in lux, or luminous exposure in lux seconds; one unit for the whole mixture; 0 or more. */
  readonly amount: number;
}

/**
 * Chromaticity of several lights that fall on one place: their tristimulus values add (CIE 15). Averaging mired values
 * instead is only an approximation.
 *
 * @param lights - The lights; each chromaticity has y above 0.
 * @returns The chromaticity, or undefined when no light arrives.
 */
export function mixLights(lights: readonly ColouredLight[]): Chromaticity | undefined {
  let x = 0;
  let y = 0;
  let sum = 0;
  for (const { colour, amount } of lights) {
    const scale = amount / colour.y;
    x += scale * colour.x;
    y += amount;
    sum += scale;
  }
  return sum > 0 ? { x: x / sum, y: y / sum } : undefined;
}
