import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { recipeSchema } from "../../src/model/schema.js";
import { corpusTexts } from "../corpus/folder.js";
import { exampleTexts } from "../helpers/example-texts.js";
import { withOurKits } from "../helpers/kits.js";

const file = new URL("../../grammar/recipe.schema.json", import.meta.url);
const ajv = new Ajv2020({ strict: true, allErrors: true });
const valid = ajv.compile(JSON.parse(readFileSync(file, "utf8")));

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const models = [...exampleTexts, ...corpusTexts("accept")].flatMap(({ name, text }) => {
  const { recipe } = compile({ name, text }, withOurKits);
  return recipe === null ? [] : [{ name, model: JSON.parse(JSON.stringify(withoutOrigins(recipe))) as Json }];
});

test.each(models)("the model of $name fits both schemas", ({ model }) => {
  expect(recipeSchema.safeParse(model).error).toBeUndefined();
  expect(valid(model) ? null : valid.errors).toBeNull();
});

/** Every place of a value, as the keys that lead to it. */
function placesOf(value: Json, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Array.isArray(value) ? value.map((item, i) => [i, item] as const) : Object.entries(value);
  return [
    ...(path.length > 0 ? [path] : []),
    ...inner.flatMap(([key, item]) => placesOf(item, [...path, key])),
  ];
}

/** The value with what stands at a place replaced; `undefined` takes the key out. */
function withPlace(value: Json, path: readonly (string | number)[], by: Json | undefined): Json {
  const copy = structuredClone(value);
  const last = path[path.length - 1];
  let at = copy as Record<string | number, Json>;
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, Json>;
  if (by === undefined) delete at[last ?? ""];
  else at[last ?? ""] = by;
  return copy;
}

const rich = models.filter(({ name }) => /^(recipe|kit|session)-/.test(name));

test.each(rich)("a value of the wrong type anywhere in $name is refused by both", ({ model }) => {
  const places = placesOf(model);
  for (const path of places.filter((_, index) => index % 7 === 0)) {
    const spoilt = withPlace(model, path, [{ nothing: 1 }]);
    const zod = recipeSchema.safeParse(spoilt).success;
    expect({ path: path.join("."), zod, ajv: valid(spoilt) }).toEqual({
      path: path.join("."),
      zod: false,
      ajv: false,
    });
  }
});

test.each(rich)("a key too many anywhere in $name is refused by the JSON schema", ({ model }) => {
  const blocks = placesOf(model).filter(
    (path) => path[path.length - 1] === "written" || path[path.length - 1] === "block",
  );
  for (const path of blocks.filter((_, index) => index % 5 === 0)) {
    expect(valid(withPlace(model, [...path.slice(0, -1), "heigth"], 3))).toBe(false);
  }
});

test("not a recipe at all", () => {
  for (const value of [null, 3, [], {}, { format: 2 }, "recipe"]) {
    expect(recipeSchema.safeParse(value).success).toBe(false);
    expect(valid(value)).toBe(false);
  }
});
