import type { Vec3 } from "../../core/vector.js";
import { boxesOf } from "../../scene/boxes.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { personWords } from "../say/bodies.js";
import { ownerOf } from "../say/surfaces.js";
import { type Convex, carried, cornersOf, overlapOf, roundOf } from "./overlap.js";

/** A person or a piece of the set, by its convex parts. */
export interface Thing {
  /** In words: `ana`, `the person`, `crate`. */
  readonly name: string;
  readonly of: "subject" | "piece";
  /** False for sheets, which may stand in each other. */
  readonly solid: boolean;
  readonly parts: readonly Convex[];
}

const isRoom = ({ kind }: ScenePolygon): boolean => kind === "floor" || kind === "ceiling" || kind === "wall";

/** The pieces of the set and the people of a scene, in this order; no stands, and nothing of the room. */
export function thingsOf(scene: Scene): readonly Thing[] {
  const things = new Map<string, { of: Thing["of"]; solid: boolean; parts: Convex[] }>();
  const add = (name: string, of: Thing["of"], solid: boolean, part: Convex): void => {
    const known = things.get(name) ?? { of, solid, parts: [] };
    known.parts.push(part);
    things.set(name, known);
  };
  for (const { name, sides } of boxesOf(scene.polygons)) add(name, "piece", true, cornersOf(name, sides));
  for (const sheet of scene.polygons)
    if (sheet.kind !== "box" && !isRoom(sheet))
      add(ownerOf(sheet.name), "piece", false, cornersOf(sheet.name, [sheet]));
  for (const body of scene.bodies) {
    if (body.of === undefined) add(body.name, "piece", true, roundOf(body));
    if (body.of === "subject") add(personWords(scene, body.name), "subject", true, roundOf(body));
  }
  return [...things]
    .map(([name, thing]): Thing => ({ name, ...thing }))
    .sort((a, b) => Number(a.of === "subject") - Number(b.of === "subject"));
}

/** The same thing carried along. */
export const thingAt = (thing: Thing, by: Vec3): Thing => ({
  ...thing,
  parts: thing.parts.map((part) => carried(part, by)),
});

/** Arms give way: who sits on a box does not let them hang into it. */
const isArm = ({ name }: Convex): boolean => /(?:^|\.)arm\./.test(name);

/** The parts of a thing without a person's arms. */
export const firmParts = ({ of, parts }: Thing): readonly Convex[] =>
  of === "subject" ? parts.filter((part) => !isArm(part)) : parts;

/** How far two things overlap where they do so most, m, people without their arms; 0 for up to `enough`. */
export function thingsOverlap(a: Thing, b: Thing, enough: number): number {
  const others = firmParts(b);
  let most = 0;
  for (const part of firmParts(a))
    for (const other of others) most = Math.max(most, overlapOf(part, other, Math.max(enough, most)));
  return most;
}
