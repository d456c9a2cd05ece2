import type { Vec3 } from "../../core/vector.js";
import { add, addScaled, cross, dot, length, normalise, scale, subtract } from "../../math/vector.js";
import type { Body } from "../../scene/types.js";

type Ellipsoid = Extract<Body, { kind: "ellipsoid" }>;

/** A place on a body and the unit vector out of its surface there. */
export interface OnBody {
  readonly at: Vec3;
  readonly normal: Vec3;
}

/**
 * An ellipsoid as seen from an eye, in the frame in which it is a sphere of radius 1 round the origin: straight lines
 * stay straight and what touches still touches there, so its outline is the circle `u . eye = 1` of that sphere.
 */
export interface SeenBody {
  readonly body: Ellipsoid;
  /** The eye in that frame. */
  readonly eye: Vec3;
  /** Unit vectors of that frame: to the eye, to the asked side of the outline, and along the outline there. */
  readonly near: Vec3;
  readonly side: Vec3;
  readonly along: Vec3;
}

/** A place of the scene in the frame in which the ellipsoid is a sphere of radius 1. */
export function toSphere({ centre, axes }: Ellipsoid, point: Vec3): Vec3 {
  const from = subtract(point, centre);
  const part = (axis: Vec3): number => dot(from, axis) / dot(axis, axis);
  return [part(axes[0]), part(axes[1]), part(axes[2])];
}

/** A place on the sphere as a place on the body. */
export function onBody({ centre, axes }: Ellipsoid, [a, b, c]: Vec3): Vec3 {
  return add(centre, addScaled(addScaled(scale(axes[0], a), axes[1], b), axes[2], c));
}

function normalAt({ axes }: Ellipsoid, u: Vec3): Vec3 {
  const part = (axis: Vec3, share: number): Vec3 => scale(axis, share / dot(axis, axis));
  const out = add(add(part(axes[0], u[0]), part(axes[1], u[1])), part(axes[2], u[2]));
  return normalise(out) ?? [0, 0, 1];
}

/**
 * An ellipsoid seen from `eye`, turned so that the place of its outline that lies farthest towards `towards` is its
 * side. Null from inside of it, and for a direction that points at the eye.
 */
export function seenFrom(body: Ellipsoid, eye: Vec3, towards: Vec3): SeenBody | null {
  const there = toSphere(body, eye);
  const near = length(there) > 1 ? normalise(there) : undefined;
  if (near === undefined) return null;
  const [a, b, c] = body.axes;
  const pull: Vec3 = [dot(a, towards), dot(b, towards), dot(c, towards)];
  const side = normalise(addScaled(pull, near, -dot(pull, near)));
  return side === undefined ? null : { body, eye: there, near, side, along: cross(near, side) };
}

/** A direction square to the line of sight, `turn` radians round the outline from the asked side. */
function round({ side, along }: SeenBody, turn: number): Vec3 {
  return addScaled(scale(side, Math.cos(turn)), along, Math.sin(turn));
}

/** A place in the plane of the outline: `share` of the way from its middle to its rim, as a place of the scene. */
export function inOutlinePlane(seen: SeenBody, turn: number, share: number): Vec3 {
  const away = length(seen.eye);
  const radius = Math.sqrt(1 - 1 / (away * away));
  return onBody(seen.body, addScaled(scale(seen.near, 1 / away), round(seen, turn), share * radius));
}

/** The place of the body that the eye sees at a `share` below 1 of the way from the middle of the outline to its rim. */
export function insideOutline(seen: SeenBody, turn: number, share: number): OnBody {
  const away = length(seen.eye);
  const radius = Math.sqrt(1 - 1 / (away * away));
  const target = addScaled(scale(seen.near, 1 / away), round(seen, turn), share * radius);
  const way = normalise(subtract(target, seen.eye)) as Vec3;
  const half = -dot(seen.eye, way);
  const u = addScaled(seen.eye, way, half - Math.sqrt(half * half - (away * away - 1)));
  return { at: onBody(seen.body, u), normal: normalAt(seen.body, u) };
}

/**
 * The place on the body's section through the eye and the asked side, `angle` radians from the place nearest to the
 * eye: the outline is at `acos(1 / |eye|)`.
 */
export function onSection({ body, near, side }: SeenBody, angle: number): OnBody {
  const u = addScaled(scale(near, Math.cos(angle)), side, Math.sin(angle));
  return { at: onBody(body, u), normal: normalAt(body, u) };
}
