import type { Vec3 } from "../core/vector.js";
import { cross, dot } from "./vector.js";

/** A vector turned about a unit axis by an angle in radians, right-handed (Rodrigues' formula). */
export function rotateAbout(vector: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot(axis, vector) * (1 - c);
  const side = cross(axis, vector);
  return [
    vector[0] * c + side[0] * s + axis[0] * k,
    vector[1] * c + side[1] * s + axis[1] * k,
    vector[2] * c + side[2] * s + axis[2] * k,
  ];
}

/** Degrees to radians. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Radians to degrees. */
export function degrees(radiansValue: number): number {
  return (radiansValue * 180) / Math.PI;
}
