import type { Expr } from "../../model/values.js";
import type { Asked } from "./expression.js";
import { evaluate } from "./expression.js";
import type { MeasuredInput } from "./inputs.js";
import { judgedScale, placeOnScale } from "./scales.js";

/**
 * How far a value may be off to either side because its inputs are: the changes that every input makes by itself,
 * added up without regard to sign (first order, the worst case). On the scale on which the type is judged. Null where
 * the value, or what it becomes, cannot be had.
 */
export function spreadOf(asked: Asked, expr: Expr, inputs: readonly MeasuredInput[]): number | null {
  const base = placed(asked, expr);
  if (base === null) return null;
  let total = 0;
  for (const input of inputs) {
    const moved = placed({ ...asked, plan: input.moved }, expr);
    if (moved === null) return null;
    total += Math.abs(moved - base);
  }
  return total;
}

function placed(asked: Asked, expr: Expr): number | null {
  const found = evaluate(asked, expr);
  if (found.type === "reading" && found.reading !== null) {
    return found.reading.exposure > 0 ? Math.log2(found.reading.exposure / found.reading.constant) : null;
  }
  return judgedScale(found.type) === "own" ? found.value : placeOnScale(found);
}
