import type { Expr } from "../../model/values.js";
import { shortPlan } from "../change/near-plan.js";
import type { Asked } from "./expression.js";
import { evaluate } from "./expression.js";
import type { MeasuredInput } from "./inputs.js";
import { judgedScale, placeOnScale } from "./scales.js";

/** How far a value may lie above and below what was worked out, on the scale on which its type is judged; 0 or more. */
export interface Interval {
  readonly above: number;
  readonly below: number;
}

/**
 * The interval of a quantity whose inputs are off independently, each by its tolerance as a 95 % limit: each input by
 * itself is moved to both sides, the greater rise and the greater fall are taken, and rises and falls add up as squares.
 * First order, but at an edge, where only one side changes, that side counts whole. Null where it cannot be had.
 *
 * Source: JCGM 100:2008 (GUM), 5.1.2, the law of propagation of uncertainty for uncorrelated inputs; with every
 * tolerance an expanded uncertainty of one coverage factor, the result has the same factor.
 *
 * @param amount - The quantity for a plan that has one input off, or none.
 */
export function intervalOf(
  asked: Asked,
  inputs: readonly MeasuredInput[],
  amount: (there: Asked) => number | null,
): Interval | null {
  // In short, as where an input is off: by the same paths, so that only what is off tells.
  const base = amount({ ...asked, plan: shortPlan(asked.plan) });
  if (base === null) return null;
  let above = 0;
  let below = 0;
  for (const { moved, back } of inputs) {
    const one = amount({ ...asked, plan: moved });
    const other = amount({ ...asked, plan: back });
    if (one === null || other === null) return null;
    const rise = Math.max(0, one - base, other - base);
    const fall = Math.max(0, base - one, base - other);
    above += rise * rise;
    below += fall * fall;
  }
  return { above: Math.sqrt(above), below: Math.sqrt(below) };
}

/** The interval of an expression. */
export function spreadOf(asked: Asked, expr: Expr, inputs: readonly MeasuredInput[]): Interval | null {
  return intervalOf(asked, inputs, (there) => placed(there, expr));
}

function placed(asked: Asked, expr: Expr): number | null {
  const found = evaluate(asked, expr);
  if (found.type === "reading" && found.reading !== null) {
    return found.reading.exposure > 0 ? Math.log2(found.reading.exposure / found.reading.constant) : null;
  }
  return judgedScale(found.type) === "own" ? found.value : placeOnScale(found);
}
