/**
 * Width of a shadow's edge on a surface, from no light to full light, by straight rays: D the extent of the source
 * across the edge, a from the source to the edge, b from the edge to the surface along the axis. Any one unit of
 * length; the result is in the same one.
 */

/** A flat source square to the axis and a surface parallel to it: D b / a. */
export function planarPenumbra(extent: number, sourceToEdge: number, edgeToReceiver: number): number {
  return (extent * edgeToReceiver) / sourceToEdge;
}

/** A sphere of radius R: 2 b R / sqrt(a^2 - R^2), the tangent cone; undefined with the edge inside the sphere. */
export function spherePenumbra(
  radius: number,
  sourceToEdge: number,
  edgeToReceiver: number,
): number | undefined {
  const square = (sourceToEdge - radius) * (sourceToEdge + radius);
  return square > 0 ? (2 * edgeToReceiver * radius) / Math.sqrt(square) : undefined;
}

/**
 * A flat source square to the axis and a surface tilted by `tilt` radians about an axis parallel to the edge; b is
 * measured along the axis. Undefined where an outer ray runs past the surface: the edge then has no end.
 */
export function obliquePenumbra(
  extent: number,
  sourceToEdge: number,
  edgeToReceiver: number,
  tilt: number,
): number | undefined {
  return raysOnTiltedSurface(
    Math.atan2(-extent / 2, sourceToEdge),
    Math.atan2(extent / 2, sourceToEdge),
    edgeToReceiver,
    tilt,
  );
}

/**
 * The stretch between the places where two rays through the edge, at angles from the axis in radians, meet a surface
 * at a distance along the axis that is tilted about an axis parallel to the edge.
 */
export function raysOnTiltedSurface(
  lowAngle: number,
  highAngle: number,
  edgeToReceiver: number,
  tilt: number,
): number | undefined {
  const low = Math.cos(lowAngle + tilt);
  const high = Math.cos(highAngle + tilt);
  if (!(low > 1e-12) || !(high > 1e-12)) return undefined;
  return edgeToReceiver * Math.abs(Math.sin(highAngle) / high - Math.sin(lowAngle) / low);
}

/**
 * How far the full shadow of a round thing reaches behind it: a d / (D - d), d its diameter, D that of the source.
 * Undefined for a source no larger than the thing: the full shadow has no end.
 */
export function umbraLength(
  sourceDiameter: number,
  occluderDiameter: number,
  sourceToOccluder: number,
): number | undefined {
  return sourceDiameter > occluderDiameter
    ? (sourceToOccluder * occluderDiameter) / (sourceDiameter - occluderDiameter)
    : undefined;
}
