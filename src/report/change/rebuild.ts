import type { LightModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import { sameSet } from "../../transport/same-set.js";
import { sceneLight } from "../../transport/scene-light.js";
import type { Plan } from "../plan.js";

/**
 * The plan of a changed recipe, its scene built anew; the light is shared where the set stays the same. What could not
 * be built is left out without a word.
 */
export function rebuiltWith(plan: Plan, recipe: Recipe): Plan {
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sameSet(plan.scene, scene) ? plan.light : sceneLight(scene) };
}

/** A recipe with one of its lights changed. */
export function withLight(recipe: Recipe, name: string, change: (light: LightModel) => LightModel): Recipe {
  return { ...recipe, lights: recipe.lights.map((row) => (row.name === name ? change(row) : row)) };
}
