import type { Vec3 } from "../../core/vector.js";
import { degrees } from "../../math/rotation.js";
import { normalise, subtract } from "../../math/vector.js";

/** The length along the floor between two points, in metres. */
export function alongFloor(a: Vec3, b: Vec3): number {
  const x = a[0] - b[0];
  const y = a[1] - b[1];
  return Math.sqrt(x * x + y * y);
}

/** Angle of `to` above the horizontal of `from`, in degrees. */
export function elevationOf(from: Vec3, to: Vec3): number {
  return degrees(Math.atan2(to[2] - from[2], alongFloor(from, to)));
}

/**
 * The side angle of `to` seen from `from`, in degrees from the direction towards the camera's side (-y), + to
 * camera-right. Null where `to` stands straight above or below.
 */
export function bearingOf(from: Vec3, to: Vec3): number | null {
  if (alongFloor(from, to) < 1e-9) return null;
  return plainZero(degrees(Math.atan2(to[0] - from[0], from[1] - to[1])));
}

/** The unit vector from one point to another; null where they are the same. */
export function directionTo(from: Vec3, to: Vec3): Vec3 | null {
  return normalise(subtract(to, from)) ?? null;
}

/** The point at a bearing (deg, + to camera-right) and a floor distance (m) from another, at a height. */
export function pointAt(from: Vec3, bearing: number, floorDistance: number, height: number): Vec3 {
  const angle = (bearing * Math.PI) / 180;
  return [from[0] + floorDistance * Math.sin(angle), from[1] - floorDistance * Math.cos(angle), height];
}

/** Takes the sign off a zero. */
export function plainZero(value: number): number {
  return value === 0 ? 0 : value;
}
