import type { Expression, Quantity, Value } from "../syntax/ast.js";
import { dimensionWords } from "../units/dimension.js";
import { findUnit } from "../units/spellings.js";

/** What a written value is, in words for a message: "a text", "a list". */
export function valueWords(value: Value): string {
  switch (value.kind) {
    case "text":
      return "a text";
    case "unknown":
      return "a question mark";
    case "list":
      return "a list";
    case "relation":
      return `two values joined by \`${value.word}\``;
    default:
      return expressionWords(value);
  }
}

function expressionWords(value: Expression): string {
  switch (value.kind) {
    case "quantity":
      return quantityWords(value);
    case "f-number":
      return "an f-number";
    case "iso":
      return "an ISO sensitivity";
    case "ratio":
      return "a ratio";
    case "reference":
      return value.args === null ? "a name" : "a word with brackets";
    case "group":
      return value.members.length > 1 ? "a point" : "a value in brackets";
    case "negation":
    case "sum":
    case "product":
      return "a sum or product";
    case "toleranced":
      return "a value with a tolerance";
    case "damaged":
      return "something that could not be read";
    default:
      return value satisfies never;
  }
}

function quantityWords(value: Quantity): string {
  if (value.joined === "by") return "numbers joined by x";
  const unit = value.amounts[0]?.unit ?? null;
  if (unit === null) return "a plain number";
  const row = findUnit(unit.text);
  return row === null ? "a quantity" : dimensionWords(row.base);
}

/** A kind of block with its article, to start a sentence: "An `intent`". */
export function aKind(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? "An" : "A"} \`${kind}\``;
}

/** A value without brackets that hold only itself. */
export function bare(value: Value): Value {
  let inner = value;
  while (inner.kind === "group" && inner.members.length === 1 && inner.members[0] !== undefined)
    inner = inner.members[0];
  return inner;
}

/** The word, where a value is just one name; else null. */
export function singleWord(value: Value): string | null {
  if (value.kind !== "reference" || value.args !== null || value.path.parts.length !== 1) return null;
  return value.path.parts[0]?.text ?? null;
}
