import type { Vec3 } from "../../core/vector.js";
import { frameAround } from "../../math/vector.js";
import { convexHull, counterClockwise, type FlatPolygon } from "./flat.js";
import type { CapsuleOccluder, EllipsoidOccluder, Occluder } from "./occluder.js";
import { addPolygon, close, type Region, reserve } from "./region.js";

/** Nearest distance in front of the eye that is looked at, m. */
const NEAREST = 1e-6;

/** Corners of a round outline, coarse to fine. */
export const outlineCorners = [12, 24, 48, 96] as const;

/** Cosine and sine, in turn, of a whole turn, widened so that the polygon has the area of the circle. */
const turns: readonly Float64Array[] = outlineCorners.map((corners) => {
  const step = (2 * Math.PI) / corners;
  const wide = Math.sqrt(step / Math.sin(step));
  return Float64Array.from({ length: 2 * corners }, (_, i) =>
    i % 2 === 0 ? wide * Math.cos((i / 2) * step) : wide * Math.sin(((i - 1) / 2) * step),
  );
});

/**
 * The turn of an outline fine enough for a light that is `ratio` times smaller than what hides it. A polygon of n
 * corners with the area of a circle lies within 3.3 / n2 of its radius; a light across its edge must not notice.
 */
function turnFor(ratio: number): Float64Array {
  const wanted = Math.sqrt(400 * Math.max(1, ratio));
  const at = outlineCorners.findIndex((corners) => corners >= wanted);
  return turns[at < 0 ? outlineCorners.length - 1 : at] as Float64Array;
}

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

/**
 * Adds the outline of an occluder on the view's plane, cut to the half-space before the light, where it has one.
 *
 * @param spread - Half width of the light by its distance.
 */
export function addOutline(
  view: View,
  occluder: Occluder,
  before: HalfSpace,
  spread: number,
  holes: Region,
): void {
  const turn = turnFor(spreadOf(view, occluder) / spread);
  switch (occluder.kind) {
    case "polygon": {
      const cut = clipToHalf(occluder.corners, before);
      const flat = cut.length < 3 ? null : project(view, cut);
      if (flat !== null) addPolygon(holes, flat);
      return;
    }
    case "ellipsoid": {
      const ring = ellipsoidRing(view, occluder);
      if (ring !== null) addRing(view, ring, turn, holes);
      return;
    }
    case "capsule":
      addCapsule(view, occluder, turn, holes);
      return;
    default:
      occluder satisfies never;
  }
}

/** Half width of a round occluder by its distance. */
function spreadOf({ eye }: View, o: Occluder): number {
  if (o.kind === "polygon") return 0;
  const x = o.centre[0] - eye[0];
  const y = o.centre[1] - eye[1];
  const z = o.centre[2] - eye[2];
  const wide = o.kind === "capsule" ? o.radius : o.bound;
  return wide / Math.sqrt(Math.max(1e-12, x * x + y * y + z * z));
}

/** A circle or ellipse in space, in the view's coordinates: centre and two half-axes, x across, y up, z ahead. */
interface Ring {
  readonly c: Vec3;
  readonly a: Vec3;
  readonly b: Vec3;
}

/** A vector in the view's coordinates. */
function turned(view: View, x: number, y: number, z: number): Vec3 {
  const { across, up, ahead } = view;
  return [
    across[0] * x + across[1] * y + across[2] * z,
    up[0] * x + up[1] * y + up[2] * z,
    ahead[0] * x + ahead[1] * y + ahead[2] * z,
  ];
}

/** The curve where sight lines touch an ellipsoid; null for an eye inside of it. */
function ellipsoidRing(view: View, o: EllipsoidOccluder): Ring | null {
  const { eye } = view;
  const x = eye[0] - o.centre[0];
  const y = eye[1] - o.centre[1];
  const z = eye[2] - o.centre[2];
  const [p, q, r] = o.inverse;
  // The eye where the ellipsoid is the unit sphere.
  const e0 = p[0] * x + p[1] * y + p[2] * z;
  const e1 = q[0] * x + q[1] * y + q[2] * z;
  const e2 = r[0] * x + r[1] * y + r[2] * z;
  const ee = e0 * e0 + e1 * e1 + e2 * e2;
  if (!(ee > 1)) return null;
  const d = Math.sqrt(ee);
  const [u, v] = frameAround([e0 / d, e1 / d, e2 / d]);
  const wide = Math.sqrt(1 - 1 / ee);
  const [f, g, h] = o.axes;
  const space = (s0: number, s1: number, s2: number, dx: number, dy: number, dz: number): Vec3 =>
    turned(
      view,
      s0 * f[0] + s1 * g[0] + s2 * h[0] + dx,
      s0 * f[1] + s1 * g[1] + s2 * h[1] + dy,
      s0 * f[2] + s1 * g[2] + s2 * h[2] + dz,
    );
  return {
    c: space(e0 / ee, e1 / ee, e2 / ee, -x, -y, -z),
    a: space(wide * u[0], wide * u[1], wide * u[2], 0, 0, 0),
    b: space(wide * v[0], wide * v[1], wide * v[2], 0, 0, 0),
  };
}

/** The circle where sight lines touch a sphere, its first half-axis towards the view's right; null for an eye inside. */
function sphereRing(view: View, centre: Vec3, radius: number): Ring | null {
  const { eye } = view;
  const [x, y, z] = turned(view, centre[0] - eye[0], centre[1] - eye[1], centre[2] - eye[2]);
  const dd = x * x + y * y + z * z;
  const share = (radius * radius) / dd;
  if (!(share < 1)) return null;
  const wide = radius * Math.sqrt(1 - share);
  const flat = Math.sqrt(y * y + z * z);
  if (flat === 0) return null;
  const d = Math.sqrt(dd);
  // Right of the line of sight, and up from it: (1, 0, 0) and (0, 1, 0) where the sphere is straight ahead.
  const a: Vec3 = [(flat / d) * wide, (-x * y * wide) / (d * flat), (-x * z * wide) / (d * flat)];
  const b: Vec3 = [0, (z * wide) / flat, (-y * wide) / flat];
  return { c: [x * (1 - share), y * (1 - share), z * (1 - share)], a, b };
}

/** Adds the corners of a ring on the view's plane; one that reaches behind the eye is cut there first. */
function addRing(view: View, ring: Ring, turn: Float64Array, holes: Region): void {
  const { c, a, b } = ring;
  const at = reserve(holes, turn.length);
  const { data } = holes;
  for (let i = 0; i < turn.length; i += 2) {
    const cos = turn[i] as number;
    const sin = turn[i + 1] as number;
    const depth = c[2] + cos * a[2] + sin * b[2];
    if (depth < NEAREST) {
      const flat = project(view, ringCorners(view, ring));
      if (flat !== null) addPolygon(holes, flat);
      return;
    }
    data[at + i] = (c[0] + cos * a[0] + sin * b[0]) / depth;
    data[at + i + 1] = (c[1] + cos * a[1] + sin * b[1]) / depth;
  }
  close(holes, turn.length);
}

/** Corners of a ring that reaches behind the eye: what is left of it in front is seen from close by, and large. */
const CUT_CORNERS = 72;

/** The corners of a ring in space. */
function ringCorners(view: View, { c, a, b }: Ring): readonly Vec3[] {
  const { eye, across, up, ahead } = view;
  return Array.from({ length: CUT_CORNERS }, (_, i): Vec3 => {
    const angle = (2 * Math.PI * i) / CUT_CORNERS;
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const x = c[0] + cos * a[0] + sin * b[0];
    const y = c[1] + cos * a[1] + sin * b[1];
    const z = c[2] + cos * a[2] + sin * b[2];
    const space = (k: 0 | 1 | 2): number => eye[k] + x * across[k] + y * up[k] + z * ahead[k];
    return [space(0), space(1), space(2)];
  });
}

/**
 * A capsule is seen as the hull of its two end spheres: at each turn of the outline the corner of that end which
 * reaches farther out. Where an end is not wholly in front of the eye, the hull of what is seen of both.
 */
function addCapsule(view: View, o: CapsuleOccluder, turn: Float64Array, holes: Region): void {
  const start = beforeEye(view, o.from, o.to);
  const end = beforeEye(view, o.to, o.from);
  const from = sphereRing(view, start, o.radius);
  const to = sphereRing(view, end, o.radius);
  if (from === null || to === null) {
    const only = from ?? to;
    if (only !== null) addRing(view, only, turn, holes);
    return;
  }
  const at = reserve(holes, turn.length);
  const { data } = holes;
  for (let i = 0; i < turn.length; i += 2) {
    const cos = turn[i] as number;
    const sin = turn[i + 1] as number;
    const near = from.c[2] + cos * from.a[2] + sin * from.b[2];
    const far = to.c[2] + cos * to.a[2] + sin * to.b[2];
    if (near < NEAREST || far < NEAREST) {
      addPolygon(holes, seenHull(view, from, to));
      return;
    }
    const u = (from.c[0] + cos * from.a[0] + sin * from.b[0]) / near;
    const v = (from.c[1] + cos * from.a[1] + sin * from.b[1]) / near;
    const s = (to.c[0] + cos * to.a[0] + sin * to.b[0]) / far;
    const t = (to.c[1] + cos * to.a[1] + sin * to.b[1]) / far;
    const first = (u - s) * cos + (v - t) * sin >= 0;
    data[at + i] = first ? u : s;
    data[at + i + 1] = first ? v : t;
  }
  close(holes, turn.length);
}

/** An end of a tube, or where the tube's axis comes before the eye if the end is behind it. */
function beforeEye(view: View, end: Vec3, other: Vec3): Vec3 {
  const depth = depthOf(view, end);
  const beyond = depthOf(view, other);
  if (depth >= NEAREST || beyond < NEAREST) return end;
  const t = (NEAREST - depth) / (beyond - depth);
  return [
    end[0] + t * (other[0] - end[0]),
    end[1] + t * (other[1] - end[1]),
    end[2] + t * (other[2] - end[2]),
  ];
}

function depthOf({ eye, ahead }: View, p: Vec3): number {
  return ahead[0] * (p[0] - eye[0]) + ahead[1] * (p[1] - eye[1]) + ahead[2] * (p[2] - eye[2]);
}

/** The hull of what is in front of the eye of two rings; empty where nothing is. */
function seenHull(view: View, first: Ring, second: Ring): FlatPolygon {
  const parts = [first, second].map((ring) => project(view, ringCorners(view, ring)) ?? []);
  const points = parts.flat();
  return points.length < 6 ? [] : convexHull(points);
}
