import type { Vec3 } from "../../core/vector.js";
import { frameAround } from "../../math/vector.js";
import { convexHull, counterClockwise, type FlatPolygon } from "./flat.js";
import type { CapsuleOccluder, EllipsoidOccluder, Occluder } from "./occluder.js";

/** Corners of a round outline. With 16 the hidden share of a light is right to about 0.2 %. */
export const OUTLINE_CORNERS = 16;

/** Nearest distance in front of the eye that is looked at, m. */
const NEAREST = 1e-6;

/** Cosines and sines of a whole turn, widened so that the polygon has the area of the circle. */
const turn: readonly (readonly [cos: number, sin: number])[] = (() => {
  const step = (2 * Math.PI) / OUTLINE_CORNERS;
  const wide = Math.sqrt(step / Math.sin(step));
  return Array.from(
    { length: OUTLINE_CORNERS },
    (_, i) => [wide * Math.cos(i * step), wide * Math.sin(i * step)] as const,
  );
})();

/** An eye with a direction: the plane at unit distance along it takes the outlines. */
export interface View {
  readonly eye: Vec3;
  readonly ahead: Vec3;
  readonly across: Vec3;
  readonly up: Vec3;
}

/** A view from a point along a unit vector. */
export function viewAlong(eye: Vec3, ahead: Vec3): View {
  const [across, up] = frameAround(ahead);
  return { eye, ahead, across, up };
}

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

/** The outline of a flat polygon in space on the view's plane; what is not in front of the eye is cut away. */
export function project(view: View, corners: readonly Vec3[]): FlatPolygon | null {
  const { eye, ahead, across, up } = view;
  const front: HalfSpace = {
    normal: ahead,
    offset: ahead[0] * eye[0] + ahead[1] * eye[1] + ahead[2] * eye[2] + NEAREST,
  };
  const seen = clipToHalf(corners, front);
  if (seen.length < 3) return null;
  const flat: number[] = [];
  for (const p of seen) {
    const x = p[0] - eye[0];
    const y = p[1] - eye[1];
    const z = p[2] - eye[2];
    const depth = ahead[0] * x + ahead[1] * y + ahead[2] * z;
    flat.push(
      (across[0] * x + across[1] * y + across[2] * z) / depth,
      (up[0] * x + up[1] * y + up[2] * z) / depth,
    );
  }
  return counterClockwise(flat);
}

/** The outline of an occluder on the view's plane, cut to the half-space before the light; null where there is none. */
export function outlineOf(view: View, occluder: Occluder, before: HalfSpace): FlatPolygon | null {
  switch (occluder.kind) {
    case "polygon": {
      const cut = clipToHalf(occluder.corners, before);
      return cut.length < 3 ? null : project(view, cut);
    }
    case "ellipsoid": {
      const ring = ellipsoidRing(view.eye, occluder);
      return ring === null ? null : project(view, ring);
    }
    case "capsule":
      return capsuleOutline(view, occluder);
    default:
      return occluder satisfies never;
  }
}

/** The curve where sight lines touch an ellipsoid, as corners; null for an eye inside of it. */
export function ellipsoidRing(eye: Vec3, o: EllipsoidOccluder): readonly Vec3[] | null {
  const x = eye[0] - o.centre[0];
  const y = eye[1] - o.centre[1];
  const z = eye[2] - o.centre[2];
  const [p, q, r] = o.inverse;
  // The eye where the ellipsoid is the unit sphere.
  const e: Vec3 = [
    p[0] * x + p[1] * y + p[2] * z,
    q[0] * x + q[1] * y + q[2] * z,
    r[0] * x + r[1] * y + r[2] * z,
  ];
  const ee = e[0] * e[0] + e[1] * e[1] + e[2] * e[2];
  if (!(ee > 1)) return null;
  const d = Math.sqrt(ee);
  const [u, v] = frameAround([e[0] / d, e[1] / d, e[2] / d]);
  const radius = Math.sqrt(1 - 1 / ee);
  const [a, b, c] = o.axes;
  return turn.map(([cos, sin]) => {
    const s0 = e[0] / ee + radius * (cos * u[0] + sin * v[0]);
    const s1 = e[1] / ee + radius * (cos * u[1] + sin * v[1]);
    const s2 = e[2] / ee + radius * (cos * u[2] + sin * v[2]);
    return [
      o.centre[0] + s0 * a[0] + s1 * b[0] + s2 * c[0],
      o.centre[1] + s0 * a[1] + s1 * b[1] + s2 * c[1],
      o.centre[2] + s0 * a[2] + s1 * b[2] + s2 * c[2],
    ] as const;
  });
}

/** The circle where sight lines touch a sphere, as corners; null for an eye inside. */
function sphereRing(eye: Vec3, centre: Vec3, radius: number): readonly Vec3[] | null {
  const away: Vec3 = [eye[0] - centre[0], eye[1] - centre[1], eye[2] - centre[2]];
  const dd = away[0] * away[0] + away[1] * away[1] + away[2] * away[2];
  if (!(dd > radius * radius)) return null;
  const d = Math.sqrt(dd);
  const [u, v] = frameAround([away[0] / d, away[1] / d, away[2] / d]);
  const share = (radius * radius) / dd;
  const wide = radius * Math.sqrt(1 - share);
  return turn.map(([cos, sin]) => [
    centre[0] + share * away[0] + wide * (cos * u[0] + sin * v[0]),
    centre[1] + share * away[1] + wide * (cos * u[1] + sin * v[1]),
    centre[2] + share * away[2] + wide * (cos * u[2] + sin * v[2]),
  ]);
}

/** A capsule is seen as the hull of its two end spheres. */
function capsuleOutline(view: View, o: CapsuleOccluder): FlatPolygon | null {
  const points: number[] = [];
  for (const end of [o.from, o.to]) {
    const ring = sphereRing(view.eye, end, o.radius);
    const flat = ring === null ? null : project(view, ring);
    if (flat !== null) points.push(...flat);
  }
  return points.length < 6 ? null : convexHull(points);
}
