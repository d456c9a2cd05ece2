import { expect, test } from "vitest";
import { parseFile } from "../../src/syntax/parse.js";
import { recipeTexts } from "../helpers/recipe-texts.js";
import { generatedParser, longRecipe } from "./parse-scene.js";

test("the parser made by a generator builds the same trees, places and all", () => {
  const other = generatedParser();
  for (const text of [...recipeTexts, longRecipe(20_000)]) {
    const { file, complete } = parseFile({ name: "a", text }, () => {});
    expect(complete).toBe(true);
    expect(other(text)).toEqual(file);
  }
});
