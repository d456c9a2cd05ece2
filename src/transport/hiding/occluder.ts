import type { Vec3 } from "../../core/vector.js";
import { cross, distance, dot, length, scale, subtract } from "../../math/vector.js";
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

interface Edge {
  readonly out: Vec3;
  readonly offset: number;
}

/** A flat piece or a surface of the room. */
export interface PolygonOccluder extends Bound {
  readonly kind: "polygon";
  readonly corners: readonly Vec3[];
  readonly normal: Vec3;
  /** Product of the normal with every point of the polygon. */
  readonly offset: number;
  /** Unit vectors in its plane and out of its edges, with their offsets: inside is below all of them. */
  readonly edges: readonly Edge[];
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

function mean(points: readonly Vec3[]): Vec3 {
  const n = Math.max(1, points.length);
  let x = 0;
  let y = 0;
  let z = 0;
  for (const p of points) {
    x += p[0];
    y += p[1];
    z += p[2];
  }
  return [x / n, y / n, z / n];
}

function reach(centre: Vec3, points: readonly Vec3[]): number {
  let most = 0;
  for (const p of points) most = Math.max(most, distance(p, centre));
  return most;
}

const shellKinds: ReadonlySet<ScenePolygon["kind"]> = new Set(["floor", "ceiling", "wall"]);

function polygonOccluder(polygon: ScenePolygon, index: number): PolygonOccluder {
  const { vertices: corners, normal } = polygon;
  const centre = mean(corners);
  const first = corners[0] ?? centre;
  const edges: Edge[] = [];
  for (let i = 0; i < corners.length; i++) {
    const corner = corners[i] as Vec3;
    const out = cross(subtract(corners[(i + 1) % corners.length] as Vec3, corner), normal);
    const size = length(out);
    const unit = size > 0 ? scale(out, 1 / size) : out;
    edges.push({ out: unit, offset: dot(unit, corner) });
  }
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
  const [p, q, r] = axes;
  const bound = Math.max(length(p), length(q), length(r));
  return { kind: "ellipsoid", centre, axes, inverse: [over(p), over(q), over(r)], bound, index };
}

/** A semi-axis over its squared length. */
const over = (axis: Vec3): Vec3 => scale(axis, 1 / dot(axis, axis));

/** Everything of a scene that can hide light, polygons first, in the scene's order. */
export function occludersOf(scene: Scene): readonly Occluder[] {
  const { polygons, bodies } = scene;
  const occluders: Occluder[] = [];
  for (let i = 0; i < polygons.length; i++) {
    const polygon = polygons[i] as ScenePolygon;
    if (polygon.vertices.length >= 3) occluders.push(polygonOccluder(polygon, i));
  }
  for (let i = 0; i < bodies.length; i++)
    occluders.push(bodyOccluder(bodies[i] as Body, polygons.length + i));
  return occluders;
}
