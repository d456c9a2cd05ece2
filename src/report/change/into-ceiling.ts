import type { Plan } from "../plan.js";
import { rebuiltWith, withLight } from "./rebuild.js";

/**
 * The plan with a light turned into the ceiling over the mark from where its head is; null without a room, or where it
 * shines there already.
 */
export function intoCeiling(plan: Plan, name: string): Plan | null {
  const light = plan.recipe.lights.find((row) => row.name === name);
  if (plan.scene.room === null || light === undefined || light.into === "ceiling") return null;
  const recipe = withLight(plan.recipe, name, (row) => {
    const { through: _, aim: __, feather: ___, ...rest } = row;
    return { ...rest, into: "ceiling" };
  });
  return rebuiltWith(plan, recipe);
}
