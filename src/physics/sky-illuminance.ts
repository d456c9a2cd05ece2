/**
 * Light of a clear sky, the sun itself left out, on open level ground: 0.8 + 15.5 sqrt(sin a) klx (IES RP-21,
 * J. IES 13:4 (1984) 381, from memory). An average of one climate.
 *
 * @param altitude - Of the sun, radians.
 * @returns Lux; 0 with the sun below the horizon.
 */
export function clearSkyIlluminance(altitude: number): number {
  const sine = Math.sin(altitude);
  return sine <= 0 ? 0 : 1000 * (0.8 + 15.5 * Math.sqrt(sine));
}

/**
 * Light of an overcast sky on open level ground: 0.3 + 21 sin a klx (same source; Krochmann and Seidl, Lighting Res.
 * Technol. 6 (1974) 165; both from memory). A mean over many skies: a single one gives half of it or twice.
 *
 * @param altitude - Of the hidden sun, radians.
 * @returns Lux; 0 with the sun below the horizon.
 */
export function overcastSkyIlluminance(altitude: number): number {
  const sine = Math.sin(altitude);
  return sine <= 0 ? 0 : 1000 * (0.3 + 21 * sine);
}
