import { dot, subtract } from "../math/vector.js";
import { lensOf } from "../report/frame/project.js";
import { firstFace } from "../report/plan.js";
import type { Scene } from "../scene/types.js";

/** Pixels that 10 cm take, square to the lens axis at the first face, else at the mark; null without a camera. */
export function tenCentimetres(scene: Scene, width: number): number | null {
  const { camera } = scene;
  const lens = camera === null ? null : lensOf(camera);
  if (camera === null || lens === null) return null;
  const depth = dot(subtract(firstFace(scene) ?? [0, 0, 0], camera.at), camera.forward);
  return depth > 0.01 ? ((0.1 * lens.across) / depth / 2) * width : null;
}
