import type { Vec3 } from "../../core/vector.js";
import {
  add,
  addScaled,
  distance,
  dot,
  frameAround,
  length,
  normalise,
  scale,
  subtract,
} from "../../math/vector.js";
import { ballRound } from "../../scene/body-ball.js";
import type { Body, ScenePolygon } from "../../scene/types.js";

/** A convex thing: a rounded solid, or what lies between some corners. */
export type Convex =
  | { readonly kind: "round"; readonly name: string; readonly body: Body }
  | {
      readonly kind: "corners";
      readonly name: string;
      readonly corners: readonly Vec3[];
      /** Unit vectors square to its sides. */
      readonly normals: readonly Vec3[];
    };

/** A rounded solid as a convex thing. */
export const roundOf = (body: Body): Convex => ({ kind: "round", name: body.name, body });

/** A sheet, or a box by its sides, as a convex thing. */
export function cornersOf(name: string, sides: readonly ScenePolygon[]): Convex {
  return {
    kind: "corners",
    name,
    corners: sides.flatMap(({ vertices }) => vertices),
    normals: sides.map(({ normal }) => normal),
  };
}

/** The same thing carried along. */
export function carried(thing: Convex, by: Vec3): Convex {
  if (thing.kind === "corners") return { ...thing, corners: thing.corners.map((at) => add(at, by)) };
  const { body } = thing;
  const moved: Body =
    body.kind === "capsule"
      ? { ...body, from: add(body.from, by), to: add(body.to, by) }
      : { ...body, centre: add(body.centre, by) };
  return { ...thing, body: moved };
}

/** How far a thing reaches along a unit vector from the origin, m. */
export function reachAlong(thing: Convex, way: Vec3): number {
  if (thing.kind === "corners") {
    let most = Number.NEGATIVE_INFINITY;
    for (const corner of thing.corners) most = Math.max(most, dot(corner, way));
    return most;
  }
  const { body } = thing;
  switch (body.kind) {
    case "sphere":
      return dot(body.centre, way) + body.radius;
    case "capsule":
      return Math.max(dot(body.from, way), dot(body.to, way)) + body.radius;
    case "ellipsoid": {
      const [p, q, r] = body.axes;
      const [a, b, c] = [dot(p, way), dot(q, way), dot(r, way)];
      return dot(body.centre, way) + Math.sqrt(a * a + b * b + c * c);
    }
    default:
      return body satisfies never;
  }
}

/** Middle of a thing, and how far it reaches from there. */
function ballOf(thing: Convex): readonly [Vec3, number] {
  if (thing.kind === "round") return ballRound(thing.body);
  const sum = thing.corners.reduce(add, [0, 0, 0] as Vec3);
  const middle = scale(sum, 1 / Math.max(1, thing.corners.length));
  return [middle, Math.max(0, ...thing.corners.map((at) => distance(at, middle)))];
}

/** Unit vectors spread evenly over all directions: a spiral of the golden angle. */
const spread: readonly Vec3[] = /* @__PURE__ */ Array.from({ length: 64 }, (_, i): Vec3 => {
  const z = (2 * i + 1) / 64 - 1;
  const turn = i * Math.PI * (3 - Math.sqrt(5));
  const level = Math.sqrt(1 - z * z);
  return [level * Math.cos(turn), level * Math.sin(turn), z];
});

/** How many of the directions are followed to the least nearby, and how fine, radians. */
const FOLLOWED = 4;
const FINEST = 1e-4;

/**
 * How far one of two convex things has to be carried, in the best direction, until they only touch, m; 0 for things that
 * are apart. It is the least over all directions of what they share along it (the separating axis theorem): found from
 * directions all round and followed downhill, so what is given is never less than it is.
 *
 * @param enough - Less than this is given as 0.
 */
export function overlapOf(a: Convex, b: Convex, enough: number): number {
  const [[middleA, roundA], [middleB, roundB]] = [ballOf(a), ballOf(b)];
  const apart = subtract(middleB, middleA);
  if (length(apart) >= roundA + roundB - enough) return 0;
  const shared = (way: Vec3): number => reachAlong(a, way) + reachAlong(b, scale(way, -1));
  const own = [a, b].flatMap((thing) => (thing.kind === "corners" ? thing.normals : []));
  const line = normalise(apart);
  const starts = [
    ...(line === undefined ? [] : [line]),
    ...own,
    ...own.map((way) => scale(way, -1)),
    ...spread,
  ];
  const tried: (readonly [number, Vec3])[] = [];
  for (const way of starts) {
    const depth = shared(way);
    if (depth <= enough) return 0;
    tried.push([depth, way]);
  }
  tried.sort(([p], [q]) => p - q);
  let least = Number.POSITIVE_INFINITY;
  for (const [depth, way] of tried.slice(0, FOLLOWED)) {
    least = Math.min(least, followed(shared, way, depth));
    if (least <= enough) return 0;
  }
  return least;
}

/** The least of a function of directions that lies downhill from one of them. */
function followed(of: (way: Vec3) => number, start: Vec3, value: number): number {
  let way = start;
  let least = value;
  for (let step = 0.2; step > FINEST; ) {
    const [u, v] = frameAround(way);
    let better = false;
    for (const [s, t] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const there = normalise(addScaled(addScaled(way, u, s * step), v, t * step)) ?? way;
      const found = of(there);
      if (!(found < least)) continue;
      way = there;
      least = found;
      better = true;
      break;
    }
    if (!better) step /= 2;
  }
  return least;
}
