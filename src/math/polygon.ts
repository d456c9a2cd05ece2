import type { Vec3 } from "../core/vector.js";
import { length, scale } from "./vector.js";

/**
 * The area vector of a flat polygon: its length is the area, its direction the normal about which the corners run
 * counter-clockwise (Newell's sum).
 */
export function areaVector(corners: readonly Vec3[]): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  let previous = corners[corners.length - 1];
  for (const corner of corners) {
    if (previous !== undefined) {
      x += previous[1] * corner[2] - previous[2] * corner[1];
      y += previous[2] * corner[0] - previous[0] * corner[2];
      z += previous[0] * corner[1] - previous[1] * corner[0];
    }
    previous = corner;
  }
  return [x / 2, y / 2, z / 2];
}

/** Area of a flat polygon, in square metres for corners in metres. */
export function polygonArea(corners: readonly Vec3[]): number {
  return length(areaVector(corners));
}

/** The mean of the corners; the centre of a rectangle or regular polygon. Undefined without corners. */
export function cornerMean(corners: readonly Vec3[]): Vec3 | undefined {
  let x = 0;
  let y = 0;
  let z = 0;
  for (const corner of corners) {
    x += corner[0];
    y += corner[1];
    z += corner[2];
  }
  return corners.length > 0 ? scale([x, y, z], 1 / corners.length) : undefined;
}

/**
 * The part of a convex polygon on the side of a plane where `normal . p >= offset` (Sutherland and Hodgman's
 * clipping, one plane). Empty when nothing is left; the same array when nothing is cut away.
 */
export function clipByPlane(corners: readonly Vec3[], normal: Vec3, offset: number): readonly Vec3[] {
  const sides: number[] = [];
  let whole = true;
  for (let i = 0; i < corners.length; i++) {
    const p = corners[i] as Vec3;
    const side = normal[0] * p[0] + normal[1] * p[1] + normal[2] * p[2] - offset;
    if (!(side >= 0)) whole = false;
    sides.push(side);
  }
  if (whole) return corners;
  const kept: Vec3[] = [];
  for (let i = 0; i < corners.length; i++) {
    const j = i + 1 < corners.length ? i + 1 : 0;
    const a = corners[i] as Vec3;
    const b = corners[j] as Vec3;
    const da = sides[i] as number;
    const db = sides[j] as number;
    if (da >= 0) kept.push(a);
    if ((da < 0 && db > 0) || (da > 0 && db < 0)) {
      const t = da / (da - db);
      kept.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]);
    }
  }
  return kept.length >= 3 ? kept : [];
}
