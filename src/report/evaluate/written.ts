import type { BlockModel, Recipe } from "../../model/types.js";
import type { Quantity } from "../../units/quantity.js";
import { isQuantity } from "../../units/spread.js";

/** A number of a recipe where it is written, and the recipe with another in its place. */
export interface WrittenNumber {
  /** The block that it is written in; for a part of a block, the part. */
  readonly block: BlockModel;
  /** The block around it, where that is a person or a light. */
  readonly owner: BlockModel | null;
  readonly property: string;
  /** Where in the value: `width`, `left`, `length`; empty where the value is the number. */
  readonly leaf: string;
  readonly quantity: Quantity;
  readonly put: (quantity: Quantity) => Recipe;
}

/** Every number of the set-up of a recipe: room, set, people, points, lights, camera, with the parts of each. */
export function writtenNumbers(recipe: Recipe): readonly WrittenNumber[] {
  const { room, set, camera, meter } = recipe;
  const rows = <K extends "subjects" | "points" | "lights">(kind: K): readonly WrittenNumber[] =>
    recipe[kind].flatMap((block, at) =>
      inBlock(block, null, (changed) => ({
        ...recipe,
        [kind]: recipe[kind].map((row, i) => (i === at ? changed : row)),
      })),
    );
  const one = (
    kind: "room" | "set" | "camera" | "meter",
    block: BlockModel | null,
  ): readonly WrittenNumber[] =>
    block === null ? [] : inBlock(block, null, (changed) => ({ ...recipe, [kind]: changed }));
  return [
    ...one("room", room),
    ...one("set", set),
    ...rows("subjects"),
    ...rows("points"),
    ...rows("lights"),
    ...one("camera", camera),
    ...one("meter", meter),
  ];
}

/** What of a block is no value. */
const NO_VALUES: ReadonlySet<string> = new Set(["block", "name", "parts", "origins"]);

function inBlock(
  block: BlockModel,
  owner: BlockModel | null,
  put: (block: BlockModel) => Recipe,
): readonly WrittenNumber[] {
  const own = Object.entries(block)
    .filter(([property]) => !NO_VALUES.has(property))
    .flatMap(([property, value]) =>
      inValue(value, [], (changed) => put({ ...block, [property]: changed } as BlockModel)).map((row) => ({
        ...row,
        block,
        owner,
        property,
      })),
    );
  const parts = (block.parts as readonly BlockModel[]).flatMap((part, at) =>
    inBlock(part, block.block === "subject" || block.block === "light" ? block : null, (changed) =>
      put({
        ...block,
        parts: (block.parts as readonly BlockModel[]).map((row, i) => (i === at ? changed : row)),
      } as BlockModel),
    ),
  );
  return [...own, ...parts];
}

type InValue = Pick<WrittenNumber, "leaf" | "quantity" | "put">;

/** The numbers of a value, however deep; each by the last name on the way to it. */
function inValue(
  value: unknown,
  way: readonly string[],
  put: (value: unknown) => Recipe,
): readonly InValue[] {
  if (typeof value !== "object" || value === null) return [];
  if (isQuantity(value)) return [{ leaf: way.at(-1) ?? "", quantity: value, put }];
  if (Array.isArray(value)) {
    return value.flatMap((item, at) =>
      inValue(item, way, (changed) => put(value.map((row, i) => (i === at ? changed : row)))),
    );
  }
  return Object.entries(value).flatMap(([name, part]) =>
    inValue(part, [...way, name], (changed) => put({ ...value, [name]: changed })),
  );
}
