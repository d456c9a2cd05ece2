import { printNode } from "../../format/print-node.js";
import type { Reference, Value } from "../../syntax/ast.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { valueTypes } from "../../vocabulary/value-types.js";
import { type Context, report } from "../context.js";
import { valueWords } from "../words.js";

/** Says that a value is of the wrong type. */
export function refuseType(ctx: Context, row: PropertyRow, value: Value): null {
  if (value.kind === "damaged") return null;
  if (value.kind === "unknown") {
    report(ctx, "value.open", value.span, { name: row.name });
    return null;
  }
  report(ctx, "value.type", value.span, {
    name: row.name,
    wanted: valueTypes[row.type].words,
    found: valueWords(value),
    example: row.example,
  });
  return null;
}

/** Says that a word with brackets is not one of those wanted. */
export function refuseCall(ctx: Context, row: PropertyRow, value: Value): null {
  if (value.kind === "damaged") return null;
  report(ctx, "value.call", value.span, {
    call: printNode(value),
    wanted: valueTypes[row.type].words,
    example: `${row.name}: ${row.example}`,
  });
  return null;
}

/** Says what is wrong with the arguments of a word with brackets. */
export function refuseArguments(ctx: Context, call: Reference, trouble: string, example: string): null {
  report(ctx, "value.argument", call.span, {
    call: call.path.parts.map((part) => part.text).join("."),
    trouble,
    example,
  });
  return null;
}
