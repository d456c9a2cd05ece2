import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Compiled, compile } from "../../src/compile.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { printRecipe } from "../../src/model/print.js";
import { recipeSchema } from "../../src/model/schema.js";
import type { Recipe } from "../../src/model/types.js";
import { corpusTexts } from "../corpus/folder.js";
import { exampleTexts } from "../helpers/example-texts.js";
import { withOurKits } from "../helpers/kits.js";
import { mustBreak } from "../helpers/must-break.js";
import { runs } from "../helpers/runs.js";
import { recipeFrom } from "../model/random/recipe.js";
import { withItemsIn, withLengthsIn } from "../model/random/rewrite.js";

const seed = fc.integer();

function sound(text: string): Compiled & { readonly recipe: Recipe } {
  const compiled = compile({ name: "made", text }, withOurKits);
  const errors = compiled.diagnostics.filter(({ severity }) => severity === "error");
  expect(
    errors.map(
      ({ code, place, args }) => `${code} ${JSON.stringify(args)}: ${text.slice(place.start, place.end)}`,
    ),
  ).toEqual([]);
  const { recipe } = compiled;
  if (recipe === null) throw new Error("no recipe");
  return { ...compiled, recipe };
}

/** Reads a text that has to be sound. */
const read = (text: string): Recipe => withoutOrigins(sound(text).recipe);

describe("printing a model", () => {
  test("a model made by code prints as text that gives the same model", () => {
    fc.assert(
      fc.property(seed, (from) => {
        const made = recipeFrom(from);
        expect(read(printRecipe(made))).toEqual(made);
      }),
      runs(300),
    );
  });

  const texts = [...exampleTexts, ...corpusTexts("accept"), ...corpusTexts("reject")].filter(({ text }) => {
    const { recipe, sound } = compile({ name: "a", text }, withOurKits);
    return recipe !== null && sound;
  });

  test("are tried on every example and on enough of the corpus", () => {
    expect(texts.filter(({ name }) => name.startsWith("examples/"))).toHaveLength(exampleTexts.length);
    expect(texts.length).toBeGreaterThan(200);
  });

  test.each(texts)("$name: text, model, text and model again are the same", ({ text }) => {
    const model = read(text);
    const printed = printRecipe(model);
    expect(read(printed)).toEqual(model);
    expect(printRecipe(read(printed))).toBe(printed);
  });

  test("fails where a value prints as another", () => {
    mustBreak(() => {
      const made = recipeFrom(1);
      const spoilt = printRecipe(made).replace(/(\d) (m|cm|mm|in|ft)\b/, "$11 $2");
      expect(read(spoilt)).toEqual(made);
    });
  });
});

/** The numbers of a model, each with where it stands. */
function numbersIn(value: unknown, path: string, into: Map<string, number>): void {
  if (typeof value === "number") into.set(path, value);
  else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) numbersIn(inner, `${path}.${key}`, into);
  }
}

describe("the unit in which lengths are written", () => {
  test("changes no number of the model", () => {
    fc.assert(
      fc.property(seed, fc.constantFrom("m", "cm", "mm", "ft", "in"), (from, unit) => {
        const { source, file, recipe } = sound(printRecipe(recipeFrom(from)));
        const text = withLengthsIn(source.text, file, unit);
        // A length at the very end of its range may leave it by a rounding.
        const other = compile({ name: "other", text });
        fc.pre(!other.diagnostics.some(({ code }) => code === "value.range"));
        const [a, b] = [new Map<string, number>(), new Map<string, number>()];
        numbersIn(withoutOrigins(recipe), "", a);
        numbersIn(withoutOrigins(sound(text).recipe), "", b);
        expect([...b.keys()]).toEqual([...a.keys()]);
        for (const [path, value] of a) {
          const apart = Math.abs((b.get(path) ?? Number.NaN) - value);
          expect(apart, `${path} in ${unit}`).toBeLessThanOrEqual(1e-15 * Math.abs(value));
        }
      }),
      runs(200),
    );
  });
});

/** A model with everything that has an order sorted. */
function inOrder(recipe: Recipe): unknown {
  const sort = <T>(items: readonly T[]): readonly T[] =>
    [...items].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  const entries = Object.entries(withoutOrigins(recipe)).map(([key, value]) => [
    key,
    Array.isArray(value) ? sort(value) : value,
  ]);
  return Object.fromEntries(entries);
}

describe("the order of the items of a file", () => {
  const order = fc.array(fc.integer(), { minLength: 1, maxLength: 40 });
  const rich = corpusTexts("accept").filter(({ name }) => /^(recipe|kit|session)-/.test(name));

  test.each(rich)("changes nothing but order in $name", ({ text }) => {
    const { file, recipe, diagnostics } = sound(text);
    const codes = (found: Compiled): readonly string[] => found.diagnostics.map(({ code }) => code).sort();
    fc.assert(
      fc.property(order, (by) => {
        const shuffled = sound(withItemsIn(file, by));
        expect(inOrder(shuffled.recipe)).toEqual(inOrder(recipe));
        expect(codes(shuffled)).toEqual(diagnostics.map(({ code }) => code).sort());
      }),
      runs(30),
    );
  });

  test("changes nothing but order in recipes made by code", () => {
    fc.assert(
      fc.property(seed, order, (from, by) => {
        const { file, recipe } = sound(printRecipe(recipeFrom(from)));
        expect(inOrder(sound(withItemsIn(file, by)).recipe)).toEqual(inOrder(recipe));
      }),
      runs(100),
    );
  });
});

describe("the schemas of the model", () => {
  const schema = new URL("../../grammar/recipe.schema.json", import.meta.url);
  const valid = new Ajv2020({ strict: true, strictTypes: false }).compile(
    JSON.parse(readFileSync(schema, "utf8")),
  );

  test("take every model", () => {
    fc.assert(
      fc.property(seed, (from) => {
        const made: unknown = JSON.parse(JSON.stringify(recipeFrom(from)));
        expect(recipeSchema.safeParse(made).error).toBeUndefined();
        expect(valid(made) ? null : valid.errors).toBeNull();
      }),
      runs(150),
    );
  });
});
