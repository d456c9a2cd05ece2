import type { Vec3 } from "../core/vector.js";
import { edgeWeight } from "../math/lambert-polygon.js";
import { clipByPlane } from "../math/polygon.js";
import { triangleSolidAngle } from "../math/solid-angle.js";
import { type LightVector, setVector } from "./light-vector.js";
import type { PolygonSource } from "./source-shape.js";

/** Whether a point lies in front of a flat polygon. */
function inFront(source: PolygonSource, px: number, py: number, pz: number): boolean {
  const corner = source.corners[0];
  if (corner === undefined) return false;
  const n = source.normal;
  return (px - corner[0]) * n[0] + (py - corner[1]) * n[1] + (pz - corner[2]) * n[2] > 0;
}

/**
 * The light vector of a uniform polygon at a point (sr per unit of luminance), horizon not considered; nothing
 * behind the polygon.
 *
 * Source: Lambert, Photometria (1760), polygon formula.
 */
export function polygonVector(
  source: PolygonSource,
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  return inFront(source, px, py, pz)
    ? cornersVector(source.corners, px, py, pz, out)
    : setVector(out, 0, 0, 0);
}

/** Lambert's sum over corners that run counter-clockwise as seen from the point. */
function cornersVector(
  corners: readonly Vec3[],
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  const n = corners.length;
  if (n < 3) return setVector(out, 0, 0, 0);
  const last = corners[n - 1] as Vec3;
  let x = 0;
  let y = 0;
  let z = 0;
  let ax = last[0] - px;
  let ay = last[1] - py;
  let az = last[2] - pz;
  let before = last;
  for (let i = 0; i < n; i++) {
    const corner = corners[i] as Vec3;
    const bx = corner[0] - px;
    const by = corner[1] - py;
    const bz = corner[2] - pz;
    // The product with the edge itself keeps the digits of a small polygon far away.
    const ex = corner[0] - before[0];
    const ey = corner[1] - before[1];
    const ez = corner[2] - before[2];
    const cx = ay * ez - az * ey;
    const cy = az * ex - ax * ez;
    const cz = ax * ey - ay * ex;
    const w = edgeWeight(cx, cy, cz, ax * bx + ay * by + az * bz);
    x += cx * w;
    y += cy * w;
    z += cz * w;
    ax = bx;
    ay = by;
    az = bz;
    before = corner;
  }
  return setVector(out, -x / 2, -y / 2, -z / 2);
}

/** Solid angle of a polygon at a point, in sr; 0 behind it. Van Oosterom and Strackee's formula, triangle by triangle. */
export function polygonSolidAngle(source: PolygonSource, px: number, py: number, pz: number): number {
  if (!inFront(source, px, py, pz)) return 0;
  const corners = source.corners;
  const first = corners[0] as Vec3;
  const ax = first[0] - px;
  const ay = first[1] - py;
  const az = first[2] - pz;
  let sum = 0;
  for (let i = 2; i < corners.length; i++) {
    const b = corners[i - 1] as Vec3;
    const c = corners[i] as Vec3;
    sum += triangleSolidAngle(ax, ay, az, b[0] - px, b[1] - py, b[2] - pz, c[0] - px, c[1] - py, c[2] - pz);
  }
  return Math.abs(sum);
}

/**
 * The light vector of the part of a polygon on the side of a plane through the point where `m . direction >= 0`.
 * With the receiver's normal as m, its product with m is the horizon-clipped illuminance per luminance.
 */
export function polygonClippedVector(
  source: PolygonSource,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  out: LightVector,
): LightVector {
  if (!inFront(source, px, py, pz)) return setVector(out, 0, 0, 0);
  const kept = clipByPlane(source.corners, [mx, my, mz], mx * px + my * py + mz * pz);
  return cornersVector(kept, px, py, pz, out);
}
