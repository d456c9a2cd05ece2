import type { Vec3 } from "../core/vector.js";

/**
 * Signed solid angle (sr) of a triangle given by its three sight lines, which need not be of unit length: positive
 * when a, b, c run counter-clockwise about the line of sight.
 *
 * Source: van Oosterom and Strackee, IEEE Trans. Biomed. Eng. BME-30 (1983) 125.
 */
export function triangleSolidAngle(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
): number {
  const a = Math.sqrt(ax * ax + ay * ay + az * az);
  const b = Math.sqrt(bx * bx + by * by + bz * bz);
  const c = Math.sqrt(cx * cx + cy * cy + cz * cz);
  // The volume is taken from differences with a, so that a distant small triangle keeps its digits.
  const ux = bx - ax;
  const uy = by - ay;
  const uz = bz - az;
  const vx = cx - ax;
  const vy = cy - ay;
  const vz = cz - az;
  const volume = ax * (uy * vz - uz * vy) + ay * (uz * vx - ux * vz) + az * (ux * vy - uy * vx);
  const ab = ax * bx + ay * by + az * bz;
  const bc = bx * cx + by * cy + bz * cz;
  const ca = cx * ax + cy * ay + cz * az;
  return 2 * Math.atan2(volume, a * b * c + ab * c + bc * a + ca * b);
}

/** Signed solid angle (sr) of a flat polygon seen from a point: the fan of its triangles. */
export function polygonSolidAngle(corners: readonly Vec3[], point: Vec3): number {
  const first = corners[0];
  if (first === undefined) return 0;
  let sum = 0;
  for (let i = 2; i < corners.length; i++) {
    const b = corners[i - 1] as Vec3;
    const c = corners[i] as Vec3;
    sum += triangleSolidAngle(
      first[0] - point[0],
      first[1] - point[1],
      first[2] - point[2],
      b[0] - point[0],
      b[1] - point[1],
      b[2] - point[2],
      c[0] - point[0],
      c[1] - point[1],
      c[2] - point[2],
    );
  }
  return sum;
}
