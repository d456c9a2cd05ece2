import type { Vec3 } from "../../core/vector.js";
import { cross, dot, length, scale } from "../../math/vector.js";
import type { Body, Scene, ScenePolygon } from "../../scene/types.js";

/** A convex thing that can stand between a light and a receptor, made ready for many questions. */
export type Occluder = PolygonOccluder | EllipsoidOccluder | CapsuleOccluder;

interface Bound {
  /** Centre and radius of a sphere round it, m. */
  readonly centre: Vec3;
  readonly bound: number;
  /** Index of the polygon or body in its list of the scene; polygons first. */
  readonly index: number;
}

/** A flat piece or a surface of the room. */
export interface PolygonOccluder extends Bound {
  readonly kind: "polygon";
  readonly corners: readonly Vec3[];
  readonly normal: Vec3;
  /** Product of the normal with every point of the polygon. */
  readonly offset: number;
  /** Unit vectors in its plane and out of its edges, with their offsets: inside is below all of them. */
  readonly edges: readonly { readonly out: Vec3; readonly offset: number }[];
  /** True for a surface of the room, which hides only what is outside of the room. */
  readonly shell: boolean;
}

/** A head, a trunk or another ellipsoid. */
export interface EllipsoidOccluder extends Bound {
  readonly kind: "ellipsoid";
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Each semi-axis over its squared length: the product with a sight line gives coordinates on the unit sphere. */
  readonly inverse: readonly [Vec3, Vec3, Vec3];
}

/** A limb or a post with round ends, by the centres of its two end spheres. */
export interface CapsuleOccluder extends Bound {
  readonly kind: "capsule";
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

const mean = (points: readonly Vec3[]): Vec3 => {
  const n = Math.max(1, points.length);
  const sum = (axis: 0 | 1 | 2): number => points.reduce((total, p) => total + p[axis], 0) / n;
  return [sum(0), sum(1), sum(2)];
};

const reach = (centre: Vec3, points: readonly Vec3[]): number =>
  points.reduce(
    (most, p) => Math.max(most, length([p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]])),
    0,
  );

const shellKinds: ReadonlySet<ScenePolygon["kind"]> = new Set(["floor", "ceiling", "wall"]);

function polygonOccluder(polygon: ScenePolygon, index: number): PolygonOccluder {
  const { vertices: corners, normal } = polygon;
  const centre = mean(corners);
  const first = corners[0] ?? centre;
  const edges = corners.map((corner, i) => {
    const next = corners[(i + 1) % corners.length] ?? first;
    const along: Vec3 = [next[0] - corner[0], next[1] - corner[1], next[2] - corner[2]];
    const out = cross(along, normal);
    const size = length(out);
    const unit = size > 0 ? scale(out, 1 / size) : out;
    return { out: unit, offset: dot(unit, corner) };
  });
  return {
    kind: "polygon",
    corners,
    normal,
    offset: dot(normal, first),
    edges,
    centre,
    bound: reach(centre, corners),
    index,
    shell: shellKinds.has(polygon.kind),
  };
}

function bodyOccluder(body: Body, index: number): Occluder {
  switch (body.kind) {
    case "sphere": {
      const r = body.radius;
      return ellipsoid(
        body.centre,
        [
          [r, 0, 0],
          [0, r, 0],
          [0, 0, r],
        ],
        index,
      );
    }
    case "ellipsoid":
      return ellipsoid(body.centre, body.axes, index);
    case "capsule": {
      const centre = mean([body.from, body.to]);
      return {
        kind: "capsule",
        from: body.from,
        to: body.to,
        radius: body.radius,
        centre,
        bound: reach(centre, [body.from, body.to]) + body.radius,
        index,
      };
    }
    default:
      return body satisfies never;
  }
}

function ellipsoid(centre: Vec3, axes: readonly [Vec3, Vec3, Vec3], index: number): EllipsoidOccluder {
  const inverse = axes.map((axis) => scale(axis, 1 / dot(axis, axis))) as unknown as readonly [
    Vec3,
    Vec3,
    Vec3,
  ];
  return { kind: "ellipsoid", centre, axes, inverse, bound: Math.max(...axes.map(length)), index };
}

/** Everything of a scene that can hide light, polygons first, in the scene's order. */
export function occludersOf(scene: Scene): readonly Occluder[] {
  const polygons = scene.polygons
    .filter((polygon) => polygon.vertices.length >= 3)
    .map((polygon) => polygonOccluder(polygon, scene.polygons.indexOf(polygon)));
  const bodies = scene.bodies.map((body, i) => bodyOccluder(body, scene.polygons.length + i));
  return [...polygons, ...bodies];
}
