import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { MAX_DIAGNOSTICS } from "../../src/core/limits.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { diagnosticJson } from "../../src/diagnostics/print-json.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { printRecipe } from "../../src/model/print.js";
import type { Recipe } from "../../src/model/types.js";
import { runs } from "../helpers/runs.js";
import { drawFrom } from "../model/random/draw.js";
import { unsound } from "./finite.js";
import { mutant } from "./mutate.js";
import { allTexts } from "./texts.js";

/** What is wrong with the findings of a text: a place outside of it, a number that is none, a hole in a sentence. */
function trouble(text: string, found: readonly Diagnostic[]): string | null {
  if (found.length > MAX_DIAGNOSTICS + 1) return `${found.length} findings`;
  for (const one of found) {
    const edits = one.fixes.flatMap((fix) => fix.edits);
    for (const { place } of [one, ...one.related, ...edits]) {
      const inside = place.start >= 0 && place.start <= place.end && place.end <= text.length;
      if (!inside || place.file !== "fuzz.light") return `${one.code} at ${place.start}-${place.end}`;
    }
    const json = diagnosticJson(one, () => text);
    const bad = unsound(json);
    if (bad !== null) return `${one.code} ${bad}`;
    if (/NaN|Infinity|undefined|\[object/.test(JSON.stringify(one.args) + json.message)) {
      if (!/NaN|Infinity|undefined|\[object/.test(text)) return `${one.code} says ${json.message}`;
    }
  }
  return null;
}

/** What a sound text's model prints as gives the same model again, or the first difference. */
function notTheSame(recipe: Recipe): string | null {
  const model = withoutOrigins(recipe);
  const text = printRecipe(model);
  const again = compile({ name: "fuzz.light", text });
  const error = again.diagnostics.find(({ severity }) => severity === "error");
  if (error !== undefined)
    return `${error.code} in its print: ${text.slice(error.place.start, error.place.end)}`;
  const other = again.recipe === null ? null : withoutOrigins(again.recipe);
  return JSON.stringify(other) === JSON.stringify(model) ? null : `prints as another model:\n${text}`;
}

test("a changed text never throws, and says only what can be said", () => {
  const wrong: string[] = [];
  for (let seed = 1; seed <= runs(20_000).numRuns; seed++) {
    const text = mutant(drawFrom(seed), allTexts);
    try {
      const { diagnostics, recipe, sound } = compile({ name: "fuzz.light", text });
      const found =
        trouble(text, diagnostics) ??
        (recipe === null ? null : unsound(withoutOrigins(recipe))) ??
        (recipe === null || !sound || seed % 4 > 0 ? null : notTheSame(recipe));
      if (found !== null) wrong.push(`seed ${seed}: ${found}`);
    } catch (error) {
      wrong.push(`seed ${seed}: ${error instanceof Error ? error.stack : error}`);
    }
    if (wrong.length >= 5) break;
  }
  expect(wrong).toEqual([]);
});
