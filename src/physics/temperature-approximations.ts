import type { Chromaticity } from "./chromaticity.js";

/** Farthest distance from the epicentre's height at which the quotients below still have a value. */
const LEAST_DIVISOR = 1e-9;

/**
 * Correlated colour temperature by McCamy's cubic (Color Res. Appl. 17 (1992) 142), meant for about 2000 to 12500 K
 * near the locus.
 *
 * @param colour - Chromaticity.
 * @returns Kelvin, or undefined at y = 0.1858, where the quotient has no value.
 */
export function temperatureMcCamy(colour: Chromaticity): number | undefined {
  const below = 0.1858 - colour.y;
  if (Math.abs(below) < LEAST_DIVISOR) return undefined;
  const n = (colour.x - 0.332) / below;
  return ((449 * n + 3525) * n + 6823.3) * n + 5520.33;
}

/**
 * Correlated colour temperature by Hernandez-Andres, Lee and Romero (Appl. Opt. 38 (1999) 5703): sums of exponentials,
 * with a second set of constants above 50000 K.
 *
 * @param colour - Chromaticity.
 * @returns Kelvin, or undefined at y = 0.1735 or 0.1691, or where the result is past every bound.
 */
export function temperatureHernandez(colour: Chromaticity): number | undefined {
  const below = colour.y - 0.1735;
  if (Math.abs(below) < LEAST_DIVISOR) return undefined;
  const n = (colour.x - 0.3366) / below;
  const kelvin =
    -949.86315 +
    6253.80338 * Math.exp(-n / 0.92159) +
    28.70599 * Math.exp(-n / 0.20039) +
    0.00004 * Math.exp(-n / 0.07125);
  if (kelvin <= 50_000) return kelvin;
  const belowHot = colour.y - 0.1691;
  if (Math.abs(belowHot) < LEAST_DIVISOR) return undefined;
  const m = (colour.x - 0.3356) / belowHot;
  const hot = 36_284.48953 + 0.00228 * Math.exp(-m / 0.07861) + 5.4535e-36 * Math.exp(-m / 0.01543);
  return Number.isFinite(hot) ? hot : undefined;
}
