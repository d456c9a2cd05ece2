import type { BlockModel, Recipe } from "../../src/model/types.js";
import type { BlockKind } from "../../src/vocabulary/index.js";

/** A recipe with nothing in it but what a test says. */
export function recipe(parts: Partial<Recipe> = {}): Recipe {
  return {
    format: 1,
    kind: "recipe",
    title: "test",
    of: null,
    uses: [],
    lets: [],
    definitions: [],
    about: null,
    room: null,
    set: null,
    subjects: [],
    points: [],
    lights: [],
    camera: null,
    meter: null,
    intent: null,
    tolerances: [],
    thresholds: [],
    silence: [],
    expectations: [],
    holds: [],
    variants: [],
    tables: [],
    later: [],
    ...parts,
  };
}

type Fields<K extends BlockKind> = Omit<Extract<BlockModel, { block: K }>, "block" | "name" | "parts"> &
  Partial<Pick<Extract<BlockModel, { block: K }>, "parts">>;

/** One checked block of a kind. */
export function block<K extends BlockKind>(
  kind: K,
  name: string | null,
  fields: Fields<K>,
): Extract<BlockModel, { block: K }> {
  return { block: kind, name, parts: [], ...fields } as unknown as Extract<BlockModel, { block: K }>;
}
