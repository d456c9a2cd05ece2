import { cel, ellipticK } from "../math/elliptic.js";
import { edgeWeight } from "../math/lambert-polygon.js";
import { type LightVector, setVector } from "./light-vector.js";
import type { DiscSource } from "./source-shape.js";

/** A point nearer to the disc's plane than this share of the radius counts as in it, where the disc is seen edge-on. */
const IN_PLANE = 1e-12;

/**
 * The light vector of a uniform disc at a point (sr per unit of luminance), horizon not considered; nothing behind
 * the disc. Closed form: axial and radial part.
 *
 * Source: Foote, Bull. Bur. Stand. 12 (1915) 583; the radial part as in Howell's catalogue of view factors, element
 * perpendicular to the disc. Both are written without differences of near-equal numbers.
 */
export function discVector(
  disc: DiscSource,
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  const [nx, ny, nz] = disc.normal;
  const qx = px - disc.centre[0];
  const qy = py - disc.centre[1];
  const qz = pz - disc.centre[2];
  const h = qx * nx + qy * ny + qz * nz;
  if (!(h > IN_PLANE * disc.radius)) return setVector(out, 0, 0, 0);
  const sx = qx - h * nx;
  const sy = qy - h * ny;
  const sz = qz - h * nz;
  const side2 = sx * sx + sy * sy + sz * sz;
  const side = Math.sqrt(side2);
  const radius = disc.radius;
  const h2 = h * h;
  const r2 = radius * radius;
  const d2 = h2 + side2;
  const s = Math.sqrt((h2 + (side - radius) * (side - radius)) * (h2 + (side + radius) * (side + radius)));
  if (!(s > 0)) return setVector(out, 0, 0, 0);
  const axial =
    d2 >= r2 ? (2 * Math.PI * r2 * h2) / (s * (s + d2 - r2)) : (Math.PI * (s + r2 - d2)) / (2 * s);
  const radial = (2 * Math.PI * h * r2) / (s * (d2 + r2 + s));
  return setVector(out, -axial * nx - radial * sx, -axial * ny - radial * sy, -axial * nz - radial * sz);
}

/**
 * Solid angle of a disc at a point, in sr; 0 behind it. Far away (radius up to a quarter of the distance) the series
 * in Legendre polynomials, which keeps all digits; nearer, the closed form in elliptic integrals.
 *
 * Source: Paxton, Rev. Sci. Instrum. 30 (1959) 254.
 */
export function discSolidAngle(disc: DiscSource, px: number, py: number, pz: number): number {
  const [nx, ny, nz] = disc.normal;
  const qx = px - disc.centre[0];
  const qy = py - disc.centre[1];
  const qz = pz - disc.centre[2];
  const h = qx * nx + qy * ny + qz * nz;
  if (!(h > IN_PLANE * disc.radius)) return 0;
  const d2 = qx * qx + qy * qy + qz * qz;
  const radius = disc.radius;
  const x2 = (radius * radius) / d2;
  if (x2 <= 1 / 16) return farSolidAngle(x2, h / Math.sqrt(d2));
  const sx = qx - h * nx;
  const sy = qy - h * ny;
  const sz = qz - h * nz;
  const side = Math.sqrt(sx * sx + sy * sy + sz * sz);
  return nearSolidAngle(radius, h, side);
}

/** The series: 2 pi times the sum of c_k x^2k P_(2k-1)(cos), with c_k from the expansion of 1 - 1/sqrt(1 + x^2). */
function farSolidAngle(x2: number, cosine: number): number {
  let below = 1;
  let odd = cosine;
  let factor = x2 / 2;
  let sum = factor * odd;
  for (let k = 2; k <= 14; k++) {
    const n = 2 * k - 2;
    const even = ((2 * n - 1) * cosine * odd - (n - 1) * below) / n;
    const next = ((2 * n + 1) * cosine * even - n * odd) / (n + 1);
    factor *= (-x2 * (2 * k - 1)) / (2 * k);
    sum += factor * next;
    if (factor < 1e-18 && factor > -1e-18) break;
    below = even;
    odd = next;
  }
  return 2 * Math.PI * sum;
}

function nearSolidAngle(radius: number, h: number, side: number): number {
  const far2 = h * h + (radius + side) * (radius + side);
  const far = Math.sqrt(far2);
  const gap = radius - side;
  const kc2 = (h * h + gap * gap) / far2;
  if (Math.abs(gap) <= 1e-13 * radius) return Math.PI - ((2 * h) / far) * ellipticK(1 - kc2);
  const g = gap / (radius + side);
  const curve = ((2 * h) / far) * cel(Math.sqrt(kc2), g * g, 1 + g, g * (1 + g));
  return Math.max(0, (side < radius ? 2 * Math.PI : 0) - curve);
}

/**
 * The light vector of the part of a disc on the side of a plane through the point where `m . direction >= 0`. With
 * the receiver's normal as m, its product with m is the horizon-clipped illuminance per luminance. Closed form: the
 * contour of the part is an arc of the rim and a chord, and Lambert's contour integral over an arc is elementary.
 */
export function discClippedVector(
  disc: DiscSource,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  out: LightVector,
): LightVector {
  const [nx, ny, nz] = disc.normal;
  const qx = disc.centre[0] - px;
  const qy = disc.centre[1] - py;
  const qz = disc.centre[2] - pz;
  const h = -(qx * nx + qy * ny + qz * nz);
  if (!(h > IN_PLANE * disc.radius)) return setVector(out, 0, 0, 0);
  const radius = disc.radius;
  // A frame in the disc's plane: u from the foot of the perpendicular towards the centre, v = n x u.
  let ux = qx + h * nx;
  let uy = qy + h * ny;
  let uz = qz + h * nz;
  let side = Math.sqrt(ux * ux + uy * uy + uz * uz);
  if (side > 1e-14 * (h + radius)) {
    ux /= side;
    uy /= side;
    uz /= side;
  } else {
    side = 0;
    const flat = Math.sqrt(nx * nx + ny * ny);
    ux = flat > 1e-12 ? -ny / flat : 1;
    uy = flat > 1e-12 ? nx / flat : 0;
    uz = 0;
  }
  const vx = ny * uz - nz * uy;
  const vy = nz * ux - nx * uz;
  const vz = nx * uy - ny * ux;
  const middle = mx * qx + my * qy + mz * qz;
  const mu = radius * (mx * ux + my * uy + mz * uz);
  const mv = radius * (mx * vx + my * vy + mz * vz);
  const swing = Math.sqrt(mu * mu + mv * mv);
  if (middle >= swing) return discVector(disc, px, py, pz, out);
  if (middle <= -swing) return setVector(out, 0, 0, 0);
  const turn = Math.atan2(mv, mu);
  const open = Math.acos(Math.max(-1, Math.min(1, -middle / swing)));
  const start = turn - open;
  const end = turn + open;
  const c1 = Math.cos(start);
  const s1 = Math.sin(start);
  const c2 = Math.cos(end);
  const s2 = Math.sin(end);

  // Integrals of 1, cos, sin over (p + q cos) along the arc, in forms that hold for q = 0 and next to the rim too:
  // 1 + cos is written as 2 cos^2 of half the angle.
  const gap2 = h * h + (side - radius) * (side - radius);
  const p = h * h + side * side + radius * radius;
  const q = 2 * radius * side;
  const root = Math.sqrt(gap2 * (h * h + (side + radius) * (side + radius)));
  const k = q / (p + root);
  const rest = (gap2 + root) / (p + root);
  const near1 = 2 * Math.cos(start / 2) * Math.cos(start / 2);
  const near2 = 2 * Math.cos(end / 2) * Math.cos(end / 2);
  const bend = atanOver(k, s2 / (rest + k * near2)) - atanOver(k, s1 / (rest + k * near1));
  const one = (2 * open - 2 * k * bend) / root;
  const cosine = (-k * 2 * open) / root + ((2 * p) / (root * (p + root))) * bend;
  const rim1 = gap2 + q * near1;
  const sine = (-(c2 - c1) / rim1) * logOver((q * (c2 - c1)) / rim1, (gap2 + q * near2) / rim1);

  const along = radius * h * cosine;
  const across = radius * h * sine;
  const axial = radius * radius * one + radius * side * cosine;
  // The chord back from the end of the arc to its start.
  const ax = qx + radius * (c2 * ux + s2 * vx);
  const ay = qy + radius * (c2 * uy + s2 * vy);
  const az = qz + radius * (c2 * uz + s2 * vz);
  const bx = qx + radius * (c1 * ux + s1 * vx);
  const by = qy + radius * (c1 * uy + s1 * vy);
  const bz = qz + radius * (c1 * uz + s1 * vz);
  const ex = ay * bz - az * by;
  const ey = az * bx - ax * bz;
  const ez = ax * by - ay * bx;
  const w = edgeWeight(ex, ey, ez, ax * bx + ay * by + az * bz);
  return setVector(
    out,
    -(along * ux + across * vx + axial * nx + w * ex) / 2,
    -(along * uy + across * vy + axial * ny + w * ey) / 2,
    -(along * uz + across * vz + axial * nz + w * ez) / 2,
  );
}

/** atan(k y) / k, which is y for k = 0. */
function atanOver(k: number, y: number): number {
  const x = k * y;
  return Math.abs(x) > 1e-6 ? Math.atan(x) / k : y * (1 - (x * x) / 3);
}

/** log(1 + x) / x, which is 1 for x = 0; `ratio` is 1 + x with all its digits. */
function logOver(x: number, ratio: number): number {
  if (Math.abs(x) < 1e-8) return 1 - x / 2;
  return (x < -0.5 ? Math.log(ratio) : Math.log1p(x)) / x;
}
