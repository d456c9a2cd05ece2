/** Illuminance from the sun outside the atmosphere at its mean distance, in lux (IES Lighting Handbook; IES RP-21). */
export const SOLAR_ILLUMINANCE_LX = 127_500;

/** Extinction for a clear sky (IES RP-21). */
export const EXTINCTION_CLEAR = 0.21;
/** Extinction for a partly cloudy sky (IES RP-21). */
export const EXTINCTION_PARTLY_CLOUDY = 0.8;

/**
 * Illuminance outside the atmosphere on a day: Ext = 127.5 klx (1 + 0.034 cos(2 pi (J - 2) / 365))
 * (IES Lighting Handbook; J. IES 13:4 (1984) 381).
 *
 * @param day - Day of the year, 1 to 366.
 * @returns Lux on a plane square to the sun.
 */
export function extraterrestrialIlluminance(day: number): number {
  return SOLAR_ILLUMINANCE_LX * (1 + 0.034 * Math.cos((2 * Math.PI * (day - 2)) / 365));
}

/**
 * Direct sunlight on a plane square to the sun: Edn = Ext exp(-c / sin(altitude)), same source.
 *
 * @param day - Day of the year, 1 to 366.
 * @param altitude - Altitude of the sun in radians; at or below the horizon the result is 0.
 * @param extinction - c: 0.21 clear, 0.80 partly cloudy; 0 or more.
 * @returns Lux.
 */
export function directNormalSun(day: number, altitude: number, extinction: number): number {
  const sine = Math.sin(altitude);
  return sine <= 0 ? 0 : extraterrestrialIlluminance(day) * Math.exp(-extinction / sine);
}

/**
 * Direct sunlight on level ground: the value square to the sun times the sine of the altitude.
 *
 * @param day - Day of the year, 1 to 366.
 * @param altitude - Altitude of the sun in radians; at or below the horizon the result is 0.
 * @param extinction - c: 0.21 clear, 0.80 partly cloudy; 0 or more.
 * @returns Lux.
 */
export function directHorizontalSun(day: number, altitude: number, extinction: number): number {
  return directNormalSun(day, altitude, extinction) * Math.max(0, Math.sin(altitude));
}
