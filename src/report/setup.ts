import type { Vec3 } from "../core/vector.js";
import { distance } from "../math/vector.js";
import { lightPlace } from "../scene/lit/seen.js";
import type { SceneSubject, Source } from "../scene/types.js";
import { alongFloor, bearingOf, elevationOf } from "./geometry/directions.js";
import { faceWords, firstSubject, headOf, lightsOf, type Plan } from "./plan.js";
import { sayBearing } from "./say/bearing.js";
import { sayOpening } from "./say/opening.js";
import { sayAngle, sayLength, sayTime } from "./say/quantity.js";
import { sayOwner } from "./say/surfaces.js";

/** The set-up in words, a sentence each: room, set, subjects, lights, camera. Sides are the camera's. */
export function setupSentences(plan: Plan): string[] {
  const { scene, recipe } = plan;
  const lines: string[] = [];
  const { room } = scene;
  if (room === null) lines.push("No room is given: the surroundings are open and black.");
  else {
    lines.push(
      `The room is ${sayLength(room.width)} wide, ${sayLength(room.depth)} deep and ${sayLength(room.height)} high; the mark lies ${sayLength(-room.left)} from the left wall and ${sayLength(room.back)} from the back wall.`,
    );
  }
  for (const piece of recipe.set?.parts ?? []) {
    const name = piece.name === null ? piece.block : `${piece.block} ${piece.name}`;
    const size = "size" in piece && piece.size !== undefined ? `, ${piece.size.written}` : "";
    const at = "at" in piece && piece.at !== undefined ? `, at ${piece.at.written}` : "";
    lines.push(`Set: ${name}${size}${at}.`);
  }
  scene.subjects.forEach((subject) => {
    lines.push(subjectSentence(subject));
  });
  for (const source of lightsOf(scene)) lines.push(lightSentence(plan, source));
  const camera = cameraSentence(plan);
  if (camera !== null) lines.push(camera);
  return lines;
}

function subjectSentence(subject: SceneSubject): string {
  const who = subject.name === "" ? "The subject" : subject.name;
  const away = alongFloor([0, 0, 0], subject.place);
  const where = away < 0.005 ? "on the mark" : `${sayLength(away)} from the mark`;
  const heels = subject.heels > 0 ? ` in heels of ${sayLength(subject.heels)}` : "";
  const verbs = {
    standing: "stands",
    seated: "sits",
    kneeling: "kneels",
    lying: "lies",
  } as const;
  return `${who}, ${sayLength(subject.stature)} tall${heels}, ${verbs[subject.pose]} ${where}; the face is ${sayLength(subject.face[2])} above the floor.`;
}

function lightSentence({ scene, recipe }: Plan, light: Source): string {
  const subject = firstSubject(scene);
  const source = headOf(scene, light);
  const { name } = light;
  const role = light.role === null || light.role === name ? "" : ` (${light.role})`;
  const what = `${name}${role}: ${source.kind === "flash" ? "a flash" : "a steady lamp"} with ${sayOpening(source)}`;
  const height = `its centre ${sayLength(source.centre[2])} above the floor`;
  const said = recipe.lights.find((row) => row.name === name);
  const power = source.below === null ? "switched off" : `power ${said?.power?.written ?? "full"}`;
  const lit = litWords(light);
  if (subject === null) {
    return `${what}, ${sayLength(alongFloor([0, 0, 0], source.centre))} from the mark along the floor, ${height}${lit}; ${power}.`;
  }
  const face = faceWords(scene);
  const seen =
    lit === "" ? "" : `${lit}, the light that is seen, ${fromFace(subject, lightPlace(light))} from ${face}`;
  const tapes = `${sayLength(distance(subject.face, source.centre))} from ${face} (${sayLength(alongFloor([0, 0, 0], source.centre))} along the floor from the mark)`;
  const side = sideWords(subject, source.centre);
  return `${what}, ${tapes}, ${side} from ${face}, ${height}${seen}; ${power}.`;
}

/** `37 deg to camera-left and 17 deg up`. */
function sideWords({ face }: SceneSubject, at: Vec3): string {
  const steep = elevationOf(face, at);
  return `${sayBearing(steep >= 89.5 ? null : bearingOf(face, at), sayAngle)} and ${sayAngle(steep)} up`;
}

/** `1.69 m away, 71 deg to camera-left and 2 deg up`. */
function fromFace(subject: SceneSubject, at: Vec3): string {
  return `${sayLength(distance(subject.face, at))} away, ${sideWords(subject, at)}`;
}

/** What a head shines into or through, and how much of it is lit; nothing for one that shines free. */
function litWords({ patch, cloth, shape }: Source): string {
  const size = (width: number, height: number): string => `${sayLength(width)} x ${sayLength(height)}`;
  if (patch !== undefined)
    return `; it lights ${size(patch.width, patch.height)} of ${sayOwner(patch.surface)}`;
  return cloth === undefined || shape.kind !== "rectangle"
    ? ""
    : `; it lights ${size(shape.width, shape.height)} of ${cloth.scrim}`;
}

function cameraSentence({ scene, recipe }: Plan): string | null {
  const { camera } = scene;
  if (camera === null) return null;
  const said = recipe.camera;
  const settings = [
    camera.focalLength === null ? null : `${(camera.focalLength * 1000).toFixed(0)} mm`,
    camera.aperture === null ? null : (said?.aperture?.written ?? null),
    camera.shutter === null ? null : sayTime(camera.shutter),
    camera.iso === null ? null : (said?.sensitivity?.written ?? null),
  ].filter((part) => part !== null);
  const held = camera.frameHeight > camera.frameWidth ? "upright" : "level";
  const took = said?.settings?.took ?? [];
  const photo = took.length === 0 ? "" : ` From ${said?.settings?.file}: ${took.join(", ")}.`;
  return `Camera: ${sayLength(alongFloor([0, 0, 0], camera.at))} from the mark along the floor, lens ${sayLength(camera.at[2])} above it, held ${held}; ${settings.join(", ")}.${photo}`;
}
