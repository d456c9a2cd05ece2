import type { Recipe } from "../../model/types.js";
import { sunPlace } from "../intent/sun-place.js";

/** The elevation at which a wish for sunlight has the sun, deg; null where the sun is below the horizon. */
export interface SunWish {
  readonly elevation: number | null;
}

/** The wish that the light passes for direct sun; null without one. */
export function sunWish(recipe: Recipe): SunWish | null {
  const wish = recipe.intent?.pass_for;
  if (wish === undefined) return null;
  const sun = sunPlace(wish);
  return sun === null ? null : { elevation: sun.elevation < 0 ? null : sun.elevation };
}

/** Whether the light is to pass for an overcast sky. */
export function overcastWish(recipe: Recipe): boolean {
  return recipe.intent?.pass_for?.kind === "overcast";
}

/** Whether soft edges are wished for. */
export function softWish(recipe: Recipe): boolean {
  return recipe.intent?.edges === "soft";
}
