import type { Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import { sameSet } from "../../transport/same-set.js";
import { sceneLight } from "../../transport/scene-light.js";
import type { Plan } from "../plan.js";

/** The plan of a changed recipe, built anew; the light is shared where the set stays the same. */
export function rebuiltWith(plan: Plan, recipe: Recipe): Plan {
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sameSet(plan.scene, scene) ? plan.light : sceneLight(scene) };
}
