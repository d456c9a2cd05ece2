import type { Vec3 } from "../core/vector.js";
import type { Origins, PointModel, Recipe, SubjectModel } from "../model/types.js";
import { placeCamera } from "./camera.js";
import { type PlacedLamp, placeLamp } from "./lamp/build.js";
import { placePoint } from "./named-point.js";
import { buildPiece } from "./set/build.js";
import type { Leaf } from "./set/leaf.js";
import { nothing, type Piece } from "./set/piece.js";
import { find, type Owner, placeOfBlock, type Site } from "./site.js";
import { buildSubject } from "./subject.js";
import { cheekPlace, type StationOwner, sideOf } from "./subject-stations.js";
import type { Body } from "./types.js";

/** A subject as built. */
interface BuiltSubject extends StationOwner {
  readonly bodies: readonly Body[];
}

/** A point that is named, with the name of its station. */
interface NamedPoint {
  readonly point: PointModel;
  readonly name: string;
  readonly subject: string | null;
}

/** Everything of a recipe that has a place, by kind and in file order; filled when its owner is built. */
export interface Parts {
  readonly all: Owner[];
  readonly subjects: BuiltSubject[];
  readonly pieces: Piece[];
  readonly lamps: PlacedLamp[];
  readonly points: NamedPoint[];
  lens: Vec3 | null;
}

/** Registers all that can be named in a point under its names, to be built when first asked for. */
export function registerOwners(site: Site, room: () => void): Parts {
  const parts: Parts = { all: [], subjects: [], pieces: [], lamps: [], points: [], lens: null };
  const { recipe } = site;
  add(site, parts, roomNames(recipe), recipe.room?.origins, room);
  const several = recipe.subjects.length > 1;
  for (const [index, subject] of recipe.subjects.entries()) addSubject(site, parts, subject, index, several);
  const leaves = new Map<string, Leaf>();
  for (const [index, piece] of (recipe.set?.parts ?? []).entries()) {
    parts.pieces.push(nothing);
    add(site, parts, [piece.name ?? piece.block], piece.origins, () => {
      parts.pieces[index] = buildPiece(site, piece, leaves);
    });
  }
  for (const point of recipe.points) addPoint(site, parts, point, null, [point.name ?? "point"]);
  addLights(site, parts);
  const { camera } = recipe;
  if (camera !== null) {
    add(site, parts, ["camera"], camera.origins, () => {
      parts.lens = placeCamera(site, camera);
    });
  }
  return parts;
}

/** Registers one owner; a name that another has already stays with that one. */
function add(
  site: Site,
  parts: Parts,
  names: readonly string[],
  origins: Origins | undefined,
  build: () => void,
): Owner {
  const owner: Owner = { name: names[0] ?? "", place: placeOfBlock(origins), state: "waiting", build };
  parts.all.push(owner);
  for (const name of names) if (!site.owners.has(name)) site.owners.set(name, owner);
  return owner;
}

/** Registers the lights by their names; `key` is also the light with that role, where nothing else is called so. */
function addLights(site: Site, parts: Parts): void {
  let key: Owner | null = null;
  let keyIndex = -1;
  const { lights } = site.recipe;
  for (const [index, light] of lights.entries()) {
    const owner = add(site, parts, [light.name ?? "light"], light.origins, () => {
      const lamp = placeLamp(site, light);
      parts.lamps[index] = lamp;
      if (index === keyIndex) site.landmarks.set("key", { at: lamp.centre, ahead: null });
    });
    if (light.role === "key" && key === null) {
      key = owner;
      keyIndex = index;
    }
  }
  if (key !== null && !site.owners.has("key")) site.owners.set("key", key);
  else keyIndex = -1;
}

/** What of the room can be named: itself, and its openings. */
function roomNames({ room }: Recipe): readonly string[] {
  const names: string[] = ["room"];
  for (const part of room?.parts ?? []) {
    if (part.block === "opening" && part.name !== null) names.push(part.name);
  }
  return names;
}

function addSubject(site: Site, parts: Parts, subject: SubjectModel, index: number, several: boolean): void {
  const own = subject.name === null ? [] : [`${subject.name}.`];
  const words = index === 0 ? ["", ...own] : own;
  const names = subject.name === null ? [] : [subject.name];
  if (index === 0) names.push("subject");
  const prefix = several ? (own[0] ?? "") : "";
  add(site, parts, names, subject.origins, () => {
    const bodies: Body[] = [];
    const built = buildSubject(site, subject, words, prefix, bodies);
    parts.subjects[index] = { subject: built, bodies, prefix, words };
  });
  addCheeks(site, parts, index, words);
  for (const point of subject.parts) {
    const name = point.name ?? "point";
    const full = prefix + name;
    addPoint(site, parts, point, subject, [full, ...words.map((before) => before + name)]);
  }
}

/**
 * The cheeks as places, for what is aimed at them: settled only when asked for. Lit is the side of the light with the
 * role of the key, or, where no light has it, of the first one.
 */
function addCheeks(site: Site, parts: Parts, index: number, words: readonly string[]): void {
  const names = words.flatMap((before) => [`${before}lit_cheek`, `${before}shaded_cheek`]);
  const build = (): void => {
    const face = find(site, `${words[0] ?? ""}face`);
    const key = find(site, site.owners.has("key") ? "key" : (site.recipe.lights[0]?.name ?? "key"));
    const subject = parts.subjects[index]?.subject;
    if (face === null || key === null || subject === undefined) return;
    const lit = sideOf(subject, key.at);
    for (const before of words) {
      site.landmarks.set(`${before}lit_cheek`, { at: cheekPlace(subject, lit), ahead: subject.facing });
      site.landmarks.set(`${before}shaded_cheek`, { at: cheekPlace(subject, -lit), ahead: subject.facing });
    }
  };
  const owner: Owner = { name: names[0] ?? "", place: site.place, state: "waiting", build };
  for (const name of names) site.owners.set(name, owner);
}

function addPoint(
  site: Site,
  parts: Parts,
  point: PointModel,
  subject: SubjectModel | null,
  names: readonly string[],
): void {
  const owner = subject === null ? null : subject.name === null ? "feet" : `${subject.name}.feet`;
  parts.points.push({
    point,
    name: names[0] ?? "point",
    subject: subject === null ? null : (subject.name ?? ""),
  });
  add(site, parts, names, point.origins, () => placePoint(site, point, names, owner));
}
