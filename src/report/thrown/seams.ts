import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, dot, subtract } from "../../math/vector.js";
import type { ScenePolygon } from "../../scene/types.js";

/** Surfaces nearer than this at their edges meet there, m. */
const JOINT = 0.005;
/** A place of an outline this near to an edge lies on it, m. */
const ON = 1e-4;

function toSegment(point: Vec3, a: Vec3, b: Vec3): number {
  const way = subtract(b, a);
  const square = dot(way, way);
  const t = square > 0 ? Math.min(1, Math.max(0, dot(subtract(point, a), way) / square)) : 0;
  return distance(point, addScaled(a, way, t));
}

/** How far a point is from the rim of a polygon, m. */
export function toRim({ vertices }: ScenePolygon, point: Vec3): number {
  return vertices.reduce(
    (least, a, i) => Math.min(least, toSegment(point, a, vertices[(i + 1) % vertices.length] as Vec3)),
    Number.POSITIVE_INFINITY,
  );
}

/** How far a point is from a flat surface, rim included, m. */
export function toSurface(polygon: ScenePolygon, point: Vec3): number {
  const { vertices, normal } = polygon;
  const above = dot(subtract(point, vertices[0] ?? point), normal);
  const foot = addScaled(point, normal, -above);
  const inside = vertices.every((a, i) => {
    const b = vertices[(i + 1) % vertices.length] as Vec3;
    const [e, f] = [subtract(b, a), subtract(foot, a)];
    const turn: Vec3 = [e[1] * f[2] - e[2] * f[1], e[2] * f[0] - e[0] * f[2], e[0] * f[1] - e[1] * f[0]];
    return dot(turn, normal) >= 0;
  });
  return inside ? Math.abs(above) : toRim(polygon, point);
}

/** The places of an outline that lie on the rim of its surface: there the shadow goes on elsewhere, or past it. */
export function placesOnRim(polygon: ScenePolygon, rings: readonly (readonly Vec3[])[]): readonly Vec3[] {
  return rings.flat().filter((point) => toRim(polygon, point) < ON);
}

/** Whether two surfaces meet at one of some places on the rim of either. */
export function meetAt(places: readonly Vec3[], other: ScenePolygon): boolean {
  return places.some((place) => toSurface(other, place) < JOINT);
}
