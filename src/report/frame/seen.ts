import type { Vec3 } from "../../core/vector.js";
import { add, addScaled, cross, dot, scale, subtract } from "../../math/vector.js";
import type { Recipe } from "../../model/types.js";
import { rectangleSource } from "../../physics/source-shape.js";
import type { Scene, ScenePolygon, Source } from "../../scene/types.js";
import { type Met, type Peek, peek, peekOf } from "../geometry/sight.js";
import { ownerOf } from "../say/surfaces.js";
import { wayTo } from "./look.js";
import { bodyInPicture, type Lens, lensOf, polygonInPicture } from "./project.js";
import { type Box, boxOf, type Place, type Region, type Ring, shareOf } from "./region.js";

/** A thing in the picture that is neither the set as such nor a person. */
export interface SeenThing {
  readonly kind: "lamp" | "stand" | "boom" | "card" | "scrim" | "opening";
  readonly name: string;
  /** The smallest rectangle round what is seen of it. */
  readonly box: Box;
  /** Share of the picture, 0 to 1. */
  readonly share: number;
}

/** Something that is looked for: where it would be, and how it is known that a line of sight through a place meets it. */
interface Thing {
  readonly kind: SeenThing["kind"];
  readonly name: string;
  readonly region: Region;
  /** What a line of sight to it meets; null for a lamp and an opening, to which it must be free. */
  readonly owner: string | null;
  readonly lamp: Source | null;
  readonly opening: Pick<ScenePolygon, "vertices" | "normal"> | null;
}

/** True where what a line of sight from the lens met is the thing, or lies beyond it. */
function isMet(lens: Lens, { owner, lamp, opening }: Thing, hit: Met | null, way: Vec3): boolean {
  if (owner !== null) return hit?.owner === owner;
  if (hit === null) return true;
  if (lamp !== null) return hit.way > wayToOpening(lens, lamp, way) * (1 - 1e-3) - 0.02;
  return opening !== null && hit.way > planeWay(lens, opening.vertices[0], opening.normal, way);
}

/** Lines of sight along each side of the rectangle round a thing. */
const LOOKS = 14;
/** Corners that stand for a round opening. */
const CORNERS = 24;

/**
 * The lamps, stands, booms, cards, scrims and openings of the room that the picture shows, each with what is seen of
 * it. Of a lamp the lit opening is looked for, lit or not; what stands before it hides it.
 */
export function seenThings(scene: Scene, recipe: Recipe | null): readonly SeenThing[] {
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (lens === null) return [];
  const things: Thing[] = [];
  addLamps(things, scene, lens, 0, null);
  addFlats(things, scene, recipe, lens);
  const look = peekOf(scene);
  const seen: SeenThing[] = [];
  for (const thing of things) {
    const found = lookAt(lens, look, thing);
    if (found !== null) seen.push({ kind: thing.kind, name: thing.name, ...found });
  }
  return seen;
}

/**
 * What the picture first shows of a lamp: its opening, its stand or its boom. Null where it shows nothing of it.
 *
 * @param margin - Halves of the frame that are added all round it.
 */
export function seenOfLamp(scene: Scene, name: string, margin: number): SeenThing["kind"] | null {
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (lens === null) return null;
  const things: Thing[] = [];
  addLamps(things, scene, lens, margin, name);
  if (!things.some(({ region }) => region.length > 0)) return null;
  const look = peekOf(scene);
  for (const thing of things) if (placesMet(lens, look, thing, 1).met.length > 0) return thing.kind;
  return null;
}

/** Lamps and what carries them, all or those of one name. */
function addLamps(things: Thing[], scene: Scene, lens: Lens, margin: number, only: string | null): void {
  for (const source of scene.sources) {
    // A cloth or a lit patch is seen as what it is; its head is looked for where it stands.
    if (source.cloth !== undefined) continue;
    const name = source.spillOf ?? source.name;
    if (only !== null && name !== only) continue;
    things.push(thing("lamp", name, openingInPicture(lens, source, margin), null, source, null));
  }
  for (const body of scene.bodies) {
    if (body.of !== "stand") continue;
    const kind = body.name.endsWith(" boom") ? "boom" : "stand";
    const name = body.name.replace(/ (?:boom|stand)$/, "");
    if (only !== null && name !== only) continue;
    things.push(thing(kind, name, bodyInPicture(lens, body, margin), body.name, null, null));
  }
}

/** Cards, scrims, and the openings of the room. */
function addFlats(things: Thing[], scene: Scene, recipe: Recipe | null, lens: Lens): void {
  for (const { kind, name, vertices } of scene.polygons) {
    if (kind !== "card" && kind !== "scrim") continue;
    things.push(thing(kind, name, polygonInPicture(lens, vertices), ownerOf(name), null, null));
  }
  for (const opening of openingsOf(scene, recipe)) {
    const { name, vertices, normal } = opening;
    const facing = dot(subtract(lens.camera.at, vertices[0] ?? lens.camera.at), normal) > 0;
    const region = facing ? polygonInPicture(lens, vertices) : [];
    things.push(thing("opening", name, region, null, null, opening));
  }
}

const thing = (
  kind: Thing["kind"],
  name: string,
  region: Region,
  owner: string | null,
  lamp: Source | null,
  opening: Thing["opening"],
): Thing => ({ kind, name, region, owner, lamp, opening });

function planeWay({ camera }: Lens, corner: Vec3 | undefined, normal: Vec3, way: Vec3): number {
  if (corner === undefined) return 0;
  const slope = dot(way, normal);
  return Math.abs(slope) < 1e-9 ? 0 : dot(subtract(corner, camera.at), normal) / slope;
}

/** How far along a line of sight the opening of a lamp lies: on its plane, or for a round bulb at its middle. */
function wayToOpening(lens: Lens, source: Source, way: Vec3): number {
  const { shape, centre, axis } = source;
  if (shape.kind === "disc" || shape.kind === "rectangle") {
    const found = planeWay(lens, centre, axis, way);
    if (found > 0) return found;
  }
  return dot(subtract(centre, lens.camera.at), way);
}

/** The lit opening of a lamp in the picture. */
export function openingInPicture(lens: Lens, source: Source, margin = 0): Region {
  const { shape, centre, across, along } = source;
  const solid = { of: "stand", name: source.name, reflectance: 0 } as const;
  switch (shape.kind) {
    case "sphere":
      return bodyInPicture(lens, { ...solid, kind: "sphere", centre, radius: shape.radius }, margin);
    case "capsule": {
      const half = scale(along, shape.length / 2 - shape.radius);
      const [from, to] = [subtract(centre, half), add(centre, half)];
      return bodyInPicture(lens, { ...solid, kind: "capsule", from, to, radius: shape.radius }, margin);
    }
    case "rectangle": {
      const { corners } = rectangleSource(centre, across, along, shape.width, shape.height);
      return polygonInPicture(lens, corners, margin);
    }
    case "disc": {
      const rim: Vec3[] = [];
      for (let i = 0; i < CORNERS; i++) {
        const turn = (2 * Math.PI * i) / CORNERS;
        const side = addScaled(centre, across, shape.radius * Math.cos(turn));
        rim.push(addScaled(side, along, shape.radius * Math.sin(turn)));
      }
      return polygonInPicture(lens, rim, margin);
    }
    default:
      return shape satisfies never;
  }
}

/** The openings in the walls, as rectangles that face into the room. */
export function openingsOf(
  { room, landmarks }: Scene,
  recipe: Recipe | null,
): readonly Pick<ScenePolygon, "name" | "vertices" | "normal">[] {
  const openings: Pick<ScenePolygon, "name" | "vertices" | "normal">[] = [];
  if (room === null) return openings;
  for (const part of recipe?.room?.parts ?? []) {
    if (part.block !== "opening" || part.name === null || part.size === undefined) continue;
    const centre = landmarks.get(part.name)?.at;
    const normal = inward.get(part.wall ?? "");
    if (centre === undefined || normal === undefined) continue;
    const { width, height } = part.size;
    const side = cross([0, 0, 1], normal);
    const { corners } = rectangleSource(centre, side, [0, 0, 1], width.value, height.value);
    openings.push({ name: part.name, normal, vertices: corners });
  }
  return openings;
}

/** The ways into the room from its walls. */
const inward: ReadonlyMap<string, Vec3> = new Map([
  ["left", [1, 0, 0]],
  ["right", [-1, 0, 0]],
  ["back", [0, -1, 0]],
  ["front", [0, 1, 0]],
]);

function isInside(region: Region, x: number, y: number): boolean {
  for (const ring of region) if (isInRing(ring, x, y)) return true;
  return false;
}

function isInRing(ring: Ring, x: number, y: number): boolean {
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i] as Place;
    const b = ring[i + 1 < ring.length ? i + 1 : 0] as Place;
    if (!((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) >= 0)) return false;
  }
  return true;
}

/** What is seen of a thing: the rectangle round the places where a line of sight meets it, and its share. */
function lookAt(lens: Lens, look: Peek, thing: Thing): Pick<SeenThing, "box" | "share"> | null {
  const { met, inside } = placesMet(lens, look, thing, Number.POSITIVE_INFINITY);
  const box = boxOf(met);
  return box === null ? null : { box, share: (shareOf(thing.region) * met.length) / inside };
}

/**
 * The places round which a line of sight meets a thing, each by two corners, and how many were looked at.
 *
 * @param most - After so many no more are looked for.
 */
function placesMet(
  lens: Lens,
  look: Peek,
  thing: Thing,
  most: number,
): { readonly met: Region; readonly inside: number } {
  const { region } = thing;
  const met: Ring[] = [];
  let inside = 0;
  const round = boxOf(region);
  if (round === null) return { met, inside };
  const wide = (round.right - round.left) / LOOKS;
  const high = (round.top - round.bottom) / LOOKS;
  for (let j = 0; j < LOOKS; j++) {
    for (let i = 0; i < LOOKS && met.length < most; i++) {
      const x = round.left + (i + 0.5) * wide;
      const y = round.bottom + (j + 0.5) * high;
      if (!isInside(region, x, y)) continue;
      inside++;
      const way = wayTo(lens, [x, y]);
      if (!isMet(lens, thing, peek(look, lens.camera.at, way), way)) continue;
      met.push([
        [x - wide / 2, y - high / 2],
        [x + wide / 2, y + high / 2],
      ]);
    }
  }
  return { met, inside };
}
