import type { Vec3 } from "../../core/vector.js";

/** A half-space of points: those whose product with the normal is at least the offset. */
export interface HalfSpace {
  readonly normal: Vec3;
  readonly offset: number;
}

/** Cuts a flat polygon in space to a half-space. */
export function clipToHalf(corners: readonly Vec3[], half: HalfSpace): readonly Vec3[] {
  const { normal: n, offset } = half;
  const side = (p: Vec3): number => n[0] * p[0] + n[1] * p[1] + n[2] * p[2] - offset;
  let all = true;
  for (const corner of corners) if (side(corner) < 0) all = false;
  if (all) return corners;
  const kept: Vec3[] = [];
  let before = corners[corners.length - 1];
  if (before === undefined) return corners;
  let sideBefore = side(before);
  for (const corner of corners) {
    const here = side(corner);
    if (here >= 0 !== sideBefore >= 0) {
      const t = sideBefore / (sideBefore - here);
      kept.push([
        before[0] + t * (corner[0] - before[0]),
        before[1] + t * (corner[1] - before[1]),
        before[2] + t * (corner[2] - before[2]),
      ]);
    }
    if (here >= 0) kept.push(corner);
    before = corner;
    sideBefore = here;
  }
  return kept;
}
