import type { Span } from "../../src/core/span.js";
import { writeNumber } from "../../src/core/write-number.js";
import { writeName } from "../../src/model/make/points.js";
import type { Name, Path, Value } from "../../src/syntax/ast.js";

/**
 * Parts of a tree that stand in no text. They carry the place of a statement, so that findings about them point there.
 */

/** A path of names joined by points. */
export function makePath(names: readonly string[], span: Span): Path {
  const parts = names.map((text): Name => ({ kind: "name", span, text, quoted: writeName(text) !== text }));
  return { kind: "path", span, parts };
}

/** A number with its unit as a recipe would write it; `null` for a plain number. Only finite numbers are written. */
export function makeQuantity(value: number, unit: string | null, span: Span): Value {
  const size = Math.abs(value);
  const amount = {
    span,
    value: size,
    written: writeNumber(size),
    unit: unit === null ? null : { span, text: unit },
  };
  const quantity: Value = { kind: "quantity", span, joined: "single", amounts: [amount] };
  return value < 0 ? { kind: "negation", span, operand: quantity } : quantity;
}
