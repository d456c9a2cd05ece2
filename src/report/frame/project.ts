import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { dot, subtract } from "../../math/vector.js";
import type { Body, SceneCamera } from "../../scene/types.js";
import { imageDistance } from "../geometry/frame.js";
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

const place = ({ across, up, rise }: Lens, [x, y, z]: Vec3): Place => [(across * x) / z, (up * y) / z - rise];

/** A ring cut to the frame widened by a margin, in halves of the frame. */
export function withinFrame(ring: Ring, margin = 0): Region {
  const sides: readonly Vec3[] = [
    [1, 0, 0],
    [-1, 0, 0],
    [0, 1, 0],
    [0, -1, 0],
  ];
  let corners: readonly Vec3[] = ring.map(([x, y]): Vec3 => [x, y, 0]);
  for (const side of sides) corners = clipByPlane(corners, side, -1 - margin);
  return turned(corners.map(([x, y]): Place => [x, y]));
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
  let corners = clipByPlane(
    vertices.map((vertex) => seen(lens, vertex)),
    [0, 0, 1],
    NEAR,
  );
  for (const side of [
    [across, 0, edge],
    [-across, 0, edge],
    [0, up, edge - rise],
    [0, -up, edge + rise],
  ] as const) {
    if (corners.length > 0) corners = clipByPlane(corners, side, 0);
  }
  return corners.length < 3 ? [] : turned(corners.map((corner) => place(lens, corner)));
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
  const turn = (a: Vec3): Vec3 => [dot(a, camera.right), dot(a, camera.up), dot(a, camera.forward)];
  const turnedAxes = axes.map(turn);
  const part = (i: 0 | 1 | 2, j: 0 | 1 | 2): number =>
    turnedAxes.reduce((sum, a) => sum + a[i] * a[j], 0) - c[i] * c[j];
  const depth = -part(2, 2);
  if (!(depth > 0) || !(c[2] > 0)) return null;
  const x = -part(0, 2) / depth;
  const y = -part(1, 2) / depth;
  return {
    x: across * x,
    y: up * y - rise,
    xx: across * across * (part(0, 0) / depth + x * x),
    xy: across * up * (part(0, 1) / depth + x * y),
    yy: up * up * (part(1, 1) / depth + y * y),
  };
}

/** A polygon with the area of an ellipse. */
function ringOf({ x, y, xx, xy, yy }: Ellipse): Ring {
  // The spread as a product of a lower triangle with itself.
  const a = Math.sqrt(Math.max(0, xx));
  const b = a > 0 ? xy / a : 0;
  const d = Math.sqrt(Math.max(0, yy - b * b));
  return Array.from({ length: CORNERS }, (_, i): Place => {
    const turn = (2 * Math.PI * (i + 0.5)) / CORNERS;
    const [u, v] = [STRETCH * Math.cos(turn), STRETCH * Math.sin(turn)];
    return [x + a * u, y + b * u + d * v];
  });
}

const ballAxes = (radius: number): readonly Vec3[] => [
  [radius, 0, 0],
  [0, radius, 0],
  [0, 0, radius],
];

/** The ellipses whose hull is the outline of a body; null where it reaches the plane of the lens. */
function ellipsesOf(lens: Lens, body: Body): readonly Ellipse[] | null {
  const found =
    body.kind === "ellipsoid"
      ? [ellipseOf(lens, body.centre, body.axes)]
      : body.kind === "sphere"
        ? [ellipseOf(lens, body.centre, ballAxes(body.radius))]
        : [body.from, body.to].map((end) => ellipseOf(lens, end, ballAxes(body.radius)));
  return found.every((ellipse) => ellipse !== null) ? found : null;
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
export function wayThrough({ camera, across, up, rise }: Lens, [x, y]: Place): Vec3 {
  const [right, high] = [x / across, (y + rise) / up];
  const along = (i: 0 | 1 | 2): number => camera.forward[i] + right * camera.right[i] + high * camera.up[i];
  return [along(0), along(1), along(2)];
}
