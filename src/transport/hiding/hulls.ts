import type { Vec3 } from "../../core/vector.js";
import type { Convex } from "../../math/convex.js";
import { frameAround } from "../../math/vector.js";
import { type SourceShape, sourceCentre } from "../../physics/source-shape.js";
import type { Occluder } from "./occluder.js";

/** A body with the semi-axes given as so many vectors, the rest of which are nothing. */
function convex(points: readonly Vec3[], axes: readonly Vec3[], middle: Vec3): Convex {
  const round = new Float64Array(9);
  axes.forEach((axis, i) => {
    round.set(axis, 3 * i);
  });
  return { points: Float64Array.from(points.flat()), axes: round, middle: Float64Array.from(middle) };
}

/** The semi-axes of a ball. */
const ball = (r: number): readonly Vec3[] => [
  [r, 0, 0],
  [0, r, 0],
  [0, 0, r],
];

/** What can stand before a light, as a convex body. */
export function hullOf(o: Occluder): Convex {
  switch (o.kind) {
    case "polygon":
      return convex(o.corners, [], o.centre);
    case "ellipsoid":
      return convex([o.centre], o.axes, o.centre);
    case "capsule":
      return convex([o.from, o.to], ball(o.radius), o.centre);
    default:
      return o satisfies never;
  }
}

/** A light as a convex body. */
export function sourceHull(shape: SourceShape): Convex {
  const middle = sourceCentre(shape);
  switch (shape.kind) {
    case "polygon":
      return convex(shape.corners, [], middle);
    case "disc": {
      const [u, v] = frameAround(shape.normal);
      const along = ([x, y, z]: Vec3): Vec3 => [shape.radius * x, shape.radius * y, shape.radius * z];
      return convex([shape.centre], [along(u), along(v)], middle);
    }
    case "sphere":
      return convex([shape.centre], ball(shape.radius), middle);
    case "capsule":
      return convex([shape.from, shape.to], ball(shape.radius), middle);
    default:
      return shape satisfies never;
  }
}

/**
 * How wide a light is at its narrowest as a place sees it, radians for a light that is small and never more than it is.
 * An edge's half-shade on what lies a gap behind it is the gap times this wide, or wider.
 */
export function leastWidth(shape: SourceShape, x: number, y: number, z: number): number {
  const [cx, cy, cz] = sourceCentre(shape);
  const far = Math.sqrt((cx - x) * (cx - x) + (cy - y) * (cy - y) + (cz - z) * (cz - z));
  switch (shape.kind) {
    case "sphere":
    case "capsule":
      return (2 * shape.radius) / far;
    case "disc":
    case "polygon": {
      const [nx, ny, nz] = shape.normal;
      const facing = Math.max(0, nx * (x - cx) + ny * (y - cy) + nz * (z - cz)) / far;
      const wide = shape.kind === "disc" ? 2 * shape.radius : shortestSide(shape.corners);
      return (wide * facing) / far;
    }
    default:
      return shape satisfies never;
  }
}

function shortestSide(corners: readonly Vec3[]): number {
  return corners.reduce((least, [x, y, z], i) => {
    const [u, v, w] = corners[(i + 1) % corners.length] ?? [x, y, z];
    return Math.min(least, Math.sqrt((u - x) * (u - x) + (v - y) * (v - y) + (w - z) * (w - z)));
  }, Number.POSITIVE_INFINITY);
}
