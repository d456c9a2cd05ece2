import type { ClaimModel, Expr } from "../../model/values.js";
import { m } from "../../units/make.js";
import { exprArg } from "../evaluate/arguments.js";
import type { Plan } from "../plan.js";
import { sayLength } from "../say/quantity.js";
import { byRatio, type Dial, nearSteps } from "./dial.js";

/** An ordinary change of a gap: by a third (common practice, no source). */
const ORDINARY = Math.log2(4 / 3);

/** The gap behind an edge, where one claim is about the width of a shadow's edge: how far the surface stands behind it. */
export function gapDials(plan: Plan, claims: readonly ClaimModel[]): readonly Dial[] {
  return claims.flatMap((claim, index): Dial[] => {
    const { value } = claim;
    const gap = value.kind === "result" && value.type === "length" ? exprArg(value, "gap") : null;
    if (value.kind !== "result" || gap === null || gap.kind !== "value" || !(gap.quantity.value > 0))
      return [];
    const at = (metres: number): readonly ClaimModel[] =>
      claims.map((row, i) => (i === index ? { ...row, value: withGap(value, metres) } : row));
    const turned = (metres: number) => ({ plan, claims: at(metres) });
    return [
      {
        path: `the gap of ${value.of ?? "its"}.${value.name}`,
        now: gap.quantity.value,
        low: 0.001,
        high: 20,
        unit: "m",
        ...byRatio(ORDINARY),
        near: nearSteps(0.01, 0.001, 0.0001),
        turned,
        rebuilt: turned,
        say: sayLength,
      },
    ];
  });
}

function withGap(value: Extract<Expr, { kind: "result" }>, metres: number): Expr {
  const gap: Expr = { kind: "value", type: "length", quantity: m(metres) };
  return { ...value, args: value.args.map((row) => (row.name === "gap" ? { ...row, value: gap } : row)) };
}
