import { quote } from "../core/quote.js";
import { printBlock, printSettings, printSilence } from "./print-block.js";
import { printVariant } from "./print-variant.js";
import type { BlockModel, Recipe } from "./types.js";

/**
 * A model as recipe text. Checking the text gives the same model again, origins aside; `use`s and definitions
 * stand as they were written, and blocks that were like one are written out.
 */
export function printRecipe(recipe: Recipe): string {
  const head = ["halfshade 1", printTitle(recipe)];
  const sections: (readonly string[])[] = [
    head,
    recipe.uses.map((item) => item.written),
    recipe.lets.map((item) => item.written),
    ...recipe.definitions.map((item) => [item.written]),
    ...topBlocks(recipe).map((block) => printBlock(block, "")),
    ...(recipe.tolerances.length > 0 ? [printSettings("tolerances", recipe.tolerances)] : []),
    ...(recipe.thresholds.length > 0 ? [printSettings("thresholds", recipe.thresholds)] : []),
    ...(recipe.silence.length > 0 ? [printSilence(recipe.silence)] : []),
    recipe.expectations.map((item) => item.written),
    recipe.holds.map((item) => item.written),
    ...recipe.later.map((item) => [item.written]),
    ...recipe.variants.map((variant) => printVariant(variant, recipe)),
    ...recipe.tables.map((table) => [table.written]),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function printTitle(recipe: Recipe): string {
  const of = recipe.of === null ? "" : ` of ${quote(recipe.of)}`;
  const variant = recipe.ofVariant === undefined ? "" : ` variant ${quote(recipe.ofVariant)}`;
  return `${recipe.kind} ${quote(recipe.title)}${of}${variant}`;
}

function topBlocks(recipe: Recipe): readonly BlockModel[] {
  return [
    recipe.about,
    recipe.room,
    recipe.set,
    ...recipe.subjects,
    ...recipe.points,
    ...recipe.lights,
    recipe.camera,
    recipe.meter,
    recipe.intent,
  ].filter((block): block is NonNullable<typeof block> => block !== null);
}
