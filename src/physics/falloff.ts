import { exp2 } from "../core/exp2.js";

/** Stops lost from a near to a far distance from a small lamp, inverse square: 2 log2(far / near); + is darker. */
export function pointFalloff(near: number, far: number): number {
  return 2 * Math.log2(far / near);
}

/** Distance at which a small lamp is so many stops brighter (+) or darker (-): d 2^(-stops / 2). */
export function distanceForStops(distance: number, stopsBrighter: number): number | undefined {
  const result = distance * exp2(-stopsBrighter / 2);
  return Number.isFinite(result) && result > 0 ? result : undefined;
}

/** Stops lost on the axis of a uniform disc: log2((R^2 + far^2) / (R^2 + near^2)); less than from a small lamp. */
export function discFalloff(radius: number, near: number, far: number): number {
  return Math.log2((radius * radius + far * far) / (radius * radius + near * near));
}

/** Stops lost across a subject of some depth whose near side is at a distance from a small lamp. */
export function depthFalloff(distance: number, depth: number): number {
  return pointFalloff(distance, distance + depth);
}
