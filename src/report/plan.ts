import type { Vec3 } from "../core/vector.js";
import type { Recipe } from "../model/types.js";
import type { Scene, SceneSubject, Source, Station } from "../scene/types.js";
import type { SceneLight } from "../transport/scene-light.js";
import type { ReportFrame } from "./schema/frame.js";
import type { Cast } from "./thrown/cast.js";

/** A scene with its light. The scene's lamps may be others than those the light was made with, its set may not. */
export interface Lit {
  readonly scene: Scene;
  readonly light: SceneLight;
}

/** A checked recipe with its scene and light: what every part of a report is made from. */
export interface Plan extends Lit {
  readonly recipe: Recipe;
  /** The picture of this recipe in this scene, where it is made already; it holds for no other. */
  readonly picture?: {
    readonly recipe: Recipe;
    readonly scene: Scene;
    readonly frame: ReportFrame;
  };
  /** The shadows of this scene, where they are looked at more than once; they hold for no other. */
  readonly cast?: Cast;
}

/** The key: the light that the scene names so; null without one. */
export function keyOf(scene: Scene): Source | null {
  return scene.key === null ? null : (scene.sources[scene.key] ?? null);
}

/** The first subject; null without one. */
export function firstSubject(scene: Scene): SceneSubject | null {
  return scene.subjects[0] ?? null;
}

/** A subject's face in words, the first one's where none is given: `the face`, or with several people `ana's face`. */
export function faceWords(scene: Scene, subject: SceneSubject | undefined = scene.subjects[0]): string {
  return subject !== undefined && scene.subjects.length > 1 && subject.name !== ""
    ? `${subject.name}'s face`
    : "the face";
}

/** The first subject's face; null without a subject. */
export function firstFace(scene: Scene): Vec3 | null {
  return firstSubject(scene)?.face ?? null;
}

/** The name of a part of a subject as stations have it: `face`, or `ana.face` with several subjects. */
export function partName(scene: Scene, subject: SceneSubject, part: string): string {
  return scene.subjects.length > 1 && subject.name !== "" ? `${subject.name}.${part}` : part;
}

/** The name by which results ask for the first subject's face. */
export function faceName(scene: Scene): string {
  const first = scene.subjects[0];
  return first === undefined ? "face" : partName(scene, first, "face");
}

/** The station of a part of a subject; null where the scene has none. */
export function stationOf(
  scene: Scene,
  subject: SceneSubject,
  part: string,
  receptor: "disc" | "dome" = "disc",
): Station | null {
  const name = partName(scene, subject, part);
  return scene.stations.find((row) => row.name === name && row.receptor === receptor) ?? null;
}

/** The lights of the recipe: a head behind a cloth is no light of its own but part of the cloth's. */
export function lightsOf(scene: Scene): readonly Source[] {
  return scene.sources.filter((source) => source.spillOf === undefined);
}

/** The lamp itself of a light: the head behind its cloth, else the light. */
export function headOf(scene: Scene, light: Source): Source {
  return scene.sources.find((source) => source.spillOf === light.name) ?? light;
}

/** The lights that are on and give something. */
export function lightsOn(scene: Scene): readonly Source[] {
  return lightsOf(scene).filter((source) => source.energy > 0);
}
