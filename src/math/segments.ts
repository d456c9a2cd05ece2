import type { Vec3 } from "../core/vector.js";

/**
 * The square of the least distance between two lines from end to end (Ericson, Real-Time Collision Detection, 2005, 5.1.9;
 * from memory).
 */
export function segmentsApart2(p: Vec3, q: Vec3, a: Vec3, b: Vec3): number {
  const d1x = q[0] - p[0];
  const d1y = q[1] - p[1];
  const d1z = q[2] - p[2];
  const d2x = b[0] - a[0];
  const d2y = b[1] - a[1];
  const d2z = b[2] - a[2];
  const rx = p[0] - a[0];
  const ry = p[1] - a[1];
  const rz = p[2] - a[2];
  const e1 = d1x * d1x + d1y * d1y + d1z * d1z;
  const e2 = d2x * d2x + d2y * d2y + d2z * d2z;
  const f = d2x * rx + d2y * ry + d2z * rz;
  const c = d1x * rx + d1y * ry + d1z * rz;
  let s = 0;
  let t = 0;
  if (e1 > 0 && e2 > 0) {
    const m = d1x * d2x + d1y * d2y + d1z * d2z;
    const flat = e1 * e2 - m * m;
    s = flat > 0 ? clamp((m * f - c * e2) / flat) : 0;
    t = (m * s + f) / e2;
    if (t < 0) {
      t = 0;
      s = clamp(-c / e1);
    } else if (t > 1) {
      t = 1;
      s = clamp((m - c) / e1);
    }
  } else if (e1 > 0) s = clamp(-c / e1);
  else if (e2 > 0) t = clamp(f / e2);
  const x = rx + s * d1x - t * d2x;
  const y = ry + s * d1y - t * d2y;
  const z = rz + s * d1z - t * d2z;
  return x * x + y * y + z * z;
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share));
