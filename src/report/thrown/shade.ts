import type { Vec3 } from "../../core/vector.js";
import { clipByPlane } from "../../math/polygon.js";
import { addScaled, dot, frameAround, scale } from "../../math/vector.js";
import { sourceShape } from "../../scene/lamp/optics.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { Scene, ScenePolygon, Source } from "../../scene/types.js";
import { type Occluder, occludersOf } from "../../transport/hiding/occluder.js";
import { areaOf, difference, intersection, type Region, type Ring, turned, union } from "../frame/region.js";
import { ownerOf } from "../say/surfaces.js";
import { shadowOn } from "./cone.js";
import { before, fromPlane, type Ground, groundOf, isShell, SQUARE, toPlane } from "./plane.js";

/** A convex thing of the scene that throws a shadow, with its name. */
export interface Thing {
  readonly name: string;
  readonly solid: Occluder;
  /** The surface it is, where it is flat. */
  readonly polygon: ScenePolygon | null;
}

/** A piece of paper or a leaf that lies this near to a surface covers it, m. */
const LIES = 0.02;
/** Sides of the cone that stands for the beam of a grid. */
const BEAM = 24;

/** Everything that can throw a shadow. */
export function thingsOf(scene: Scene): readonly Thing[] {
  const { polygons, bodies } = scene;
  return occludersOf(scene).map((solid) => {
    const polygon = polygons[solid.index] ?? null;
    return { name: polygon?.name ?? bodies[solid.index - polygons.length]?.name ?? "", solid, polygon };
  });
}

/** A light as a point, with what of a surface it can shine on at all. */
export interface PointLight {
  readonly source: Source;
  readonly at: Vec3;
  readonly reach: (vertices: readonly Vec3[]) => readonly Vec3[];
}

/** A light by its centre: a flat opening shines to its front only, a grid into its cone. */
export function pointLight(light: Source): PointLight {
  const source = seenLight(light);
  const { centre: at, axis, beam } = source;
  const kind = sourceShape(source).kind;
  const flat = kind === "disc" || kind === "polygon";
  const planes: Vec3[] = flat ? [axis] : [];
  if (flat && beam.kind === "grid") {
    const [u, v] = frameAround(axis);
    const half = beam.cutoff / 2;
    for (let i = 0; i < BEAM; i++) {
      const turn = (2 * Math.PI * i) / BEAM;
      const out = addScaled(scale(u, Math.cos(turn)), v, Math.sin(turn));
      planes.push(addScaled(scale(axis, Math.sin(half)), out, -Math.cos(half)));
    }
  }
  const reach = (vertices: readonly Vec3[]): readonly Vec3[] =>
    planes.reduce((left, plane) => clipByPlane(left, plane, dot(plane, at) + 1e-6), vertices);
  return { source, at, reach };
}

/** A surface under a light: the part that the light can reach, and what others leave of it. */
export interface LitGround extends Ground {
  /** The convex part before the light. */
  readonly part: readonly Vec3[];
  /** Where something flat, a post or a stand stops the light before, people not counted, one region for each owner. */
  readonly stopped: readonly { readonly owner: string; readonly region: Region }[];
  /** All of them together. */
  readonly dark: Region;
}

const ringOf = (ground: Ground, points: readonly Vec3[]): Region => turned(toPlane(ground, points));

/** Where one thing's shadow lies on a surface, by the light's centre, other things not considered. */
export function shadowRing(light: PointLight, ground: LitGround, { solid }: Thing): Region {
  const points = shadowOn(solid, light.at, ground, ground.part);
  return points.length < 3 ? [] : ringOf(ground, points);
}

/** Whether a flat thing can stop light on its way to a surface. */
function stops(polygon: ScenePolygon, light: PointLight): boolean {
  // Walls stop only what comes from outside of the room.
  return !isShell(polygon) || before(polygon, light.at) < -1e-4;
}

/** What lies on a surface and covers it: paper on a floor, a card on a table. */
function covering(ground: Ground, polygon: ScenePolygon): Region {
  const lies =
    polygon !== ground.polygon &&
    !isShell(polygon) &&
    polygon.vertices.every((vertex) => {
      const above = dot(ground.normal, vertex) - ground.offset;
      return above > -1e-4 && above < LIES;
    });
  return lies ? ringOf(ground, polygon.vertices) : [];
}

/** Those of some surfaces on which a light shines, each with what is stopped on the way to it by all but the people. */
export function litGrounds(
  surfaces: readonly ScenePolygon[],
  light: PointLight,
  things: readonly Thing[],
  isPerson: (name: string) => boolean,
): readonly LitGround[] {
  const standing = things.filter(({ name }) => !isPerson(name));
  return surfaces.flatMap((polygon) => {
    const ground = groundOf(polygon, light.at);
    if (ground === null) return [];
    const part = light.reach(polygon.vertices);
    if (part.length < 3) return [];
    const lit: LitGround = { ...ground, part, stopped: [], dark: [] };
    const stopped = standing.flatMap((thing) => {
      const region = stoppedBy(light, lit, thing);
      return region.length === 0 ? [] : [{ owner: ownerOf(thing.name), region }];
    });
    return [{ ...lit, stopped, dark: union(stopped.flatMap(({ region }) => region)) }];
  });
}

/** What one thing takes of a surface: its shadow, and where it lies on it. */
function stoppedBy(light: PointLight, ground: LitGround, thing: Thing): Region {
  const { polygon } = thing;
  if (polygon === ground.polygon) return [];
  if (polygon === null) return shadowRing(light, ground, thing);
  const covered = covering(ground, polygon);
  return stops(polygon, light) ? [...covered, ...shadowRing(light, ground, thing)] : covered;
}

/** The shadow of a person or a piece on a surface, without what others stop before. */
export function thrownOn(
  light: PointLight,
  ground: LitGround,
  things: readonly Thing[],
  owner: string | null,
): Region {
  const rings: Ring[] = [];
  for (const thing of things)
    if (thing.polygon !== ground.polygon) rings.push(...shadowRing(light, ground, thing));
  if (rings.length === 0) return [];
  const dark =
    owner === null
      ? ground.dark
      : union(ground.stopped.flatMap((row) => (row.owner === owner ? [] : row.region)));
  return difference(union(rings), dark);
}

/** The area of a region of a surface, m2. */
export function squareMetres(region: Region): number {
  return SQUARE * areaOf(region);
}

/** The part of a region of a surface inside a convex part of it. */
export function within(ground: Ground, region: Region, part: readonly Vec3[]): Region {
  return part.length < 3 ? [] : intersection(region, ringOf(ground, part));
}

/** A region as rings of points of the scene. */
export function ringsOf(ground: Ground, region: Region): readonly (readonly Vec3[])[] {
  return region.map((ring) => fromPlane(ground, ring));
}

/** The piece of the set, wall or floor that a surface belongs to. */
export const groundOwner = ({ polygon }: Ground): string => ownerOf(polygon.name);
