import type { Vec3 } from "../../core/vector.js";
import { addScaled } from "../../math/vector.js";
import type { Scene, SceneSubject } from "../../scene/types.js";
import { inFrame } from "../geometry/frame.js";
import { bodiesOf } from "./coverage.js";
import { heightOf, type Lens } from "./project.js";

/** How much of a person the picture shows, by the lowest part that is in it (common practice, no source). */
export type Framing = "full length" | "three-quarter" | "half length" | "head and shoulders" | "head";

/** The middle of the lower end of the trunk; null where there is none. */
function hip(scene: Scene, subject: SceneSubject): Vec3 | null {
  const trunk = bodiesOf(scene, subject).find(({ name }) => name.endsWith("trunk"));
  return trunk?.kind === "ellipsoid" ? addScaled(trunk.centre, trunk.axes[2], -1) : null;
}

/** A place of a subject by its name. */
function part(scene: Scene, subject: SceneSubject, name: string): Vec3 | null {
  const prefix = scene.subjects[0] === subject ? "" : `${subject.name}.`;
  return scene.landmarks.get(prefix + name)?.at ?? null;
}

/**
 * The framing of a subject: full length where the feet are in the picture, three-quarter down to the knees, half
 * length down to the hips, head and shoulders down to the chest, else a head. Null where the face is not in the picture.
 */
export function framingOf(lens: Lens, scene: Scene, subject: SceneSubject): Framing | null {
  const { camera } = lens;
  if (!inFrame(camera, subject.face)) return null;
  const shows = (point: Vec3 | null): boolean => point !== null && inFrame(camera, point);
  if (shows(subject.place)) return "full length";
  if (shows(part(scene, subject, "knee"))) return "three-quarter";
  if (shows(hip(scene, subject))) return "half length";
  return shows(part(scene, subject, "chest")) ? "head and shoulders" : "head";
}

/** Height of a subject in the picture as a share of the frame's, what is cut off left out; null where it is not seen. */
export function subjectHeight(lens: Lens, scene: Scene, subject: SceneSubject): number | null {
  const ends = bodiesOf(scene, subject).map((body) => heightOf(lens, body));
  const found = ends.filter((end) => end !== null);
  if (found.length === 0 || found.length < ends.length) return null;
  const high = Math.min(1, Math.max(...found.map((end) => end.high)));
  const low = Math.max(-1, Math.min(...found.map((end) => end.low)));
  return high > low ? (high - low) / 2 : 0;
}
