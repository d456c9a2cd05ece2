import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { addScaled, dot, subtract } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import type { Body, SceneCamera } from "../../scene/types.js";
import { hullOf } from "./hull.js";
import { type Place, type Region, type Ring, turned } from "./region.js";

/** Nothing nearer to the lens than this, along its axis, is drawn, m. */
const NEAR = 0.001;
/** Corners that stand for the outline of a round body. */
const CORNERS = 64;
/** Radius of the corners of a regular polygon with the area of a unit circle. */
const STRETCH = /* @__PURE__ */ Math.sqrt(Math.PI / ((CORNERS / 2) * Math.sin((2 * Math.PI) / CORNERS)));

/** A camera as a way from the scene into the picture. */
export interface Lens {
  readonly camera: SceneCamera;
  /** Halves of the frame for a tangent of 1 off the axis, to the side and up. */
  readonly across: number;
  readonly up: number;
  /** Halves of the frame by which the lens is raised. */
  readonly rise: number;
}

/** The lens of a camera, focused where it is; null without a focal length. */
export function lensOf(camera: SceneCamera): Lens | null {
  const image = imageDistance(camera);
  if (image === null) return null;
  return {
    camera,
    across: (2 * image) / camera.frameWidth,
    up: (2 * image) / camera.frameHeight,
    rise: (2 * camera.shift) / camera.frameHeight,
  };
}

/** A place seen from the lens: to its right, up, and along its axis, m. */
function seen({ camera }: Lens, point: Vec3): Vec3 {
  const sight = subtract(point, camera.at);
  return [dot(sight, camera.right), dot(sight, camera.up), dot(sight, camera.forward)];
}

const place = ({ across, up, rise }: Lens, from: Vec3): Place => [
  (across * from[0]) / from[2],
  (up * from[1]) / from[2] - rise,
];

/** A ring cut to the frame widened by a margin, in halves of the frame. */
export function withinFrame(ring: Ring, margin = 0): Region {
  let corners: readonly Vec3[] = inSpace(ring);
  for (const side of frameSides) corners = clipByPlane(corners, side, -1 - margin);
  const cut: Place[] = [];
  for (const corner of corners) cut.push([corner[0], corner[1]]);
  return turned(cut);
}

/** The ways in from the sides of the frame. */
const frameSides: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
];

/** Places of the picture as points of a plane. */
function inSpace(ring: Ring): readonly Vec3[] {
  const points: Vec3[] = [];
  for (const place of ring) points.push([place[0], place[1], 0]);
  return points;
}

/**
 * The part of the picture that a flat convex piece takes, cut to the frame in space, so that pieces that reach behind
 * the lens are right. Exact but for rounding.
 *
 * @param margin - Halves of the frame that are added all round it.
 */
export function polygonInPicture(lens: Lens, vertices: readonly Vec3[], margin = 0): Region {
  const { across, up, rise } = lens;
  const edge = 1 + margin;
  const ahead: Vec3[] = [];
  for (const vertex of vertices) ahead.push(seen(lens, vertex));
  let corners = clipByPlane(ahead, [0, 0, 1], NEAR);
  for (const side of [
    [across, 0, edge],
    [-across, 0, edge],
    [0, up, edge - rise],
    [0, -up, edge + rise],
  ] as const) {
    if (corners.length > 0) corners = clipByPlane(corners, side, 0);
  }
  const ring: Place[] = [];
  for (const corner of corners) ring.push(place(lens, corner));
  return ring.length < 3 ? [] : turned(ring);
}

/** The outline of an ellipsoid in the picture: an ellipse with a middle and a spread, spread = sum of u u for its axes. */
interface Ellipse {
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/**
 * The outline of an ellipsoid in the picture. The planes through the lens that touch it have normals n with
 * n (sum of a a - c c) n = 0, a its semi-axes and c its centre from the lens; that is the dual of the ellipse (Hartley
 * and Zisserman, Multiple View Geometry (2004), on quadrics, from memory). Null where it reaches the plane of the lens.
 */
function ellipseOf(lens: Lens, centre: Vec3, axes: readonly Vec3[]): Ellipse | null {
  const { across, up, rise, camera } = lens;
  const c = seen(lens, centre);
  const turnedAxes: Vec3[] = [];
  for (const a of axes) turnedAxes.push([dot(a, camera.right), dot(a, camera.up), dot(a, camera.forward)]);
  const depth = -dualPart(turnedAxes, c, 2, 2);
  if (!(depth > 0) || !(c[2] > 0)) return null;
  const x = -dualPart(turnedAxes, c, 0, 2) / depth;
  const y = -dualPart(turnedAxes, c, 1, 2) / depth;
  return {
    x: across * x,
    y: up * y - rise,
    xx: across * across * (dualPart(turnedAxes, c, 0, 0) / depth + x * x),
    xy: across * up * (dualPart(turnedAxes, c, 0, 1) / depth + x * y),
    yy: up * up * (dualPart(turnedAxes, c, 1, 1) / depth + y * y),
  };
}

/** One part of the dual of an ellipsoid: sum of a a - c c. */
function dualPart(axes: readonly Vec3[], c: Vec3, i: 0 | 1 | 2, j: 0 | 1 | 2): number {
  let sum = 0;
  for (const a of axes) sum += a[i] * a[j];
  return sum - c[i] * c[j];
}

/** A polygon with the area of an ellipse. */
function ringOf({ x, y, xx, xy, yy }: Ellipse): Ring {
  // The spread as a product of a lower triangle with itself.
  const a = Math.sqrt(Math.max(0, xx));
  const b = a > 0 ? xy / a : 0;
  const d = Math.sqrt(Math.max(0, yy - b * b));
  const ring: Place[] = [];
  for (let i = 0; i < CORNERS; i++) {
    const turn = (2 * Math.PI * (i + 0.5)) / CORNERS;
    const u = STRETCH * Math.cos(turn);
    const v = STRETCH * Math.sin(turn);
    ring.push([x + a * u, y + b * u + d * v]);
  }
  return ring;
}

const ballAxes = (radius: number): readonly Vec3[] => [
  [radius, 0, 0],
  [0, radius, 0],
  [0, 0, radius],
];

/** The ellipses whose hull is the outline of a body; null where it reaches the plane of the lens. */
function ellipsesOf(lens: Lens, body: Body): readonly Ellipse[] | null {
  if (body.kind === "capsule") {
    const axes = ballAxes(body.radius);
    const from = ellipseOf(lens, body.from, axes);
    const to = ellipseOf(lens, body.to, axes);
    return from === null || to === null ? null : [from, to];
  }
  const axes = body.kind === "ellipsoid" ? body.axes : ballAxes(body.radius);
  const found = ellipseOf(lens, body.centre, axes);
  return found === null ? null : [found];
}

/** The outline of a body in the picture, not cut to the frame; null where it reaches the plane of the lens. */
export function outlineOf(lens: Lens, body: Body): Ring | null {
  const ellipses = ellipsesOf(lens, body);
  return ellipses === null ? null : hullOf(ellipses.flatMap(ringOf));
}

/** Lowest and highest place of a body in the picture, exact; null where it reaches the plane of the lens. */
export function heightOf(lens: Lens, body: Body): { readonly low: number; readonly high: number } | null {
  const ellipses = ellipsesOf(lens, body);
  if (ellipses === null) return null;
  return {
    low: Math.min(...ellipses.map(({ y, yy }) => y - Math.sqrt(yy))),
    high: Math.max(...ellipses.map(({ y, yy }) => y + Math.sqrt(yy))),
  };
}

/** The part of the picture that a body takes: its outline as 64 corners of the same area, cut to the frame. */
export function bodyInPicture(lens: Lens, body: Body, margin = 0): Region {
  const outline = outlineOf(lens, body);
  return outline === null ? [] : withinFrame(outline, margin);
}

/** Where a point lies in the picture, also outside the frame; null behind the lens. */
export function pointInPicture(lens: Lens, point: Vec3): Place | null {
  const from = seen(lens, point);
  return from[2] > NEAR ? place(lens, from) : null;
}

/** The way from the lens through a place of the picture, 1 along the lens axis. */
export function wayThrough({ camera, across, up, rise }: Lens, place: Place): Vec3 {
  return addScaled(
    addScaled(camera.forward, camera.right, place[0] / across),
    camera.up,
    (place[1] + rise) / up,
  );
}
