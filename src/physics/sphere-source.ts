import type { Vec3 } from "../core/vector.js";
import { type CircleArc, clippedRegionVector } from "../math/circle-arc.js";
import { frameAround } from "../math/vector.js";
import { type LightVector, setVector } from "./light-vector.js";
import type { SphereSource } from "./source-shape.js";

/**
 * The light vector of a uniform sphere at a point (sr per unit of luminance), horizon not considered: pi (R/d)^2
 * towards the centre. A point inside the sphere gets nothing: the surface emits outwards.
 */
export function sphereVector(
  sphere: SphereSource,
  px: number,
  py: number,
  pz: number,
  out: LightVector,
): LightVector {
  const x = sphere.centre[0] - px;
  const y = sphere.centre[1] - py;
  const z = sphere.centre[2] - pz;
  const d2 = x * x + y * y + z * z;
  const r2 = sphere.radius * sphere.radius;
  if (!(d2 > r2)) return setVector(out, 0, 0, 0);
  const k = (Math.PI * r2) / (d2 * Math.sqrt(d2));
  return setVector(out, k * x, k * y, k * z);
}

/** Solid angle of a sphere at a point outside it, in sr: 2 pi (1 - sqrt(1 - (R/d)^2)); 0 inside. */
export function sphereSolidAngle(sphere: SphereSource, px: number, py: number, pz: number): number {
  const x = sphere.centre[0] - px;
  const y = sphere.centre[1] - py;
  const z = sphere.centre[2] - pz;
  const d2 = x * x + y * y + z * z;
  const s2 = (sphere.radius * sphere.radius) / d2;
  return s2 < 1 ? (2 * Math.PI * s2) / (1 + Math.sqrt(1 - s2)) : 0;
}

/**
 * The light vector of the part of a sphere on the side of a plane through the point where `m . direction >= 0`.
 * With the receiver's unit normal as m, its product with m is the horizon-clipped illuminance per luminance. Closed
 * form: the seen outline is one circle of directions.
 */
export function sphereClippedVector(
  sphere: SphereSource,
  px: number,
  py: number,
  pz: number,
  mx: number,
  my: number,
  mz: number,
  out: LightVector,
): LightVector {
  const x = sphere.centre[0] - px;
  const y = sphere.centre[1] - py;
  const z = sphere.centre[2] - pz;
  const d2 = x * x + y * y + z * z;
  const r2 = sphere.radius * sphere.radius;
  const above = mx * x + my * y + mz * z;
  if (above >= sphere.radius) return sphereVector(sphere, px, py, pz, out);
  if (!(d2 > r2) || above <= -sphere.radius) return setVector(out, 0, 0, 0);
  const d = Math.sqrt(d2);
  const sight: Vec3 = [x / d, y / d, z / d];
  const part = clippedRegionVector([wholeCircle(sight, sphere.radius / d)], [mx, my, mz]);
  return setVector(out, part[0], part[1], part[2]);
}

/** The circle of directions with the given unit axis and sine of its half-angle. */
function wholeCircle(axis: Vec3, sine: number): CircleArc {
  const [u, v] = frameAround(axis);
  return { d: axis, u, v, along: Math.sqrt((1 - sine) * (1 + sine)), out: sine, from: 0, to: 2 * Math.PI };
}
