import type { Vec3 } from "../../core/vector.js";
import { addScaled, between, distance, dot } from "../../math/vector.js";
import { shadowGrowth } from "../../physics/floor-shadow.js";
import type { Scene, Source } from "../../scene/types.js";
import type { Region } from "../frame/region.js";
import { alongFloor, directionTo } from "../geometry/directions.js";
import { ownerOf } from "../say/surfaces.js";
import { type EdgeAt, edgesAlong } from "./edges.js";
import { partInFrame } from "./in-picture.js";
import { surfacesOf } from "./plane.js";
import { meetAt, placesOnRim, toSurface } from "./seams.js";
import {
  groundOwner,
  type LitGround,
  litGrounds,
  type PointLight,
  pointLight,
  ringsOf,
  squareMetres,
  thrownOn,
  within,
} from "./shade.js";
import { type Thrower, type Throwers, throwersOf } from "./throwers.js";

/** A shadow on one flat surface. */
export interface ShadowPart {
  readonly ground: LitGround;
  readonly region: Region;
  readonly rings: readonly (readonly Vec3[])[];
  /** m2 */
  readonly area: number;
  /** The part of it inside the frame; null without a camera, and where the frame shows nothing of the surface. */
  readonly seen: Region | null;
  /** The size of that part, m2; null with it. */
  readonly inFrame: number | null;
}

/** The shadow of one thing by one light on all flat surfaces of one owner: a leaf, a paper with its sweep, a wall. */
export interface Shadow {
  readonly light: PointLight;
  readonly thrower: Thrower;
  readonly surface: string;
  readonly parts: readonly ShadowPart[];
}

/** Less than this of a surface is no shadow, m2. */
const LEAST = 1e-6;

/** A light with the surfaces it shines on and all that throws shadows in it. */
export interface Stage {
  readonly scene: Scene;
  readonly light: PointLight;
  readonly throwers: Throwers;
  readonly grounds: readonly LitGround[];
}

/**
 * Sets the stage for the shadows of one light.
 *
 * @param owner - The only owner whose surfaces are looked at; all if not given.
 */
export function stageOf(
  scene: Scene,
  source: Source,
  throwers: Throwers = throwersOf(scene),
  owner?: string,
): Stage {
  const light = pointLight(source);
  const surfaces = surfacesOf(scene).filter(({ name }) => owner === undefined || ownerOf(name) === owner);
  const grounds = litGrounds(surfaces, light, throwers.all, throwers.isPerson);
  return { scene, light, throwers, grounds };
}

/** The shadows of all subjects by one light on the surfaces of one owner. */
export function shadowsOn(scene: Scene, source: Source, owner: string): readonly Shadow[] {
  const stage = stageOf(scene, source, throwersOf(scene), owner);
  return stage.throwers.people.flatMap((person) => shadowsOf(stage, person));
}

/** The shadow of one thing on every surface on which it falls; an owner's surfaces together, in the scene's order. */
export function shadowsOf(stage: Stage, thrower: Thrower): readonly Shadow[] {
  const { scene, light } = stage;
  const { camera } = scene;
  const owners = new Map<string, ShadowPart[]>();
  for (const ground of stage.grounds) {
    if (thrower.subject === null && groundOwner(ground) === thrower.name) continue;
    const region = thrownOn(light, ground, thrower.things, thrower.subject === null ? thrower.name : null);
    const area = squareMetres(region);
    if (!(area > LEAST)) continue;
    const frame = camera === null ? null : partInFrame(camera, ground.polygon.vertices);
    const seen = frame === null ? null : within(ground, region, frame);
    const inFrame = seen === null ? null : squareMetres(seen);
    const owner = groundOwner(ground);
    const part: ShadowPart = { ground, region, rings: ringsOf(ground, region), area, seen, inFrame };
    owners.set(owner, [...(owners.get(owner) ?? []), part]);
  }
  return [...owners].map(([surface, parts]) => ({ light, thrower, surface, parts }));
}

/** The outline of what lies in the frame of a part of a shadow; empty without a camera. */
export function seenRings({ ground, seen }: ShadowPart): readonly (readonly Vec3[])[] {
  return seen === null ? [] : ringsOf(ground, seen);
}

/** m2 of a shadow, and of what of it lies in the frame; null without a camera. */
export function areas({ parts }: Shadow): { readonly all: number; readonly inFrame: number | null } {
  const all = parts.reduce((sum, { area }) => sum + area, 0);
  const inFrame = parts.reduce<number | null>(
    (sum, part) => (sum === null || part.inFrame === null ? null : sum + part.inFrame),
    0,
  );
  return { all, inFrame };
}

/** How far along the floor a shadow reaches from a place, m. */
export function reachFrom({ parts }: Shadow, place: Vec3): number {
  return parts
    .flatMap(({ rings }) => rings.flat())
    .reduce((most, point) => Math.max(most, alongFloor(place, point)), 0);
}

/**
 * How much larger than itself a thing is in its shadow: 1 + gap / distance on the ray through the middle of the head (of
 * a piece: of its first part). Null where that ray falls elsewhere.
 */
export function growthOf({ light, thrower, parts }: Shadow): number | null {
  const first = thrower.things[0];
  const middle = thrower.subject?.head ?? first?.solid.centre;
  const way = middle === undefined ? null : directionTo(light.at, middle);
  if (middle === undefined || way === null) return null;
  for (const { ground } of parts) {
    const slope = dot(way, ground.normal);
    const far = (ground.offset - dot(ground.normal, light.at)) / slope;
    const away = distance(light.at, middle);
    if (!(slope < 0) || !(far > away)) continue;
    if (toSurface(ground.polygon, addScaled(light.at, way, far)) < 1e-6)
      return shadowGrowth(away, far - away);
  }
  return null;
}

/** Where a shadow goes on from a surface: the other owners whose surfaces it meets at a seam. */
export function seamsOf(shadow: Shadow, others: readonly Shadow[]): readonly string[] {
  const places = (of: Shadow): readonly Vec3[] =>
    of.parts.flatMap(({ ground, rings }) => placesOnRim(ground.polygon, rings));
  const own = places(shadow);
  return others
    .filter(
      (other) =>
        other !== shadow &&
        (other.parts.some(({ ground }) => meetAt(own, ground.polygon)) ||
          shadow.parts.some(({ ground }) => meetAt(places(other), ground.polygon))),
    )
    .map(({ surface }) => surface);
}

/** Whether a shadow ends at the rim of a piece where no other piece of it goes on. */
export function runsOver({ parts }: Shadow): boolean {
  return parts.some((part) =>
    placesOnRim(part.ground.polygon, part.rings).some(
      (place) => !parts.some((other) => other !== part && meetAt([place], other.ground.polygon)),
    ),
  );
}

/** Most places of one shadow's outline at which its edge is worked out. */
const PLACES = 24;

/** Between neighbouring places of an outline lies no more than this, m. */
const STRETCH = 0.05;

/** The corners of a closed outline, and places on its long straight stretches. */
function placesOn(ring: readonly Vec3[]): readonly Vec3[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const count = Math.min(PLACES, Math.max(1, Math.ceil(distance(a, b) / STRETCH)));
    return Array.from({ length: count }, (_, k) => between(a, b, k / count));
  });
}

/** Places spread over the outline of a shadow, those in the frame where any are. */
function outlinePlaces({ parts }: Shadow): readonly [LitGround, Vec3][] {
  const on = (ground: LitGround, rings: readonly (readonly Vec3[])[]): [LitGround, Vec3][] =>
    rings.flatMap((ring) => placesOn(ring).map((point): [LitGround, Vec3] => [ground, point]));
  const seen = parts.flatMap((part) => on(part.ground, seenRings(part)));
  return seen.length > 0 ? seen : parts.flatMap(({ ground, rings }) => on(ground, rings));
}

/**
 * The edge of a shadow along its outline, by its width, least first: at no more than 24 places, inside the frame where
 * any of it lies there. Where the outline ends at the rim of a surface or of the frame there is no edge.
 */
export function outlineEdges(shadow: Shadow): readonly EdgeAt[] {
  const places = outlinePlaces(shadow);
  const lengths: number[] = [];
  let total = 0;
  places.forEach(([, point], i) => {
    const before = places[i - 1]?.[1];
    total += before === undefined ? 0 : Math.min(0.2, distance(before, point));
    lengths.push(total);
  });
  const step = total / PLACES;
  let next = 0;
  const chosen = places.filter((_, i) => {
    if ((lengths[i] ?? 0) < next) return false;
    next = (lengths[i] ?? 0) + step;
    return true;
  });
  return chosen
    .flatMap(([ground, place]) => edgesAlong(shadow.light, ground, shadow.thrower.things, [place]))
    .sort((a, b) => a.full - b.full);
}

/** The edge of middle width; null without any. */
export function middleEdge(edges: readonly EdgeAt[]): EdgeAt | null {
  return edges[Math.floor((edges.length - 1) / 2)] ?? null;
}

/** The lowest and highest points of a shadow, m above the floor. */
export function heights({ parts }: Shadow): readonly [low: number, high: number] {
  const all = parts.flatMap(({ rings }) => rings.flat().map((point) => point[2]));
  return [Math.min(...all), Math.max(...all)];
}

/** How far a place lies beyond the rim of the surfaces of an owner, m; 0 on them. */
export function beyond(shadow: Shadow, place: Vec3): number {
  return shadow.parts.reduce(
    (least, { ground }) => Math.min(least, toSurface(ground.polygon, place)),
    Number.POSITIVE_INFINITY,
  );
}
