import { dot, subtract } from "../../math/vector.js";
import type { Body, Scene, ScenePolygon, SceneSubject } from "../../scene/types.js";
import { ownerOf } from "../say/surfaces.js";
import { bodyInPicture, type Lens, lensOf, polygonInPicture } from "./project.js";
import { difference, intersection, type Region, type Ring, shareOf, union, whole } from "./region.js";

/** Less bare picture than this, as a share of it, is none: what is left of rounding where two edges meet. */
const NOTHING = 1e-7;

/** A surface that shows where the picture is bare. */
export interface Behind {
  /** `floor`, `ceiling`, `wall back` ...; `open` where nothing of the room is seen. */
  readonly surface: string;
  /** Share of the picture, 0 to 1. */
  readonly share: number;
}

/** What the set and the people cover of the picture. */
export interface Coverage {
  /** Share of the picture that is set or subject, 0 to 1. */
  readonly covered: number;
  /** The rest as a region; nothing where all is covered. */
  readonly bare: Region;
  /** The part that is set, people left out. */
  readonly set: Region;
  /** The part that is people. */
  readonly people: Region;
}

/** Whether a surface counts as set: every flat piece of the set, and what of the room the recipe counts to it. */
export function isSet(polygon: ScenePolygon): boolean {
  const { kind } = polygon;
  return polygon.asSet === true || (kind !== "floor" && kind !== "ceiling" && kind !== "wall");
}

/** Whether a surface is a background: a flat, a paper or a panel, or a surface of the room that counts as set. */
export function isBackdrop({ kind, asSet }: ScenePolygon): boolean {
  return asSet === true || kind === "flat" || kind === "paper" || kind === "panel";
}

/** The bodies of a subject. */
export function bodiesOf(scene: Scene, subject: SceneSubject): readonly Body[] {
  const own = scene.bodies.filter((body) => body.of === "subject");
  return scene.subjects.length < 2 ? own : own.filter(({ name }) => name.startsWith(`${subject.name}.`));
}

/** The part of the picture that a subject takes. */
export function subjectInPicture(lens: Lens, scene: Scene, subject: SceneSubject): Region {
  return union(...bodiesOf(scene, subject).map((body) => bodyInPicture(lens, body)));
}

/**
 * How much of the picture is set or subject, by the exact areas of their outlines. Text where it has no value: a set
 * that is no background covers nothing that it is there for.
 */
export function coverageOf(scene: Scene): Coverage | string {
  const { camera } = scene;
  if (camera === null) return "there is no camera";
  const lens = lensOf(camera);
  if (lens === null) return "the camera's focal length is not known";
  if (!scene.polygons.some(isBackdrop))
    return "no flat, paper or panel is a background, and no surface of the room belongs to the set";
  const setParts: Ring[] = [];
  const peopleParts: Ring[] = [];
  for (const polygon of scene.polygons)
    if (isSet(polygon)) setParts.push(...polygonInPicture(lens, polygon.vertices));
  for (const body of scene.bodies) {
    if (body.of === undefined) setParts.push(...bodyInPicture(lens, body));
    else if (body.of === "subject") peopleParts.push(...bodyInPicture(lens, body));
  }
  const set = union(setParts);
  const people = union(peopleParts);
  const bare = difference(whole, [...set, ...people]);
  const open = shareOf(bare);
  return open > NOTHING ? { covered: 1 - open, bare, set, people } : { covered: 1, bare: [], set, people };
}

/** The surfaces of the room that show in a part of the picture, the largest first. */
export function behind(scene: Scene, part: Region): readonly Behind[] {
  const lens = scene.camera === null ? null : lensOf(scene.camera);
  if (lens === null || part.length === 0) return [];
  const found = new Map<string, number>();
  let left = shareOf(part);
  for (const polygon of scene.polygons) {
    if (isSet(polygon) || !looksAt(polygon, lens)) continue;
    const share = shareOf(intersection(part, polygonInPicture(lens, polygon.vertices)));
    if (!(share > NOTHING)) continue;
    const owner = ownerOf(polygon.name);
    found.set(owner, (found.get(owner) ?? 0) + share);
    left -= share;
  }
  if (left > 1e-6) found.set("open", left);
  return [...found]
    .map(([surface, share]) => ({ surface, share }))
    .sort((a, b) => b.share - a.share || (a.surface < b.surface ? -1 : 1));
}

/** Whether the lens is on the side of a surface that its front looks to. */
function looksAt({ vertices, normal }: ScenePolygon, { camera }: Lens): boolean {
  const corner = vertices[0];
  return corner !== undefined && dot(subtract(camera.at, corner), normal) > 0;
}
