/** Shadow edges of the sun on level ground. Angles in radians: the sun's altitude and its angular diameter. */

/**
 * Width on the ground, measured away from the edge, of the shadow of a level edge at a height that runs square to
 * the sun: h (cot(altitude - r) - cot(altitude + r)), r half the diameter. Undefined while part of the disc is below
 * the horizon.
 */
export function sunPenumbraOfLevelEdge(
  height: number,
  altitude: number,
  diameter: number,
): number | undefined {
  const r = diameter / 2;
  if (!(altitude - r > 0) || !(altitude + r < Math.PI)) return undefined;
  return (height * Math.sin(2 * r)) / (Math.sin(altitude - r) * Math.sin(altitude + r));
}

/**
 * Width across the shadow, on the ground, of the shadow of an upright edge, at a distance from its foot: the rim of
 * the sun spans half an azimuth of asin(sin r / cos altitude) to either side. Undefined where the disc reaches the
 * zenith.
 */
export function sunPenumbraOfUprightEdge(
  distanceFromFoot: number,
  altitude: number,
  diameter: number,
): number | undefined {
  const sine = Math.sin(diameter / 2) / Math.cos(altitude);
  if (!(sine >= 0) || !(sine < 1)) return undefined;
  return (2 * distanceFromFoot * sine) / Math.sqrt(1 - sine * sine);
}
