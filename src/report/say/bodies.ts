import type { Sunk } from "../../scene/sunk.js";
import type { Scene } from "../../scene/types.js";

/** The person to whom a body belongs: `ana`, or `the person` for the only one. */
export function personWords(scene: Scene, body: string): string {
  const [first] = body.split(".");
  return scene.subjects.find((subject) => subject.name === first)?.name ?? "the person";
}

/** A solid in which something is, in words: `ana`, `the person` where there is one, `crate`. */
export function sayWhatHolds(scene: Scene, { name, of }: Pick<Sunk, "name" | "of">): string {
  if (of === "stand") return "a stand";
  return of === "piece" ? name : personWords(scene, name);
}
