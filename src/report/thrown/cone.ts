import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import {
  add,
  addScaled,
  cross,
  dot,
  frameAround,
  length,
  normalise,
  scale,
  subtract,
} from "../../math/vector.js";
import { bodyCut, sideOf } from "../../transport/hiding/body-cut.js";
import type { CapsuleOccluder, EllipsoidOccluder, Occluder } from "../../transport/hiding/occluder.js";
import { hullOf } from "../frame/hull.js";
import type { Place } from "../frame/region.js";
import type { Ground } from "./plane.js";

/** Points on the round of a body along which rays from a light touch it. */
const CORNERS = 48;
/** Cosine and sine of the turn to each of them from the first one. */
const cosines = Float64Array.from({ length: CORNERS }, (_, i) => Math.cos((2 * Math.PI * i) / CORNERS));
const sines = Float64Array.from({ length: CORNERS }, (_, i) => Math.sin((2 * Math.PI * i) / CORNERS));

/** Point i of a circle, by its middle and two unit vectors of its plane. */
function onCircle(middle: Vec3, u: Vec3, v: Vec3, radius: number, i: number): Vec3 {
  const side = addScaled(middle, u, radius * (cosines[i] as number));
  return addScaled(side, v, radius * (sines[i] as number));
}

/** A place of the scene where an ellipsoid is the unit sphere. */
export function toUnit({ centre, inverse }: EllipsoidOccluder, point: Vec3): Vec3 {
  const from = subtract(point, centre);
  return [dot(from, inverse[0]), dot(from, inverse[1]), dot(from, inverse[2])];
}

/** A place of the unit sphere on the ellipsoid. */
export function fromUnit({ centre, axes }: EllipsoidOccluder, point: Vec3): Vec3 {
  return add(centre, addScaled(addScaled(scale(axes[0], point[0]), axes[1], point[1]), axes[2], point[2]));
}

/** Where rays from a place touch an ellipsoid: a circle of the unit sphere, whose points go back exactly. */
function touchEllipsoid(body: EllipsoidOccluder, eye: Vec3): readonly Vec3[] {
  const there = toUnit(body, eye);
  const square = dot(there, there);
  if (!(square > 1)) return [];
  const near = scale(there, 1 / Math.sqrt(square));
  const [u, v] = frameAround(near);
  const middle = scale(there, 1 / square);
  const radius = Math.sqrt(1 - 1 / square);
  const touching: Vec3[] = [];
  for (let i = 0; i < CORNERS; i++) touching.push(fromUnit(body, onCircle(middle, u, v, radius, i)));
  return touching;
}

function touchBall(centre: Vec3, r: number, eye: Vec3): Vec3[] {
  const sight = subtract(eye, centre);
  const square = dot(sight, sight);
  if (!(square > r * r)) return [];
  const [u, v] = frameAround(scale(sight, 1 / Math.sqrt(square)));
  const middle = addScaled(centre, sight, (r * r) / square);
  const radius = r * Math.sqrt(1 - (r * r) / square);
  const touching: Vec3[] = [];
  for (let i = 0; i < CORNERS; i++) touching.push(onCircle(middle, u, v, radius, i));
  return touching;
}

/**
 * Where rays touch a capsule: on both end balls, and where the two planes through the light that touch its tube meet
 * the ends. The hull of them is what is seen of it.
 */
function touchCapsule({ from, to, radius }: CapsuleOccluder, eye: Vec3): readonly Vec3[] {
  const balls = [...touchBall(from, radius, eye), ...touchBall(to, radius, eye)];
  const axis = normalise(subtract(to, from));
  if (axis === undefined) return balls;
  const sight = subtract(from, eye);
  const square = addScaled(sight, axis, -dot(sight, axis));
  const away = length(square);
  if (!(away > radius)) return balls;
  const near = scale(square, 1 / away);
  const side = cross(axis, near);
  const sin = Math.sqrt(1 - (radius / away) * (radius / away));
  for (const sign of [1, -1]) {
    const out = addScaled(scale(near, -radius / away), side, sign * sin);
    balls.push(addScaled(from, out, radius), addScaled(to, out, radius));
  }
  return balls;
}

/** The points of a thing before a surface whose hull, seen from the light, is the thing. */
function touched(thing: Occluder, eye: Vec3, { normal, offset }: Ground): readonly Vec3[] {
  if (thing.kind === "polygon") return clipByPlane(thing.corners, normal, offset + 1e-6);
  const points = thing.kind === "ellipsoid" ? touchEllipsoid(thing, eye) : touchCapsule(thing, eye);
  const lies = sideOf(thing, { normal, offset });
  if (lies === "beyond") return [];
  if (lies === "before") return points;
  const before: Vec3[] = [];
  for (const point of points) if (dot(point, normal) > offset) before.push(point);
  before.push(...bodyCut(thing, { normal, offset }));
  return before;
}

/**
 * A direction from a light along which every place of a convex thing lies ahead. Of a sheet its normal, along which all of it
 * is as far; of an ellipsoid the way to its middle where it is a ball, for (q - e) . (-e) is at least |e| (|e| - 1) for a
 * place q of the unit ball and a light e outside it; of a tube the way to the nearest place of its axis.
 */
function ahead(thing: Occluder, eye: Vec3): Vec3 {
  switch (thing.kind) {
    case "polygon":
      return scale(thing.normal, thing.offset > dot(thing.normal, eye) ? 1 : -1);
    case "ellipsoid": {
      const e = toUnit(thing, eye);
      const [a, b, c] = thing.inverse;
      return scale(addScaled(addScaled(scale(a, e[0]), b, e[1]), c, e[2]), -1);
    }
    case "capsule": {
      const from = subtract(eye, thing.from);
      const along = subtract(thing.to, thing.from);
      const long = dot(along, along);
      const share = long > 0 ? Math.min(1, Math.max(0, dot(from, along) / long)) : 0;
      return subtract(addScaled(thing.from, along, share), eye);
    }
    default:
      return thing satisfies never;
  }
}

/**
 * The shadow that a small light at `eye` throws of one convex thing on a surface, cut to a part of the surface: a convex
 * ring whose corners lie where rays that touch the thing meet the surface. Empty where there is none, also from a light
 * inside the thing or in its plane.
 *
 * @param part - A convex part of the surface.
 */
export function shadowOn(thing: Occluder, eye: Vec3, ground: Ground, part: readonly Vec3[]): readonly Vec3[] {
  if (thing.kind === "polygon" && Math.abs(dot(thing.normal, eye) - thing.offset) < 1e-3) return [];
  const points = touched(thing, eye, ground);
  const middle = normalise(ahead(thing, eye));
  if (points.length < 3 || middle === undefined) return [];
  const [u, v] = frameAround(middle);
  const seen: Place[] = [];
  for (const point of points) {
    const way = subtract(point, eye);
    const far = dot(way, middle);
    if (!(far > 1e-9)) return [];
    seen.push([dot(way, u) / far, dot(way, v) / far]);
  }
  const ring: Vec3[] = [];
  for (const place of hullOf(seen)) ring.push(addScaled(addScaled(middle, u, place[0]), v, place[1]));
  let left = part;
  for (let i = 0; i < ring.length && left.length > 0; i++) {
    const inward = normalise(cross(ring[i] as Vec3, ring[(i + 1) % ring.length] as Vec3));
    if (inward !== undefined) left = clipByPlane(left, inward, dot(inward, eye));
  }
  return left;
}
