import type { Vec3 } from "../../core/vector.js";
import { areaTrue } from "../../math/area-true.js";
import { frameAround } from "../../math/vector.js";
import { bodyCut, sideOf } from "./body-cut.js";
import { capsuleOutline } from "./capsule-outline.js";
import { convexHull, type FlatPolygon } from "./flat.js";
import { clipToHalf, type HalfSpace } from "./half-space.js";
import type { CapsuleOccluder, EllipsoidOccluder, Occluder } from "./occluder.js";
import { addPolygon, close, type Region, reserve } from "./region.js";
import { addProjected, NEAREST, project, type View } from "./view.js";

/** Corners of a round outline, coarse to fine. */
const outlineCorners = [18, 20, 24, 28, 32, 40, 48, 56, 64, 80, 96] as const;

/** Cosine and sine, in turn, of a whole turn, widened so that the polygon has the area of the circle. */
const turns: readonly Float64Array[] = outlineCorners.map((corners) => {
  const step = (2 * Math.PI) / corners;
  const wide = areaTrue(corners);
  return Float64Array.from({ length: 2 * corners }, (_, i) =>
    i % 2 === 0 ? wide * Math.cos((i / 2) * step) : wide * Math.sin(((i - 1) / 2) * step),
  );
});

/**
 * The turn of an outline fine enough for a light that is `ratio` times smaller than what hides it. A polygon of n
 * corners with the area of a circle lies within 3.3 / n2 of its radius, so within 1.1 % of the light's width here; over
 * many scenes the share of light that is left is right to 0.04 % (root mean square), 0.34 % at most.
 */
function turnFor(ratio: number): Float64Array {
  const wanted = Math.sqrt(300 * Math.max(1, ratio));
  const at = outlineCorners.findIndex((corners) => corners >= wanted);
  return turns[at < 0 ? outlineCorners.length - 1 : at] as Float64Array;
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
  if (occluder.kind !== "polygon") {
    const side = sideOf(occluder, before);
    if (side === "beyond") return;
    if (side === "both") {
      addPolygon(holes, cutOutline(view, occluder, before));
      return;
    }
  }
  const turn = turnFor(spreadOf(view, occluder) / spread);
  switch (occluder.kind) {
    case "polygon": {
      const cut = clipToHalf(occluder.corners, before);
      if (cut.length >= 3) addProjected(view, cut, holes);
      return;
    }
    case "ellipsoid": {
      const ring = ellipsoidRing(view, occluder);
      if (ring !== null) addRing(view, ring, turn, holes);
      return;
    }
    case "capsule":
      addCapsule(view, occluder, turn.length / 2, turn, holes);
      return;
    default:
      occluder satisfies never;
  }
}

/** The outline of what lies before the light of a body that the light's plane cuts: it is seen up to the cut. */
function cutOutline(view: View, o: EllipsoidOccluder | CapsuleOccluder, before: HalfSpace): FlatPolygon {
  const parts = [clipToHalf(touchingLine(view, o), before), bodyCut(o, before)];
  const points = parts.flatMap((part) => (part.length < 3 ? [] : (project(view, part) ?? [])));
  return points.length < 6 ? [] : convexHull(points);
}

/** The corners of the line where sight lines touch a body. */
function touchingLine(view: View, o: EllipsoidOccluder | CapsuleOccluder): readonly Vec3[] {
  if (o.kind === "capsule") {
    const outline = new Float64Array(3 * CUT_CORNERS);
    if (writeOutline(view, o, CUT_CORNERS, outline, 0)) return inSpace(view, outline);
  }
  const ring =
    o.kind === "ellipsoid" ? ellipsoidRing(view, o) : sphereRing(view, nearerEnd(view, o), o.radius);
  return ring === null ? [] : ringCorners(view, ring);
}

/** Half width of a round occluder by the distance of its middle, or of the nearest place on a capsule's axis. */
function spreadOf({ eye }: View, o: Occluder): number {
  if (o.kind === "polygon") return 0;
  const middle = o.kind === "capsule" ? nearestOnAxis(o, eye) : o.centre;
  const x = middle[0] - eye[0];
  const y = middle[1] - eye[1];
  const z = middle[2] - eye[2];
  const wide = o.kind === "capsule" ? o.radius : o.bound;
  return wide / Math.sqrt(Math.max(1e-12, x * x + y * y + z * z));
}

function nearestOnAxis({ from, to }: CapsuleOccluder, eye: Vec3): Vec3 {
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const long = x * x + y * y + z * z;
  const along = x * (eye[0] - from[0]) + y * (eye[1] - from[1]) + z * (eye[2] - from[2]);
  const t = long > 0 ? Math.min(1, Math.max(0, along / long)) : 0;
  return [from[0] + t * x, from[1] + t * y, from[2] + t * z];
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
  return {
    c: fromUnit(view, o, e0 / ee, e1 / ee, e2 / ee, -x, -y, -z),
    a: fromUnit(view, o, wide * u[0], wide * u[1], wide * u[2], 0, 0, 0),
    b: fromUnit(view, o, wide * v[0], wide * v[1], wide * v[2], 0, 0, 0),
  };
}

/** A vector from where an ellipsoid is the unit sphere, moved in space, in the view's coordinates. */
function fromUnit(
  view: View,
  { axes }: EllipsoidOccluder,
  s0: number,
  s1: number,
  s2: number,
  dx: number,
  dy: number,
  dz: number,
): Vec3 {
  const f = axes[0];
  const g = axes[1];
  const h = axes[2];
  return turned(
    view,
    s0 * f[0] + s1 * g[0] + s2 * h[0] + dx,
    s0 * f[1] + s1 * g[1] + s2 * h[1] + dy,
    s0 * f[2] + s1 * g[2] + s2 * h[2] + dz,
  );
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

/** Corners of a ring that is cut: what is left of it may be seen from close by, and large. */
const CUT_CORNERS = 72;
const CUT_WIDE = Math.sqrt((2 * Math.PI) / CUT_CORNERS / Math.sin((2 * Math.PI) / CUT_CORNERS));

/** The corners of a ring in space, widened to the area of the round. */
function ringCorners(view: View, { c, a, b }: Ring): readonly Vec3[] {
  const corners: Vec3[] = [];
  for (let i = 0; i < CUT_CORNERS; i++) {
    const angle = (2 * Math.PI * i) / CUT_CORNERS;
    const cos = CUT_WIDE * Math.cos(angle);
    const sin = CUT_WIDE * Math.sin(angle);
    const x = c[0] + cos * a[0] + sin * b[0];
    const y = c[1] + cos * a[1] + sin * b[1];
    const z = c[2] + cos * a[2] + sin * b[2];
    corners.push(placeOf(view, x, y, z));
  }
  return corners;
}

/** A place of the view's coordinates in space. */
function placeOf({ eye, across, up, ahead }: View, x: number, y: number, z: number): Vec3 {
  return [
    eye[0] + x * across[0] + y * up[0] + z * ahead[0],
    eye[1] + x * across[1] + y * up[1] + z * ahead[1],
    eye[2] + x * across[2] + y * up[2] + z * ahead[2],
  ];
}

/** Adds the outline of a capsule on the view's plane. */
function addCapsule(
  view: View,
  o: CapsuleOccluder,
  corners: number,
  turn: Float64Array,
  holes: Region,
): void {
  const at = reserve(holes, 3 * corners);
  const { data } = holes;
  if (!writeOutline(view, o, corners, data, at)) {
    const ring = sphereRing(view, nearerEnd(view, o), o.radius);
    if (ring !== null) addRing(view, ring, turn, holes);
    return;
  }
  for (let i = 0; i < corners; i++) {
    if ((data[at + 3 * i + 2] as number) >= NEAREST) continue;
    const flat = project(view, inSpace(view, data.slice(at, at + 3 * corners)));
    if (flat !== null) addPolygon(holes, flat);
    return;
  }
  // In place: what is read lies ahead of what is written.
  for (let i = 0; i < corners; i++) {
    const depth = data[at + 3 * i + 2] as number;
    data[at + 2 * i] = (data[at + 3 * i] as number) / depth;
    data[at + 2 * i + 1] = (data[at + 3 * i + 1] as number) / depth;
  }
  close(holes, 2 * corners);
}

const writeOutline = (
  { eye, across, up, ahead }: View,
  o: CapsuleOccluder,
  corners: number,
  out: Float64Array,
  at: number,
): boolean => capsuleOutline(o, eye, [across, up, ahead], corners, out, at);

function nearerEnd({ eye }: View, { from, to }: CapsuleOccluder): Vec3 {
  const far = (p: Vec3): number =>
    (p[0] - eye[0]) * (p[0] - eye[0]) + (p[1] - eye[1]) * (p[1] - eye[1]) + (p[2] - eye[2]) * (p[2] - eye[2]);
  return far(from) <= far(to) ? from : to;
}

/** Corners of an outline in the view's coordinates as points in space. */
function inSpace(view: View, outline: Float64Array): readonly Vec3[] {
  const corners: Vec3[] = [];
  for (let i = 0; i < outline.length; i += 3)
    corners.push(placeOf(view, outline[i] as number, outline[i + 1] as number, outline[i + 2] as number));
  return corners;
}
