import type { Recipe } from "../../model/types.js";

/** The elevation that a wish for sunlight names, deg; null where it wishes for sun without one. */
export interface SunWish {
  readonly elevation: number | null;
}

/** The wish that the light passes for direct sun; null without one. */
export function sunWish(recipe: Recipe): SunWish | null {
  const wish = recipe.intent?.pass_for;
  if (wish === undefined) return null;
  if (wish.kind === "sunlight") return { elevation: wish.elevation.value };
  return wish.kind === "sun_at" ? { elevation: null } : null;
}

/** Whether the light is to pass for an overcast sky. */
export function overcastWish(recipe: Recipe): boolean {
  return recipe.intent?.pass_for?.kind === "overcast";
}

/** Whether soft edges are wished for. */
export function softWish(recipe: Recipe): boolean {
  return recipe.intent?.edges === "soft";
}
