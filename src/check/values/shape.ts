import { capsule, disc, rectangle, sphere } from "../../model/make/lamps.js";
import type { ShapeValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Length } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { shapeSynonyms } from "../../vocabulary/synonyms.js";
import { type Context, replace, report } from "../context.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readRowMeasure } from "./measure.js";
import { readSides } from "./sizes.js";
import { refuseArguments, refuseCall } from "./want.js";

const allShapes =
  "The shapes are `disc(18 cm)`, `rectangle(60 x 90 cm)`, `sphere(8 cm)` and `capsule(7 cm, 4 cm)`.";

const opening = (name: string): PropertyRow => ({
  name,
  type: "length",
  help: "",
  example: "18 cm",
  default: "",
  range: [0.001, 30],
});
/** `disc(18 cm)`, `rectangle(60 x 90 cm)`, `sphere(8 cm)`, `capsule(7 cm, 4 cm)` */
export function readShape(ctx: Context, row: PropertyRow, value: Value): ShapeValue | null {
  const call = asCall(value);
  if (call === null || call.call.args === null) return refuseCall(ctx, row, value, [], allShapes);
  const meant = shapeSynonyms.get(call.word);
  if (meant !== undefined) {
    const word = call.call.path.span;
    return refuseCall(ctx, row, value, [replace(ctx, `write \`${meant}(...)\``, word, meant)], allShapes);
  }
  const sorted = sortArguments(call.args);
  const [first, second] = sorted.plain;
  const one = (name: string, given: Value): Length | null =>
    readRowMeasure(ctx, opening(name), "m", given) as Length | null;
  switch (call.word) {
    case "disc":
    case "sphere": {
      const trouble = argumentTrouble(sorted, [], 1);
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes its diameter", `${call.word}(18 cm)`);
      }
      const diameter = one(call.word, first);
      return diameter === null ? null : call.word === "disc" ? disc(diameter) : sphere(diameter);
    }
    case "rectangle": {
      const trouble = argumentTrouble(sorted, [], 1);
      const refused = (): null =>
        refuseArguments(ctx, call.call, trouble ?? "takes width x height", "rectangle(60 x 90 cm)");
      if (trouble !== null || first === undefined) return refused();
      const want = {
        count: 2,
        base: "m",
        name: "rectangle",
        words: "width x height",
        example: "rectangle(60 x 90 cm)",
      } as const;
      const read = readSides(ctx, want, first);
      if (read === "other") return refused();
      const [width, height] = (read ?? []) as readonly Length[];
      if (width === undefined || height === undefined) return null;
      const fits = [width, height].every((side) => checkOpening(ctx, side, first));
      return fits ? rectangle(width, height) : null;
    }
    case "capsule": {
      const trouble = argumentTrouble(sorted, [], 2);
      if (trouble !== null || first === undefined || second === undefined) {
        return refuseArguments(
          ctx,
          call.call,
          trouble ?? "takes its length and its diameter",
          "capsule(7 cm, 4 cm)",
        );
      }
      const length = one("capsule", first);
      const diameter = one("capsule", second);
      if (length === null || diameter === null) return null;
      if (length.value < diameter.value) {
        return refuseArguments(
          ctx,
          call.call,
          "is shorter than it is thick; its length includes the rounded ends",
          "capsule(7 cm, 4 cm)",
        );
      }
      return capsule(length, diameter);
    }
    default:
      return refuseCall(ctx, row, value, [], allShapes);
  }
}

function checkOpening(ctx: Context, side: Length, node: Value): boolean {
  const row = opening("rectangle");
  const [low, high] = row.range ?? [0, 0];
  if (side.value >= low && side.value <= high) return true;
  report(ctx, "value.range", node.span, {
    name: "rectangle",
    written: side.written,
    low: "1 mm",
    high: "30 m",
  });
  return false;
}
