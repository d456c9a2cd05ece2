import { daysOfDayAndTime } from "../../core/utc.js";
import { degrees } from "../../math/rotation.js";
import type { NaturalLightValue } from "../../model/values.js";
import { sunDistance, sunPosition } from "../../physics/sun-position.js";
import { sunAngularDiameter } from "../../physics/sun-size.js";
import { dayOfYearOf } from "./day.js";

/** Where the sun of a wish stands; angles in deg. */
export interface SunPlace {
  /** Above the horizon as it is seen, lifted by a standard atmosphere where place and time are known. */
  readonly elevation: number;
  /** From north over east, where place and time are known. */
  readonly azimuth: number | null;
  /** Width of the disc. */
  readonly size: number;
  /** Of the year, 1 to 366, where known. */
  readonly day: number | null;
}

/** Width of the disc at the mean distance, deg. */
const MEAN_SIZE = degrees(sunAngularDiameter(1) ?? 0);

/** The sun that a wish names: at an elevation, or at a place and time. Null for another wish. */
export function sunPlace(wish: NaturalLightValue): SunPlace | null {
  if (wish.kind === "sunlight") {
    return { elevation: wish.elevation.value, azimuth: null, size: MEAN_SIZE, day: null };
  }
  if (wish.kind !== "sun_at") return null;
  const days = daysOfDayAndTime(wish.on, wish.time);
  if (days === undefined) return null;
  const { apparentAltitude, azimuth } = sunPosition(days, wish.latitude.value, wish.longitude.value);
  return {
    elevation: degrees(apparentAltitude),
    azimuth: degrees(azimuth),
    size: degrees(sunAngularDiameter(sunDistance(days)) ?? 0),
    day: dayOfYearOf(wish.on),
  };
}
