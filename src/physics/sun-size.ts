/** Nominal radius of the sun in kilometres (IAU 2015 Resolution B3). */
export const SUN_RADIUS_KM = 695_700;

/** The astronomical unit in kilometres, exact (IAU 2012 Resolution B2). */
export const ASTRONOMICAL_UNIT_KM = 149_597_870.7;

/**
 * Full angle under which the sun's disc is seen: theta = 2 asin(Rs / r), radius and unit as fixed by the IAU.
 *
 * @param distanceAu - Distance to the sun's centre in astronomical units, above the sun's radius; 1 gives the mean size.
 * @returns Angle in radians (0.0093009 at 1 au), or undefined within the sun.
 */
export function sunAngularDiameter(distanceAu: number): number | undefined {
  const sine = SUN_RADIUS_KM / (distanceAu * ASTRONOMICAL_UNIT_KM);
  return sine > 0 && sine <= 1 ? 2 * Math.asin(sine) : undefined;
}
