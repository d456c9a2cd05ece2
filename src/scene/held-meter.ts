import type { Vec3 } from "../core/vector.js";
import { addScaled, dot } from "../math/vector.js";
import { axisTo } from "./lamp/axis.js";
import type { HeldBefore, Station } from "./types.js";

/** How far before the body a meter is held, m: a hand's breadth (common practice, no source). */
export const handBreadth = 0.08;

/**
 * Where a meter is held before a body for a light: a hand's breadth out of it, but square to the way to the light, so
 * that it is as far from the light as the body is. Before a light straight ahead it is where the body is; for one from
 * the side it stands free of the body. Without a light it is where the body is.
 */
export function heldAt({ at, ahead }: HeldBefore, light: Vec3 | null): Vec3 {
  const way = light === null ? null : axisTo(at, light);
  if (way === null) return at;
  return addScaled(addScaled(at, ahead, handBreadth), way, -handBreadth * dot(ahead, way));
}

/** A disc that is held at a place and looks at a light or another point; null where both are the same point. */
export interface HeldDisc {
  readonly at: Vec3;
  readonly facing: Vec3;
  readonly receptor: "disc";
}

/**
 * A disc at a place of a scene, turned to a point: before the body where a meter is held there (face, chest, knee,
 * shin), else at the place itself. Null where place and point are the same.
 */
export function discTowards(stations: readonly Station[], place: Vec3, point: Vec3): HeldDisc | null {
  const body = stations.find(({ before }) => before !== undefined && samePlace(before.at, place))?.before;
  const at = body === undefined ? place : heldAt(body, point);
  const facing = axisTo(at, point);
  return facing === null ? null : { at, facing, receptor: "disc" };
}

function samePlace(a: Vec3, b: Vec3): boolean {
  return Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9 && Math.abs(a[2] - b[2]) < 1e-9;
}
