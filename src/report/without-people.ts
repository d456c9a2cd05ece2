import type { Scene } from "../scene/types.js";
import { bodyOwner, PERSON } from "../transport/bounce/surfaces.js";

/** A scene before its people come: set, room and lamps as they are. */
export function withoutPeople(scene: Scene): Scene {
  const people = new Set([PERSON, ...scene.subjects.map(({ name }) => name)]);
  return { ...scene, bodies: scene.bodies.filter(({ name }) => !people.has(bodyOwner(name))) };
}
