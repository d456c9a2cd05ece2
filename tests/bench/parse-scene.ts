import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import peggy from "peggy";
import type { parseFile } from "../../src/syntax/parse.js";
import { recipeTexts } from "../helpers/recipe-texts.js";

/** The parser of the last build, loaded by the runtime itself. */
export function builtParser(): typeof parseFile {
  const load = createRequire(import.meta.url);
  return load("../../dist/parser.cjs").parseFile;
}

/** A parser for valid texts from the grammar beside this file, made by a parser generator without a cache. */
export function generatedParser(): (text: string) => unknown {
  const grammar = readFileSync(new URL("recipe.peggy", import.meta.url), "utf8");
  const parser = peggy.generate(grammar);
  return (text) => parser.parse(text);
}

/** One recipe of about so many letters: the items of the texts of the tests again and again. */
export function longRecipe(length: number): string {
  const bodies = recipeTexts.slice(0, 2).map((text) => text.slice(text.indexOf("\n", 13) + 1));
  let text = recipeTexts[0] ?? "";
  for (let turn = 0; text.length < length; turn++) text += `\n${bodies[turn % bodies.length]}`;
  return text;
}
