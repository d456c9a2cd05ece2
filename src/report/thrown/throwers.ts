import type { Scene, SceneSubject } from "../../scene/types.js";
import { partName } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import { isShell } from "./plane.js";
import { type Thing, thingsOf } from "./shade.js";

/** The bodies of a figure, as the scene names them. */
const PARTS = [
  "head",
  "neck",
  "trunk",
  "leg.right",
  "leg.right.lower",
  "leg.left",
  "leg.left.lower",
  "arm.right",
  "arm.left",
];

/** A person or a piece of the set whose shadow is followed. */
export interface Thrower {
  /** The subject's name, `subject` for the only one without a name, or the name of the piece. */
  readonly name: string;
  readonly subject: SceneSubject | null;
  readonly things: readonly Thing[];
}

/** A scene as things that throw shadows. */
export interface Throwers {
  readonly all: readonly Thing[];
  readonly people: readonly Thrower[];
  /** Flat pieces and props, each with all its parts; not the stands of lamps. */
  readonly pieces: readonly Thrower[];
  readonly isPerson: (name: string) => boolean;
}

/** What throws shadows in a scene. */
export function throwersOf(scene: Scene): Throwers {
  const all = thingsOf(scene);
  const bodies = new Set<string>();
  const people = scene.subjects.map((subject): Thrower => {
    const names = new Set(PARTS.map((part) => partName(scene, subject, part)));
    const things = all.filter(({ name, polygon }) => polygon === null && names.has(name));
    for (const { name } of things) bodies.add(name);
    return { name: subject.name === "" ? "subject" : subject.name, subject, things };
  });
  const stands = new Set(scene.sources.flatMap(({ name }) => [`${name} stand`, `${name} boom`]));
  const owners = new Map<string, Thing[]>();
  for (const thing of all) {
    const isRoom = thing.polygon !== null && isShell(thing.polygon);
    if (isRoom || bodies.has(thing.name) || stands.has(thing.name)) continue;
    const owner = ownerOf(thing.name);
    owners.set(owner, [...(owners.get(owner) ?? []), thing]);
  }
  const pieces = [...owners].map(([name, things]): Thrower => ({ name, subject: null, things }));
  return { all, people, pieces, isPerson: (name) => bodies.has(name) };
}
