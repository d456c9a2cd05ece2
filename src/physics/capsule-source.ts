import type { Vec3 } from "../core/vector.js";
import { type CircleArc, clippedRegionVector } from "../math/circle-arc.js";
import { type LightVector, setVector } from "./light-vector.js";
import type { CapsuleSource, SphereSource } from "./source-shape.js";
import { sphereClippedVector, sphereSolidAngle, sphereVector } from "./sphere-source.js";

/** A capsule as a point sees it, in the plane of the point and the tube's axis. */
interface Sight {
  /** Unit vector along the axis. */
  readonly g: Vec3;
  /** Unit vector from the point square to the axis. */
  readonly e: Vec3;
  /** Distance of the point from the axis. */
  readonly rho: number;
  /** Places of the two end centres along the axis, seen from the foot of the perpendicular; z1 <= z2. */
  readonly z1: number;
  readonly z2: number;
}

/** What a point sees of a capsule: its side, one round end only, or nothing (the point is inside). */
function look(capsule: CapsuleSource, px: number, py: number, pz: number): Sight | SphereSource | undefined {
  const { from, to, radius } = capsule;
  const lx = to[0] - from[0];
  const ly = to[1] - from[1];
  const lz = to[2] - from[2];
  const size = Math.sqrt(lx * lx + ly * ly + lz * lz);
  if (!(size > 1e-12 * radius)) return { kind: "sphere", centre: from, radius };
  const gx = lx / size;
  const gy = ly / size;
  const gz = lz / size;
  const ax = from[0] - px;
  const ay = from[1] - py;
  const az = from[2] - pz;
  const z1 = ax * gx + ay * gy + az * gz;
  const ex = ax - z1 * gx;
  const ey = ay - z1 * gy;
  const ez = az - z1 * gz;
  const rho = Math.sqrt(ex * ex + ey * ey + ez * ez);
  const z2 = z1 + size;
  if (rho <= radius) {
    if (z1 > 0) return { kind: "sphere", centre: from, radius };
    return z2 < 0 ? { kind: "sphere", centre: to, radius } : undefined;
  }
  return { g: [gx, gy, gz], e: [ex / rho, ey / rho, ez / rho], rho, z1, z2 };
}

/**
 * The light vector of a uniform capsule at a point (sr per unit of luminance), horizon not considered; nothing
 * inside it. Closed form: the outline in directions is two arcs of circles (the round ends) and two arcs of great
 * circles (the sides of the tube), and each has an elementary contour integral.
 */
export function capsuleVector(
  capsule: CapsuleSource,
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  const sight = look(capsule, px, py, pz);
  if (sight === undefined) return setVector(out, 0, 0, 0);
  if ("kind" in sight) return sphereVector(sight, px, py, pz, out);
  const { e, g, rho, z1, z2 } = sight;
  const r = capsule.radius;
  const q = Math.sqrt((rho - r) * (rho + r));
  const d1 = Math.sqrt(rho * rho + z1 * z1);
  const d2 = Math.sqrt(rho * rho + z2 * z2);
  const end1 = (r * r * (Math.PI / 2 + Math.atan2(z1 * r, q * d1))) / (d1 * d1 * d1);
  const end2 = (r * r * (Math.PI / 2 - Math.atan2(z2 * r, q * d2))) / (d2 * d2 * d2);
  const sides = ((Math.atan2(z2, q) - Math.atan2(z1, q)) * r) / rho;
  const near = r * q;
  const across = sides + rho * (end1 + end2) + (near / rho) * (z2 / (d2 * d2) - z1 / (d1 * d1));
  const along = z1 * end1 + z2 * end2 + near * (1 / (d1 * d1) - 1 / (d2 * d2));
  return setVector(
    out,
    across * e[0] + along * g[0],
    across * e[1] + along * g[1],
    across * e[2] + along * g[2],
  );
}

/**
 * Solid angle of a capsule at a point outside it, in sr; 0 inside. The theorem of Gauss and Bonnet over the outline:
 * only the two round ends are curved.
 */
export function capsuleSolidAngle(capsule: CapsuleSource, px: number, py: number, pz: number): number {
  const sight = look(capsule, px, py, pz);
  if (sight === undefined) return 0;
  if ("kind" in sight) return sphereSolidAngle(sight, px, py, pz);
  const { rho, z1, z2 } = sight;
  const r = capsule.radius;
  const q2 = (rho - r) * (rho + r);
  const q = Math.sqrt(q2);
  const d1 = Math.sqrt(rho * rho + z1 * z1);
  const d2 = Math.sqrt(rho * rho + z2 * z2);
  const turn1 = Math.atan2(z1 * r, q * d1);
  const turn2 = Math.atan2(z2 * r, q * d2);
  const end1 = ((Math.PI + 2 * turn1) * r * r) / (d1 * (d1 + Math.sqrt(q2 + z1 * z1)));
  const end2 = ((Math.PI - 2 * turn2) * r * r) / (d2 * (d2 + Math.sqrt(q2 + z2 * z2)));
  return Math.max(0, end1 + end2 + 2 * (turn2 - turn1));
}

/**
 * The light vector of the part of a capsule on the side of a plane through the point where `m . direction >= 0`.
 * With the receiver's unit normal as m, its product with m is the horizon-clipped illuminance per luminance.
 */
export function capsuleClippedVector(
  capsule: CapsuleSource,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  out: LightVector,
): LightVector {
  const { from, to, radius } = capsule;
  const a = mx * (from[0] - px) + my * (from[1] - py) + mz * (from[2] - pz);
  const b = mx * (to[0] - px) + my * (to[1] - py) + mz * (to[2] - pz);
  if (a >= radius && b >= radius) return capsuleVector(capsule, px, py, pz, out);
  if (a <= -radius && b <= -radius) return setVector(out, 0, 0, 0);
  const sight = look(capsule, px, py, pz);
  if (sight === undefined) return setVector(out, 0, 0, 0);
  if ("kind" in sight) return sphereClippedVector(sight, px, py, pz, mx, my, mz, out);
  const part = clippedRegionVector(outline(sight, radius), [mx, my, mz]);
  return setVector(out, part[0], part[1], part[2]);
}

/** The outline of a capsule seen from the side, counter-clockwise about the line of sight. */
function outline(sight: Sight, r: number): readonly CircleArc[] {
  const { e, g, rho, z1, z2 } = sight;
  const f: Vec3 = [g[1] * e[2] - g[2] * e[1], g[2] * e[0] - g[0] * e[2], g[0] * e[1] - g[1] * e[0]];
  const cosine = r / rho;
  const sine = Math.sqrt((1 - cosine) * (1 + cosine));
  const q = rho * sine;
  const mix = (a: number, b: number, c: number): Vec3 => [
    a * e[0] + b * f[0] + c * g[0],
    a * e[1] + b * f[1] + c * g[1],
    a * e[2] + b * f[2] + c * g[2],
  ];
  const end = (z: number, from: number, to: number): CircleArc => {
    const d = Math.sqrt(rho * rho + z * z);
    const out = r / d;
    return {
      d: mix(rho / d, 0, z / d),
      u: f,
      v: mix(-z / d, 0, rho / d),
      along: Math.sqrt((1 - out) * (1 + out)),
      out,
      from,
      to,
    };
  };
  const up = Math.atan2(z2, q);
  const down = Math.atan2(z1, q);
  const turn1 = Math.atan2(z1 * r, q * Math.sqrt(rho * rho + z1 * z1));
  const turn2 = Math.atan2(z2 * r, q * Math.sqrt(rho * rho + z2 * z2));
  return [
    { d: mix(cosine, -sine, 0), u: mix(sine, cosine, 0), v: g, along: 0, out: 1, from: down, to: up },
    end(z2, turn2, Math.PI - turn2),
    {
      d: mix(cosine, sine, 0),
      u: mix(sine, -cosine, 0),
      v: mix(0, 0, -1),
      along: 0,
      out: 1,
      from: -up,
      to: -down,
    },
    end(z1, Math.PI - turn1, 2 * Math.PI + turn1),
  ];
}
