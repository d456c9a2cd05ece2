import type { Recipe } from "../../model/types.js";
import { threshold } from "../settings.js";
import type { FaceAngles } from "./angles.js";
import { type PatternGap, type PatternName, patternGaps } from "./pattern.js";

/** The pattern that the recipe wishes for; null without one. */
export function wishedPattern({ intent }: Recipe): PatternName | null {
  return (intent?.pattern as PatternName | undefined) ?? null;
}

/** The side of the face that the recipe wishes to be lit; null without one. */
export function wishedSide({ intent }: Recipe): "short" | "broad" | null {
  return (intent?.side as "short" | "broad" | undefined) ?? null;
}

/** How far a light stands from the wished pattern; null without a wish. */
export function wishedGap(recipe: Recipe, angles: FaceAngles): PatternGap | null {
  const wished = wishedPattern(recipe);
  return patternGaps(angles).find(({ name }) => name === wished) ?? null;
}

/** Whether a light stands near enough to a pattern, by the recipe's thresholds. */
export function isNear(recipe: Recipe, gap: PatternGap): boolean {
  return (
    Math.abs(gap.azimuth) <= threshold(recipe, "pattern_azimuth") + 1e-9 &&
    Math.abs(gap.elevation) <= threshold(recipe, "pattern_elevation") + 1e-9
  );
}
