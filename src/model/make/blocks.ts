import type { BlockKind } from "../../vocabulary/index.js";
import type { BlockModel, PartModel, Properties, Recipe } from "../types.js";

/** Any block: its kind, its name, its properties by their names in the vocabulary, and the blocks inside it. */
export function block<K extends BlockKind>(
  kind: K,
  name: string | null,
  properties: Properties<K>,
  parts: readonly PartModel<K>[] = [],
): BlockModel<K> {
  return { block: kind, name, ...properties, parts } as unknown as BlockModel<K>;
}

/** A lamp with its place and its setting. */
export function light(
  name: string,
  properties: Properties<"light">,
  parts: readonly PartModel<"light">[] = [],
): BlockModel<"light"> {
  return block("light", name, properties, parts);
}

/** A person; the name may be left out (null) where there is only one. */
export function subject(
  name: string | null,
  properties: Properties<"subject">,
  points: readonly PartModel<"subject">[] = [],
): BlockModel<"subject"> {
  return block("subject", name, properties, points);
}

/** A place where a meter may be held. */
export function point(name: string, properties: Properties<"point">): BlockModel<"point"> {
  return block("point", name, properties);
}

/** The room; its surfaces are parts: `block("walls", null, { reflectance: percent(20) })`. */
export function room(
  properties: Properties<"room">,
  surfaces: readonly PartModel<"room">[] = [],
): BlockModel<"room"> {
  return block("room", null, properties, surfaces);
}

/** The set with its pieces: `block("flat", "back", { ... })`. */
export function set(...pieces: readonly PartModel<"set">[]): BlockModel<"set"> {
  return block("set", null, {}, pieces);
}

/** The camera. */
export function camera(properties: Properties<"camera">): BlockModel<"camera"> {
  return block("camera", null, properties);
}

/** What the picture should look like. */
export function intent(properties: Properties<"intent">): BlockModel<"intent"> {
  return block("intent", null, properties);
}

/** What a recipe made by code may hold. Everything may be left out. */
export type RecipeParts = Partial<Omit<Recipe, "format" | "kind" | "title" | "of">>;

/**
 * A recipe made by code: the same plain data that checking a text gives. `check(print(recipe))` finds what is
 * missing or out of range, as for a text.
 */
export function recipe(title: string, parts: RecipeParts): Recipe {
  return {
    format: 1,
    kind: "recipe",
    title,
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
