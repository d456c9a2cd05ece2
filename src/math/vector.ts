import type { Vec3 } from "../core/vector.js";

/** Sum of two vectors. */
export function add(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** The vector from `b` to `a`. */
export function subtract(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** A vector stretched by a factor. */
export function scale(a: Vec3, factor: number): Vec3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

/** `a + factor * b`. */
export function addScaled(a: Vec3, b: Vec3, factor: number): Vec3 {
  return [a[0] + b[0] * factor, a[1] + b[1] * factor, a[2] + b[2] * factor];
}

/** Scalar product. */
export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Vector product, right-handed. */
export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length of a vector. */
export function length(a: Vec3): number {
  return Math.sqrt(dot(a, a));
}

/** Distance between two points. */
export function distance(a: Vec3, b: Vec3): number {
  return length(subtract(a, b));
}

/** The vector of length 1 in the same direction; undefined for a vector without a direction. */
export function normalise(a: Vec3): Vec3 | undefined {
  const size = length(a);
  return size > 0 && size < Number.POSITIVE_INFINITY ? scale(a, 1 / size) : undefined;
}

/** The point at a share `t` of the way from `a` (0) to `b` (1). */
export function between(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** Angle between two vectors in radians, 0 to pi; exact for small and for nearly opposite directions too. */
export function angleBetween(a: Vec3, b: Vec3): number {
  return Math.atan2(length(cross(a, b)), dot(a, b));
}

/**
 * Two unit vectors that make a right-handed frame with the unit vector `n`: `u x v = n`. For a vertical `n` the
 * first one is x; otherwise it is horizontal.
 */
export function frameAround(n: Vec3): readonly [u: Vec3, v: Vec3] {
  const horizontal = Math.sqrt(n[0] * n[0] + n[1] * n[1]);
  const u: Vec3 = horizontal > 1e-12 ? [-n[1] / horizontal, n[0] / horizontal, 0] : [1, 0, 0];
  return [u, cross(n, u)];
}
