import type { SweepModel, TableModel } from "../model/tables/types.js";
import type { Recipe } from "../model/types.js";
import { resetCamera, resetLamp } from "../scene/reset.js";
import type { Scene } from "../scene/types.js";

/** Properties whose change moves no light: a row needs no new scene and no new light. */
const quick: Readonly<Record<"light" | "camera", readonly string[]>> = {
  light: ["power", "gel"],
  camera: ["aperture", "sensitivity", "shutter"],
};

/** Whether a sweep changes only how strong lamps are and how the camera is set. */
export function isQuick({ target }: SweepModel): boolean {
  return target.kind === "property" && quick[target.block].includes(target.property);
}

/** Whether rows of a table are checked as text. */
export function needsText({ sweeps }: TableModel): boolean {
  return sweeps.some(({ target }) => target.kind === "text");
}

/** The scene after a quick change; null where it has to be built. */
export function resetScene(
  scene: Scene,
  { target }: SweepModel,
  before: Recipe,
  after: Recipe,
): Scene | null {
  if (target.kind !== "property") return null;
  if (target.block === "camera") return after.camera && resetCamera(scene, after.lights, after.camera);
  const [old, now] = [before, after].map(({ lights }) => lights.find(({ name }) => name === target.name));
  return old === undefined || now === undefined ? null : resetLamp(scene, old, now);
}
