import type { Recipe, Setting } from "../model/types.js";
import { thresholdTable } from "../vocabulary/thresholds.js";
import { toleranceTable } from "../vocabulary/tolerances.js";

/** The name of a threshold. */
export type ThresholdName = (typeof thresholdTable)[number]["name"];
/** The name of a tolerance. */
export type ToleranceName = (typeof toleranceTable)[number]["name"];

function setOr(
  settings: readonly Setting[],
  table: readonly { readonly name: string; readonly value: number }[],
  name: string,
): number {
  const set = settings.find((row) => row.name === name);
  return set?.value ?? table.find((row) => row.name === name)?.value ?? 0;
}

/** A threshold in its base unit: the recipe's own, else the table's. */
export function threshold(recipe: Recipe, name: ThresholdName): number {
  return setOr(recipe.thresholds, thresholdTable, name);
}

/** A tolerance of measured inputs in its base unit: the recipe's own, else the table's. */
export function tolerance(recipe: Recipe, name: ToleranceName): number {
  return setOr(recipe.tolerances, toleranceTable, name);
}
