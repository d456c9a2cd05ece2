import { say } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";
import { type BlockKind, blocks } from "../vocabulary/index.js";
import type { BlockRow, PropertyRow } from "../vocabulary/property.js";
import { writeName } from "./make/points.js";
import { quote } from "./make/quote.js";
import type { BlockModel, Recipe, Setting, Silence } from "./types.js";

/**
 * A model as recipe text. Checking the text gives the same model again, origins aside; `use`s and definitions
 * stand as they were written, and blocks that were like one are written out.
 */
export function printRecipe(recipe: Recipe): string {
  const head = ["halfshade 1", printTitle(recipe)];
  const sections: string[][] = [
    head,
    recipe.uses.map((item) => item.written),
    recipe.lets.map((item) => item.written),
    ...recipe.definitions.map((item) => [item.written]),
    ...topBlocks(recipe).map((block) => printBlock(block, "")),
    ...(recipe.tolerances.length > 0 ? [printSettings("tolerances", recipe.tolerances)] : []),
    ...(recipe.thresholds.length > 0 ? [printSettings("thresholds", recipe.thresholds)] : []),
    ...(recipe.silence.length > 0 ? [printSilence(recipe.silence)] : []),
    recipe.expectations.map((item) => item.written),
    ...recipe.later.map((item) => [item.written]),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function printTitle(recipe: Recipe): string {
  const of = recipe.of === null ? "" : ` of ${quote(recipe.of)}`;
  return `${recipe.kind} ${quote(recipe.title)}${of}`;
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

function printBlock(block: BlockModel, indent: string): string[] {
  const row: BlockRow = blocks[block.block as BlockKind];
  const name = block.name === null ? "" : ` ${writeName(block.name)}`;
  const values = block as unknown as Readonly<Record<string, unknown>>;
  const inner: string[] = [];
  for (const property of row.properties) {
    const value = Object.hasOwn(values, property.name) ? values[property.name] : undefined;
    if (value !== undefined) inner.push(`${indent}  ${property.name}: ${printValue(property, value)}`);
  }
  for (const part of block.parts as readonly BlockModel[]) inner.push(...printBlock(part, `${indent}  `));
  if (inner.length === 0) return [`${indent}${block.block}${name} {}`];
  return [`${indent}${block.block}${name} {`, ...inner, `${indent}}`];
}

function printSettings(kind: string, settings: readonly Setting[]): string[] {
  return [`${kind} {`, ...settings.map((setting) => `  ${setting.name}: ${setting.written}`), "}"];
}

function printSilence(rows: readonly Silence[]): string[] {
  return ["silence {", ...rows.map((row) => `  ${writeName(row.code)}: ${quote(row.because)}`), "}"];
}

/** A value as its property writes it: words bare, texts quoted, everything else by its own written form. */
function printValue(property: PropertyRow, value: unknown): string {
  switch (property.type) {
    case "word":
      return String(value);
    case "name":
      return writeName(String(value));
    case "text":
      return quote(String(value));
    case "texts": {
      const texts = value as readonly string[];
      return `[${texts.map(quote).join(", ")}]`;
    }
    default: {
      const written = value as { readonly written: string };
      return "unit" in written && "value" in written ? say(written as unknown as Quantity) : written.written;
    }
  }
}
