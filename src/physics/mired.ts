/**
 * Reciprocal colour temperature: M = 1e6 / T.
 *
 * @param kelvin - Colour temperature, above 0.
 * @returns Mired (reciprocal megakelvin).
 */
export function miredFromKelvin(kelvin: number): number {
  return 1e6 / kelvin;
}

/**
 * Shift that takes one colour temperature to another: 1e6 / T2 - 1e6 / T1. Shifts of filters one behind the other add.
 *
 * @param from - Colour temperature in kelvin, above 0.
 * @param to - Colour temperature in kelvin, above 0.
 * @returns Mired, negative towards blue.
 */
export function miredShift(from: number, to: number): number {
  return 1e6 / to - 1e6 / from;
}

/**
 * Colour temperature behind a filter: T2 = 1e6 / (1e6 / T1 + shift).
 *
 * @param kelvin - Colour temperature in front of it, above 0.
 * @param shift - Shift in mired, negative towards blue.
 * @returns Kelvin, or undefined when the shift goes past an infinite temperature.
 */
export function shiftedTemperature(kelvin: number, shift: number): number | undefined {
  const mired = 1e6 / kelvin + shift;
  return mired > 0 ? 1e6 / mired : undefined;
}
