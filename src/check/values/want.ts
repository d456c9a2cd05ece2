import type { Span } from "../../core/span.js";
import type { Fix } from "../../diagnostics/diagnostic.js";
import { printNode } from "../../format/print-node.js";
import type { Reference, Value } from "../../syntax/ast.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { valueTypes } from "../../vocabulary/value-types.js";
import { type Context, replace, report } from "../context.js";
import { nearNames } from "../suggest.js";
import { bare, valueWords } from "../words.js";

/** Says that a value is not of the type of its property. */
export function refuseType(ctx: Context, row: PropertyRow, value: Value): null {
  return refuseKind(ctx, row, value, valueTypes[row.type].words);
}

/** Says that a value is not what is wanted, in words. */
export function refuseKind(ctx: Context, want: Example, value: Value, wanted: string): null {
  if (value.kind === "damaged") return null;
  if (value.kind === "unknown") {
    report(ctx, "value.open", value.span, { name: want.name });
    return null;
  }
  report(ctx, "value.type", value.span, {
    name: want.name,
    wanted,
    found: valueWords(value),
    example: exampleOf(want),
  });
  return null;
}

/** What a value is called and how one of its kind is written. */
interface Example {
  readonly name: string;
  readonly example: string;
}

/** The example as it stands in a recipe: a word with brackets shows all of itself, a property its name before it. */
export function exampleOf({ name, example }: Example): string {
  return example.startsWith(`${name}(`) ? example : `${name}: ${example}`;
}

/** The words with brackets that types of values know. */
const calls: Readonly<Partial<Record<PropertyRow["type"], readonly string[]>>> = {
  calibration: ["metered", "guide_number", "efficacy", "candelas"],
  beam: ["cosine_power"],
  gels: ["warm", "cool", "neutral"],
  dial: ["numbers"],
  mark: ["from"],
};

/** The words that may have been meant by a misspelt one with brackets. */
function nearCalls(type: PropertyRow["type"], value: Value): readonly string[] {
  const call = bare(value);
  if (call.kind !== "reference" || call.args === null || call.path.parts.length !== 1) return [];
  return nearNames(call.path.parts[0]?.text ?? "", calls[type] ?? []);
}

const spanOfCall = (value: Value): Span => {
  const call = bare(value);
  return call.kind === "reference" ? call.path.span : value.span;
};

/** Says that a word with brackets is not one of those wanted. */
export function refuseCall(
  ctx: Context,
  row: PropertyRow,
  value: Value,
  fixes: readonly Fix[] = [],
  help?: string,
): null {
  if (value.kind === "damaged") return null;
  if (value.kind === "unknown") return refuseKind(ctx, row, value, "");
  const args = { call: printNode(value), wanted: valueTypes[row.type].words, example: exampleOf(row) };
  const meant = fixes.length > 0 ? [] : nearCalls(row.type, value);
  const all = [...fixes, ...meant.map((word) => replace(ctx, `write \`${word}\``, spanOfCall(value), word))];
  const said = meant.length > 0 ? `Perhaps \`${meant.join("` or `")}\`?` : help;
  report(
    ctx,
    "value.call",
    value.span,
    args,
    said === undefined ? { fixes: all } : { fixes: all, help: said },
  );
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
