import { Body, Equator, GeoVector, Horizon, MakeTime, Observer } from "astronomy-engine";

const RADIANS = Math.PI / 180;

/** Where the sun stands in the sky of a place. */
export interface SunPosition {
  /** Angle of the disc's centre above the level horizon in radians, without refraction. */
  readonly altitude: number;
  /** The same as it is seen, lifted by the refraction of a standard atmosphere, in radians. */
  readonly apparentAltitude: number;
  /** Direction along the horizon in radians, from north over east, 0 to 2 pi. */
  readonly azimuth: number;
}

/**
 * The sun's altitude and azimuth for an observer at sea level, by a planetary theory (VSOP87, truncated) with
 * nutation, aberration and parallax; refraction as that program calls "normal". Good to about 0.001 degree
 * without refraction; refraction itself varies by more than that with the weather near the horizon.
 *
 * @param days - Days since 2000-01-01T12:00:00Z, as `daysSinceJ2000` gives them.
 * @param latitude - Degrees, north positive, -90 to 90.
 * @param longitude - Degrees, east positive, -180 to 180.
 */
export function sunPosition(days: number, latitude: number, longitude: number): SunPosition {
  const time = MakeTime(days);
  const observer = new Observer(latitude, longitude, 0);
  const place = Equator(Body.Sun, time, observer, true, true);
  const plain = Horizon(time, observer, place.ra, place.dec);
  const seen = Horizon(time, observer, place.ra, place.dec, "normal");
  return {
    altitude: plain.altitude * RADIANS,
    apparentAltitude: seen.altitude * RADIANS,
    azimuth: plain.azimuth * RADIANS,
  };
}

/**
 * Distance from the earth's centre to the sun's centre, from the same theory.
 *
 * @param days - Days since 2000-01-01T12:00:00Z.
 * @returns Astronomical units, 0.983 to 1.017.
 */
export function sunDistance(days: number): number {
  return GeoVector(Body.Sun, MakeTime(days), true).Length();
}
