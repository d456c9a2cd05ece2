/**
 * Length of the shadow that an upright object throws on level ground: h / tan(altitude) (plane geometry).
 *
 * @param height - Height of the object in metres, 0 or more.
 * @param altitude - Altitude of the light in radians.
 * @returns Metres; 0 under a light straight above; undefined when the light is at or below the horizon and the shadow has no end.
 */
export function groundShadowLength(height: number, altitude: number): number | undefined {
  if (altitude <= 0 || altitude >= Math.PI) return undefined;
  return altitude >= Math.PI / 2 ? 0 : height / Math.tan(altitude);
}
