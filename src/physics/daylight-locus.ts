import type { Chromaticity } from "./chromaticity.js";

/**
 * Chromaticity of a CIE daylight illuminant: the polynomial for x in 1/T, and y = -3 x x + 2.87 x - 0.275
 * (CIE 15:2018, illuminants D). Nominal D65 is at 6503.62 K, because c2 has been changed since.
 *
 * @param kelvin - Correlated colour temperature, 4000 to 25000 K.
 * @returns The chromaticity, or undefined outside that range.
 */
export function daylightChromaticity(kelvin: number): Chromaticity | undefined {
  if (!(kelvin >= 4000 && kelvin <= 25_000)) return undefined;
  const r = 1000 / kelvin;
  const x =
    kelvin <= 7000
      ? ((-4.607 * r + 2.9678) * r + 0.09911) * r + 0.244063
      : ((-2.0064 * r + 1.9018) * r + 0.24748) * r + 0.23704;
  return { x, y: (-3 * x + 2.87) * x - 0.275 };
}
