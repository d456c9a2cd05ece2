import { exp2 } from "../../core/exp2.js";
import type { LightModel, Recipe } from "../../model/types.js";
import type { ShapeValue } from "../../model/values.js";
import type { BaseUnit } from "../../units/dimension.js";
import type { Length, Quantity } from "../../units/quantity.js";
import { hasSpread } from "../../units/spread.js";
import { blockRow } from "../../vocabulary/index.js";
import { tolerance } from "../settings.js";
import { standingTolerance } from "./standing.js";
import { type WrittenNumber, writtenNumbers } from "./written.js";

/** A number of a recipe that was measured, and the recipe with it off. */
export interface Tape {
  /** `camera height`, `back behind`, `room height`. */
  readonly what: string;
  readonly size: number;
  /** The unit of the number; stops for those on a scale of stops, mired for colour temperatures. */
  readonly unit: BaseUnit;
  readonly off: (by: number) => Recipe;
}

/**
 * The numbers of a recipe that may be off, besides those of lamps that have rules of their own: all behind which a `+-`
 * is written, and those that have a tolerance without it.
 */
export function tapesOf(recipe: Recipe): readonly Tape[] {
  const numbers = writtenNumbers(recipe).filter((number) => !hasRuleOfItsOwn(number));
  const tapes = numbers.map(
    (number): Tape => ({
      what: nameOf(number),
      size: sizeOf(recipe, number),
      unit: scaleOf(number.quantity),
      off: (by) => number.put(numberOff(number, by)),
    }),
  );
  return [...tapes, ...openings(recipe)].filter(({ size }) => size > 0);
}

/** Properties of a lamp by which its place and its output are off; see `inputs`. */
const ofLamps: ReadonlySet<string> = new Set(["height", "bottom_edge", "elevation", "power"]);

/** Numbers that are inputs by other rules: the readings that place a lamp, what it gives, and reflectances of surfaces. */
function hasRuleOfItsOwn({ block, property, leaf, quantity }: WrittenNumber): boolean {
  if (block.block === "light") {
    if (ofLamps.has(property)) return true;
    if (property === "distance" || property === "floor_distance") return leaf === "length";
    if (property === "bearing" || property === "output") return true;
    if (property === "position") return !hasSpread(block.position);
    return property === "calibration" && ["fNumber", "number", "efficacy"].includes(leaf);
  }
  return (
    block.block !== "subject" && ["reflectance", "front", "back"].includes(property) && quantity.unit === "1"
  );
}

/** How far a number may be off: by its own `+-`, else by a tolerance of the recipe, which may be a share of it. */
export function sizeOf(recipe: Recipe, number: WrittenNumber): number {
  const { value, plusMinus } = number.quantity;
  if (plusMinus !== undefined) return Math.abs(plusMinus.value * (plusMinus.unit === "%" ? value : 1));
  const name = standingTolerance(recipe, number);
  if (name === null) return 0;
  return tolerance(recipe, name) * (name === "size" || name === "lens" ? Math.abs(value) : 1);
}

/** The unit in which a number is off. */
export function scaleOf({ unit, plusMinus }: Quantity): BaseUnit {
  if (plusMinus?.unit === "stop") return "stop";
  if (unit === "f" || unit === "ISO" || unit === "EV") return "stop";
  return unit === "K" ? "mired" : unit;
}

/** A number of a recipe that is off by an amount on its scale, kept to what its property may be. */
export function numberOff(number: WrittenNumber, by: number): Quantity {
  return { ...number.quantity, value: within(number, moved(number.quantity, by)) };
}

/** A number that is off by an amount on its scale. */
function moved({ value, unit, plusMinus }: Quantity, by: number): number {
  if (unit === "f") return value * exp2(by / 2);
  if (unit === "ISO") return value * exp2(by);
  if (plusMinus?.unit === "stop" && unit !== "stop" && unit !== "EV") return value * exp2(by);
  if (unit === "K") return 1e6 / Math.max(1, 1e6 / value + by);
  return value + by;
}

/** A number kept to what its property may be; a size stays one. */
function within({ block, property, quantity }: WrittenNumber, value: number): number {
  const range = blockRow(block.block)?.properties.find((row) => row.name === property)?.range;
  const [low, high] = range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return quantity.value < low || quantity.value > high ? value : Math.min(high, Math.max(low, value));
}

function nameOf({ block, owner, property, leaf }: WrittenNumber): string {
  const own = block.name ?? (block.block === "subject" ? "the subject" : block.block);
  const name = block.name === null && owner?.name != null ? `${owner.name} ${own}` : own;
  if (block.block === "subject" && property === "height") return `height of ${name}`;
  if (block.block === "light" && property === "shape") return `size of ${name}`;
  const place = ["at", "position", "mark", "size", "hinge"].includes(property);
  const words = place || leaf === "length" || leaf === "angle" ? [] : [property.replaceAll("_", " ")];
  if (leaf === "length" || leaf === "angle") words.push(property.replaceAll("_", " "));
  else if (leaf !== "") words.push(leaf);
  return `${name} ${words.join(" ")}`;
}

/** The sizes of openings behind which no `+-` is written. Both edges of a rectangle are of one make, and off together. */
function openings(recipe: Recipe): readonly Tape[] {
  return recipe.lights.flatMap((light): readonly Tape[] => {
    const { shape } = light;
    if (shape === undefined || lengthsOf(shape).some(({ plusMinus }) => plusMinus !== undefined)) return [];
    const edge = Math.max(...lengthsOf(shape).map(({ value }) => value));
    const off = (by: number): Recipe => withShape(recipe, light, scaled(shape, 1 + by / edge));
    return [
      {
        what: `size of ${light.name ?? "the light"}`,
        size: tolerance(recipe, "size") * edge,
        unit: "m",
        off,
      },
    ];
  });
}

function withShape(recipe: Recipe, light: LightModel, shape: ShapeValue): Recipe {
  return { ...recipe, lights: recipe.lights.map((row) => (row === light ? { ...row, shape } : row)) };
}

function lengthsOf(shape: ShapeValue): readonly Length[] {
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return [shape.diameter];
    case "rectangle":
      return [shape.width, shape.height];
    case "capsule":
      return [shape.length, shape.diameter];
    default:
      return shape satisfies never;
  }
}

function scaled(shape: ShapeValue, by: number): ShapeValue {
  const times = (length: Length): Length => ({ ...length, value: length.value * by });
  switch (shape.kind) {
    case "disc":
    case "sphere":
      return { ...shape, diameter: times(shape.diameter) };
    case "rectangle":
      return { ...shape, width: times(shape.width), height: times(shape.height) };
    case "capsule":
      return { ...shape, length: times(shape.length), diameter: times(shape.diameter) };
    default:
      return shape satisfies never;
  }
}
