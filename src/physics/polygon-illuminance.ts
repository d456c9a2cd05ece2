import type { Vec3 } from "../core/vector.js";
import { lambertVector } from "../math/lambert-polygon.js";
import { clipByPlane } from "../math/polygon.js";
import { dot, normalise } from "../math/vector.js";

/**
 * Illuminance (lx) from a flat polygon of one luminance (cd/m2) that shines to both sides, at a point on a receiver
 * that faces `normal` (any length), cut at the receiver's horizon. Undefined when the normal has no direction.
 *
 * Source: Lambert, Photometria (1760), polygon formula.
 */
export function polygonIlluminance(
  luminance: number,
  corners: readonly Vec3[],
  point: Vec3,
  normal: Vec3,
): number | undefined {
  const n = normalise(normal);
  if (n === undefined) return undefined;
  const seen = clipByPlane(corners, n, dot(n, point));
  return luminance * Math.abs(dot(lambertVector(seen, point), n));
}
