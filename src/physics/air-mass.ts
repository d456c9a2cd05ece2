import { power } from "../math/power.js";

/**
 * How much air lies before the sun, over what lies overhead: 1 / (sin h + 0.50572 (h + 6.07995)^-1.6364), h in degrees
 * (Kasten and Young, Appl. Opt. 28 (1989) 4735), which follows the bend of rays through air that curves with the earth;
 * 1 / sin h stands for flat air and is 1 % above it at 15 degrees, 11 % at 5, and without end at the horizon.
 *
 * @param altitude - Of the sun as it is seen, refraction included, in radians.
 * @returns 1 overhead to 38 at the horizon; undefined below it.
 */
export function relativeAirMass(altitude: number): number | undefined {
  if (!(altitude >= 0)) return undefined;
  const degrees = (altitude * 180) / Math.PI;
  return 1 / (Math.sin(altitude) + 0.505_72 * power(degrees + 6.079_95, -1.6364));
}
