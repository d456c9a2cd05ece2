import { siblingsOf } from "../../vocabulary/siblings.js";
import type { CameraModel, LightModel, Recipe } from "../types.js";
import type { SweepModel } from "./types.js";

/** A recipe with another value of a swept property, those that say the same in another way dropped; null without the block. */
export function withValue(recipe: Recipe, { target }: SweepModel, value: unknown): Recipe | null {
  if (target.kind !== "property") return recipe;
  if (target.block === "camera") {
    return recipe.camera === null
      ? null
      : { ...recipe, camera: changed("camera", recipe.camera, target.property, value) };
  }
  const index = recipe.lights.findIndex((light) => light.name === target.name);
  const light = recipe.lights[index];
  if (light === undefined) return null;
  const after = changed("light", light, target.property, value);
  return { ...recipe, lights: recipe.lights.map((one, i) => (i === index ? after : one)) };
}

function changed<B extends LightModel | CameraModel>(
  kind: string,
  block: B,
  property: string,
  value: unknown,
): B {
  const kept: Record<string, unknown> = { ...block, [property]: value };
  for (const sibling of siblingsOf(kind, property)) delete kept[sibling];
  return kept as unknown as B;
}
