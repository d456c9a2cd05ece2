import type { Expr } from "../../model/values.js";
import type { Plan } from "../plan.js";
import { type Found, nothing, value } from "./found.js";
import { evaluateReading } from "./reading.js";
import { evaluateResult } from "./results/index.js";
import { isPoint, placeOnScale, valueAtPlace } from "./scales.js";

/** What an evaluation knows besides the plan. */
export interface Asked {
  readonly plan: Plan;
  /** Warnings of severity stop or check; null while they are being worked out. */
  readonly alarms: number | null;
}

/** Works out an expression of the checked model. Never throws for what a recipe may say. */
export function evaluate(asked: Asked, expr: Expr): Found {
  switch (expr.kind) {
    case "value":
      return literal(expr);
    case "reading":
      return evaluateReading(asked.plan, expr);
    case "result":
      return evaluateResult(asked, expr, (inner) => evaluate(asked, inner));
    case "sum":
      return sum(asked, expr);
    case "product":
      return product(asked, expr);
    case "negation": {
      const inner = evaluate(asked, expr.operand);
      return inner.value === null
        ? { ...inner, type: expr.type }
        : { ...value(expr.type, -inner.value), error: inner.error, ...shareOf(inner) };
    }
    default:
      return expr satisfies never;
  }
}

function literal(expr: Extract<Expr, { kind: "value" }>): Found {
  const { quantity, type } = expr;
  // A contrast is written as a ratio (a plain number) or in stops.
  if (type === "contrast" && quantity.unit === "1") {
    return quantity.value > 0
      ? value(type, Math.log2(quantity.value))
      : nothing(type, "a ratio is more than nothing to one");
  }
  const found = value(type, quantity.value);
  return quantity.unit === "1" && quantity.written.endsWith("%") ? { ...found, share: true } : found;
}

/** That a value is a share of a whole, where another is. */
const shareOf = ({ share }: Found): Pick<Found, "share"> => (share === true ? { share } : {});

/** Sums: plain where all are of one type, by stops or mired where a point on a scale is moved or two are compared. */
function sum(asked: Asked, expr: Extract<Expr, { kind: "sum" }>): Found {
  const terms = expr.terms.map((term) => ({
    sign: term.sign === "-" ? -1 : 1,
    found: evaluate(asked, term.value),
  }));
  const missing = terms.find((term) => term.found.value === null);
  if (missing !== undefined) return nothing(expr.type, missing.found.reason ?? "a part of it is not known");
  const onScale = isPoint(expr.type) || terms.some((term) => isPoint(term.found.type));
  let total = 0;
  for (const { sign, found } of terms) {
    const part = onScale ? placeOnScale(found) : found.value;
    if (part === null) return nothing(expr.type, "a part of it is nothing, which has no place on the scale");
    total += sign * part;
  }
  const result = onScale ? valueAtPlace(expr.type, total) : total;
  if (result === null) return nothing(expr.type, "it leaves the scale");
  return {
    ...value(expr.type, result),
    error: terms.reduce((sum, term) => sum + term.found.error, 0),
    edge: expr.type === "length" && terms.every((term) => term.found.edge),
    ...(terms.every(({ found }) => found.share === true) ? { share: true as const } : {}),
  };
}

function product(asked: Asked, expr: Extract<Expr, { kind: "product" }>): Found {
  let total = 1;
  let edge = false;
  let error = 0;
  for (const factor of expr.factors) {
    const found = evaluate(asked, factor.value);
    if (found.value === null) return nothing(expr.type, found.reason ?? "a part of it is not known");
    if (factor.sign === "/" && found.value === 0) return nothing(expr.type, "it divides by nothing");
    total = factor.sign === "/" ? total / found.value : total * found.value;
    edge = edge || found.edge;
    error += found.error;
  }
  return { ...value(expr.type, total), error, edge: edge && expr.type === "length" };
}
