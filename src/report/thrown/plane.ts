import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, frameAround, scale, subtract } from "../../math/vector.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import type { Place, Ring } from "../frame/region.js";

/** A flat surface on which shadows fall, seen from the side on which the light is. */
export interface Ground {
  readonly polygon: ScenePolygon;
  /** Unit vector out of the lit side. */
  readonly normal: Vec3;
  /** Product of the normal with every point of the surface. */
  readonly offset: number;
  readonly u: Vec3;
  readonly v: Vec3;
}

/** Metres for one step of a place: cutting works on whole numbers, which keep a thousandth of a millimetre this way. */
const UNIT = 32;

/** Half the side of the floor that stands for the ground where there is no room, m. */
const OPEN = 60;

/** Surfaces of the room, which have one side. */
export const isShell = ({ kind }: ScenePolygon): boolean =>
  kind === "floor" || kind === "ceiling" || kind === "wall";

/** The ground in the open: a level square of 120 m, without light of its own. */
const openFloor: ScenePolygon = {
  name: "floor",
  kind: "floor",
  vertices: [
    [-OPEN, -OPEN, 0],
    [OPEN, -OPEN, 0],
    [OPEN, OPEN, 0],
    [-OPEN, OPEN, 0],
  ],
  normal: [0, 0, 1],
  frontReflectance: 0,
  backReflectance: 0,
};

/** Every flat surface of a scene; in the open a level floor is added. */
export function surfacesOf(scene: Scene): readonly ScenePolygon[] {
  const real = scene.polygons.filter((polygon) => polygon.vertices.length >= 3);
  return real.some(({ kind }) => kind === "floor") ? real : [...real, openFloor];
}

/** How far a point lies before the front of a polygon, m. */
export function before({ vertices, normal }: ScenePolygon, point: Vec3): number {
  return dot(subtract(point, vertices[0] ?? point), normal);
}

/** The side of a surface that a light at a place shines on; null for one seen edge on, and behind a wall. */
export function groundOf(polygon: ScenePolygon, light: Vec3): Ground | null {
  const away = before(polygon, light);
  if (Math.abs(away) < 1e-4 || (away < 0 && isShell(polygon))) return null;
  const normal = away > 0 ? polygon.normal : scale(polygon.normal, -1);
  const [u, v] = frameAround(normal);
  return { polygon, normal, offset: dot(normal, polygon.vertices[0] ?? normal), u, v };
}

/** A ring of the surface as places of its plane. */
export function toPlane({ u, v }: Ground, points: readonly Vec3[]): Ring {
  const ring: Place[] = [];
  for (const point of points) ring.push([dot(u, point) / UNIT, dot(v, point) / UNIT]);
  return ring;
}

/** Places of the plane as a ring of the surface. */
export function fromPlane({ u, v, normal, offset }: Ground, ring: Ring): readonly Vec3[] {
  const points: Vec3[] = [];
  for (const place of ring) {
    const inPlane = addScaled(scale(u, place[0] * UNIT), v, place[1] * UNIT);
    points.push(addScaled(inPlane, normal, offset));
  }
  return points;
}

/** Square metres for an area of places. */
export const SQUARE = UNIT * UNIT;
