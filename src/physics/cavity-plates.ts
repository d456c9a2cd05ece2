/** How much light leaves each of two plates that face each other, in lumens per square metre. */
export interface PlateRadiosity {
  /** Leaving the plate that emits: its own light and what it throws back. */
  readonly first: number;
  /** Leaving the plate opposite. */
  readonly second: number;
}

/**
 * Two matt plates, of which the first emits evenly: B1 = M / (1 - rho1 rho2 F F), B2 = rho2 F B1, each plate taken as
 * one patch. With F = 1 the plates are endless (the geometric series).
 *
 * @param exitance - Own light of the first plate in lumens per square metre.
 * @param first - Reflectance of the first plate, 0 to 1.
 * @param second - Reflectance of the second plate, 0 to 1.
 * @param viewFactor - View factor from either plate to the other, 0 to 1.
 * @returns The light leaving each, or undefined when nothing is lost and the light never ends.
 */
export function plateRadiosity(
  exitance: number,
  first: number,
  second: number,
  viewFactor: number,
): PlateRadiosity | undefined {
  const lost = 1 - first * second * viewFactor * viewFactor;
  if (lost <= 0) return undefined;
  return { first: exitance / lost, second: (second * viewFactor * exitance) / lost };
}
