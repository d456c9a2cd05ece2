import type { LightModel, Recipe } from "../../model/types.js";
import { buildScene } from "../../scene/build.js";
import { sceneLight } from "../../transport/scene-light.js";
import type { Plan } from "../plan.js";

/** The plan of a changed recipe: scene and light anew. What could not be built is left out without a word. */
export function rebuilt(recipe: Recipe): Plan {
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

/** A recipe with one of its lights changed. */
export function withLight(recipe: Recipe, name: string, change: (light: LightModel) => LightModel): Recipe {
  return { ...recipe, lights: recipe.lights.map((row) => (row.name === name ? change(row) : row)) };
}
