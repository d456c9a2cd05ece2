import type { Vec3 } from "../../core/vector.js";
import { addScaled, dot, length, normalise, scale, subtract } from "../../math/vector.js";
import type { Body, Scene } from "../../scene/types.js";
import { emptyHit, firstHit, type Hit } from "../../transport/bounce/first-hit.js";
import { type World, worldOf } from "../../transport/bounce/world.js";
import type { Meter } from "../../transport/meter.js";
import { ownerOf } from "../say/surfaces.js";
import { toSphere } from "./outline.js";

/** What is met by a line of sight. */
export interface Met {
  /** The piece of the set, wall, or body it belongs to. */
  readonly owner: string;
  /** From the eye, m. */
  readonly way: number;
}

/** A surface that is met by a line of sight. */
export interface Seen extends Met {
  /** A flat receptor on the side of it that is seen. */
  readonly meter: Meter;
  /** Of that side, 0 to 1. */
  readonly reflectance: number;
}

/** Looks from a place along a unit vector; null where the line of sight leaves the set. */
export type Sight = (eye: Vec3, way: Vec3) => Seen | null;

/** A scene made ready for `peek`. */
export interface Peek {
  readonly scene: Scene;
  readonly world: World;
  readonly hit: Hit;
}

/** Makes a scene ready to be peeked into. */
export function peekOf(scene: Scene): Peek {
  return { scene, world: worldOf(scene), hit: emptyHit() };
}

/** What is met from a place along a unit vector, and how far away; null where the line of sight leaves the set. */
export function peek({ scene, world, hit }: Peek, eye: Vec3, way: Vec3): Met | null {
  const { polygons, bodies } = scene;
  firstHit(world, eye[0], eye[1], eye[2], way[0], way[1], way[2], hit);
  if (hit.thing < 0) return null;
  const polygon = polygons[hit.thing];
  const owner = polygon === undefined ? bodies[hit.thing - polygons.length]?.name : ownerOf(polygon.name);
  return { owner: owner ?? "", way: hit.way };
}

/** The sights of a scene. */
export function sightOf(scene: Scene): Sight {
  const world = worldOf(scene);
  const hit = emptyHit();
  return (eye, way) => look(scene, world, hit, eye, way);
}

function look(scene: Scene, world: World, hit: Hit, eye: Vec3, way: Vec3): Seen | null {
  firstHit(world, eye[0], eye[1], eye[2], way[0], way[1], way[2], hit);
  if (hit.thing < 0) return null;
  const at = addScaled(eye, way, hit.way);
  const polygon = scene.polygons[hit.thing];
  if (polygon !== undefined) {
    return {
      meter: { at, facing: hit.front ? polygon.normal : scale(polygon.normal, -1), receptor: "disc" },
      reflectance: hit.front ? polygon.frontReflectance : polygon.backReflectance,
      owner: ownerOf(polygon.name),
      way: hit.way,
    };
  }
  const body = scene.bodies[hit.thing - scene.polygons.length] as Body;
  return {
    meter: { at, facing: outOf(body, at), receptor: "disc" },
    reflectance: body.reflectance,
    owner: body.name,
    way: hit.way,
  };
}

/** The unit vector out of a body at a place of its surface. */
function outOf(body: Body, at: Vec3): Vec3 {
  if (body.kind === "sphere") return normalise(subtract(at, body.centre)) ?? [0, 0, 1];
  if (body.kind === "ellipsoid") {
    const [a, b, c] = toSphere(body, at);
    const [p, q, r] = body.axes;
    const out = addScaled(addScaled(scale(p, a / dot(p, p)), q, b / dot(q, q)), r, c / dot(r, r));
    return normalise(out) ?? [0, 0, 1];
  }
  const along = subtract(body.to, body.from);
  const size = length(along);
  const share = size > 0 ? dot(subtract(at, body.from), along) / (size * size) : 0;
  const near = addScaled(body.from, along, Math.min(1, Math.max(0, share)));
  return normalise(subtract(at, near)) ?? [0, 0, 1];
}
