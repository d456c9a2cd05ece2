import type { Vec3 } from "../core/vector.js";
import { nearestOnEllipsoid } from "../math/nearest-on-ellipsoid.js";
import { addScaled, between, distance, dot, length, subtract } from "../math/vector.js";
import { ballRound } from "./body-ball.js";
import { boxesOf, type SceneBox } from "./boxes.js";
import { crosses } from "./crosses.js";
import type { Body, Scene, ScenePolygon } from "./types.js";

/** A solid thing in which a place lies. */
export interface Sunk {
  /** A body's name, or that of a box. */
  readonly name: string;
  readonly of: "subject" | "stand" | "piece";
  /** How far below its surface, m. */
  readonly depth: number;
  /** The place of its surface that is nearest. */
  readonly surface: Vec3;
}

/**
 * How far a meter may lie below the surface of a solid and still reads what the surface reads, m. A place is known to 2 cm
 * by tape and 3 cm in height, so that a place on the surface may be worked out this far below it; a head or a limb of flesh
 * is not nearer to the round bodies of this program.
 */
export const MOST_SUNK = 0.05;

/** What lies lower than this below a surface lies on it, m. */
const HAIR = 1e-9;

/** Where bodies touch, a place that is led out of one may lie in the next; so often it is led on. */
const TURNS = 32;

/** How far before a sheet on which it lies a meter counts as being, m. */
const BEFORE = 2e-6;

/** The solids of a scene, made ready for many places. */
export interface Solids {
  readonly solids: readonly (Body | SceneBox)[];
  /** Centre and radius of a ball round each of them, four numbers each. */
  readonly balls: Float64Array;
  readonly polygons: readonly ScenePolygon[];
}

/** Makes the solids of a scene ready. */
export function solidsOf({ bodies, polygons }: Pick<Scene, "bodies" | "polygons">): Solids {
  const solids = [...bodies, ...boxesOf(polygons)];
  const balls = new Float64Array(4 * solids.length);
  for (let i = 0; i < solids.length; i++) {
    const [[x, y, z], radius] = ballOf(solids[i] as Body | SceneBox);
    balls.set([x, y, z, radius], 4 * i);
  }
  return { solids, balls, polygons };
}

/** Middle of a solid, and how far it reaches from there. */
function ballOf(solid: Body | SceneBox): readonly [Vec3, number] {
  if (solid.kind !== "box") return ballRound(solid);
  const corners = solid.sides.flatMap(({ vertices }) => vertices);
  const low = corners.reduce(lower);
  const high = corners.reduce(higher);
  return [between(low, high, 0.5), distance(low, high) / 2];
}

const lower = (a: Vec3, b: Vec3): Vec3 => [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])];
const higher = (a: Vec3, b: Vec3): Vec3 => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])];

/** The solid in which a place lies deepest; null for a place that is free. */
export function sunkIn({ solids, balls }: Solids, at: Vec3): Sunk | null {
  let deepest: Sunk | null = null;
  for (let i = 0; i < solids.length; i++) {
    const x = at[0] - (balls[4 * i] as number);
    const y = at[1] - (balls[4 * i + 1] as number);
    const z = at[2] - (balls[4 * i + 2] as number);
    const r = balls[4 * i + 3] as number;
    if (x * x + y * y + z * z > r * r) continue;
    const solid = solids[i] as Body | SceneBox;
    const surface = solid.kind === "box" ? outOfBox(solid.sides, at) : outOfBody(solid, at);
    if (surface === null) continue;
    const depth = distance(at, surface);
    if (!(depth > (deepest?.depth ?? HAIR))) continue;
    const of = (solid.kind === "box" ? undefined : solid.of) ?? "piece";
    deepest = { name: solid.name, of, depth, surface };
  }
  return deepest;
}

/**
 * Where a meter is that is held at a place: there, or at the surface of the solids in which the place lies, where that is
 * not further off than `MOST_SUNK` and no sheet lies between. Null for a place in the inside of something, where nothing
 * can be held.
 */
export function surfaced(solids: Solids, at: Vec3, facing: Vec3): Vec3 | null {
  let place = at;
  for (let i = 0; i < TURNS; i++) {
    const sunk = sunkIn(solids, place);
    if (sunk === null) break;
    place = sunk.surface;
    if (distance(at, place) > MOST_SUNK) return null;
  }
  if (place === at) return at;
  const before = addScaled(at, facing, BEFORE);
  return solids.polygons.some((sheet) => sheet.kind !== "box" && crosses(sheet, before, place))
    ? null
    : place;
}

/** The place of a round body's surface that is nearest to a place inside; null for one that is not. */
function outOfBody(body: Body, at: Vec3): Vec3 | null {
  switch (body.kind) {
    case "ellipsoid": {
      const [p, q, r] = body.axes;
      const half = [length(p), length(q), length(r)] as const;
      const off = subtract(at, body.centre);
      const parts = [dot(off, p) / half[0], dot(off, q) / half[1], dot(off, r) / half[2]] as const;
      const [x, y, z] = [parts[0] / half[0], parts[1] / half[1], parts[2] / half[2]];
      if (!(x * x + y * y + z * z < 1)) return null;
      const near = nearestOnEllipsoid(half, parts);
      const along = (to: Vec3, i: 0 | 1 | 2): Vec3 => addScaled(to, body.axes[i], near[i] / half[i]);
      return along(along(along(body.centre, 0), 1), 2);
    }
    case "sphere":
      return outOfBall(body.centre, body.radius, at, [0, 0, 1]);
    case "capsule": {
      const way = subtract(body.to, body.from);
      const long = dot(way, way);
      const share = long > 0 ? Math.min(1, Math.max(0, dot(subtract(at, body.from), way) / long)) : 0;
      return outOfBall(addScaled(body.from, way, share), body.radius, at, asideOf(way));
    }
    default:
      return body satisfies never;
  }
}

/** A unit vector square to another; up where that has no direction. */
function asideOf([x, y]: Vec3): Vec3 {
  const level = Math.sqrt(x * x + y * y);
  return level > 0 ? [-y / level, x / level, 0] : [1, 0, 0];
}

/** The place of a ball's surface over a place inside; from its very middle to one side. */
function outOfBall(centre: Vec3, radius: number, at: Vec3, aside: Vec3): Vec3 | null {
  const off = subtract(at, centre);
  const far = length(off);
  if (!(far < radius)) return null;
  return far > 0 ? addScaled(centre, off, radius / far) : addScaled(centre, aside, radius);
}

/** The place of a box's nearest side over a place inside; null for one that is not. */
function outOfBox(sides: readonly ScenePolygon[], at: Vec3): Vec3 | null {
  let best: Vec3 | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { vertices, normal } of sides) {
    const depth = dot(subtract(vertices[0] ?? at, at), normal);
    if (!(depth > 0)) return null;
    if (depth < least) {
      least = depth;
      best = addScaled(at, normal, depth);
    }
  }
  return best;
}
