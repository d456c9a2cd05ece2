/**
 * Elevation in degrees and colour of direct sunlight through clear air in mired. Common practice, no source: handbooks
 * and tables of photographers give 2000 to 3000 K at the horizon and 4900 to 5800 K at noon.
 */
const STEPS: readonly (readonly [elevation: number, mired: number])[] = [
  [0, 1e6 / 2500],
  [10, 1e6 / 3500],
  [20, 1e6 / 4000],
  [30, 1e6 / 4500],
  [60, 1e6 / 5300],
  [90, 1e6 / 5500],
];

/** How far the colour of the sun may be off on a clear day, mired to either side (common practice, no source). */
export const SUN_COLOUR_SPREAD = 25;

/**
 * Colour temperature of direct sunlight at an elevation, even steps in mired between the rows of a table.
 *
 * @param elevation - Degrees above the horizon; below 0 the sun gives no light.
 * @returns Kelvin, 2500 to 5500; undefined below the horizon.
 */
export function sunColour(elevation: number): number | undefined {
  if (!(elevation >= 0 && elevation <= 90)) return undefined;
  for (let i = 1; i < STEPS.length; i += 1) {
    const [low, from] = STEPS[i - 1] as readonly [number, number];
    const [high, to] = STEPS[i] as readonly [number, number];
    if (elevation <= high) return 1e6 / (from + ((to - from) * (elevation - low)) / (high - low));
  }
  return undefined;
}
