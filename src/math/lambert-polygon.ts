import type { Vec3 } from "../core/vector.js";

/**
 * Lambert's sum for a polygon seen from a point, as a vector: half the sum over the edges of the angle that the edge
 * subtends times the unit normal of the plane through the edge and the point. Its product with a receiver's normal
 * is the projected solid angle when all corners lie above the receiver's horizon. The vector points
 * away from the polygon when the corners run counter-clockwise as seen from the point, towards it when clockwise.
 *
 * Source: Lambert, Photometria (1760); vector form as in Arvo, Analytic Methods for Simulated Light Transport (1995).
 */
export function lambertVector(corners: readonly Vec3[], point: Vec3): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  const n = corners.length;
  const last = corners[n - 1];
  if (last === undefined) return [0, 0, 0];
  let ax = last[0] - point[0];
  let ay = last[1] - point[1];
  let az = last[2] - point[2];
  let before = last;
  for (let i = 0; i < n; i++) {
    const corner = corners[i] as Vec3;
    const bx = corner[0] - point[0];
    const by = corner[1] - point[1];
    const bz = corner[2] - point[2];
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
  return [x / 2, y / 2, z / 2];
}

/**
 * The factor that turns the vector product of an edge's two sight lines into angle times unit normal: the angle
 * divided by the product's length. 0 when the edge is seen end-on or passes through the point.
 */
export function edgeWeight(cx: number, cy: number, cz: number, dotProduct: number): number {
  const s = Math.sqrt(cx * cx + cy * cy + cz * cz);
  return s > 0 ? Math.atan2(s, dotProduct) / s : 0;
}
