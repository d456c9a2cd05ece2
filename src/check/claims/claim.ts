import { printNode } from "../../format/print-node.js";
import { comparable, toleranceModel, toleranceOf, wordsOf } from "../../model/result-types.js";
import type { ClaimModel, Expr } from "../../model/values.js";
import type { Claim, Expression } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { constant } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { noteNoFNumber } from "./absent.js";
import { expr } from "./expr.js";

/** One claim, typed. Null after a finding. */
export function checkClaim(ctx: Context, claim: Claim): ClaimModel | null {
  const value = expr(ctx, claim.value);
  switch (claim.kind) {
    case "bare": {
      if (value === null) return null;
      if (value.type === "truth") return { kind: "true", value };
      report(ctx, "claim.truth", claim.span, { written: printNode(claim.value) });
      return null;
    }
    case "is":
      return checkIs(ctx, claim, value);
    case "between": {
      const low = expr(ctx, claim.low);
      const high = expr(ctx, claim.high);
      if (value === null || low === null || high === null) return null;
      noteNoFNumber(ctx, claim.value, [value, low, high]);
      if (!sameKind(ctx, claim, value, low, claim.low) || !sameKind(ctx, claim, value, high, claim.high))
        return null;
      if (
        low.kind === "value" &&
        high.kind === "value" &&
        low.type === high.type &&
        low.quantity.value > high.quantity.value
      ) {
        const [a, b] = [printNode(claim.low), printNode(claim.high)];
        report(
          ctx,
          "claim.order",
          claim.span,
          { low: a, high: b },
          {
            fixes: [
              {
                title: `write \`between ${b} and ${a}\``,
                certain: false,
                edits: [
                  { place: { file: ctx.file, ...claim.low.span }, text: b },
                  { place: { file: ctx.file, ...claim.high.span }, text: a },
                ],
              },
            ],
          },
        );
        return null;
      }
      return { kind: "between", value, low, high };
    }
    case "compare": {
      const target = expr(ctx, claim.target);
      if (value === null || target === null || !sameKind(ctx, claim, value, target, claim.target))
        return null;
      noteNoFNumber(ctx, claim.value, [value, target]);
      return { kind: "compare", value, sign: claim.sign, target };
    }
    default:
      return claim satisfies never;
  }
}

function sameKind(ctx: Context, claim: Claim, value: Expr, target: Expr, node: Expression): boolean {
  if (comparable(value.type, target.type)) return true;
  const left = wordsOf(value.type);
  const right = wordsOf(target.type);
  const meant = value.type === "contrast" && target.type === "number" ? contrastsFor(node) : [];
  const fixes = meant.map((written) => replace(ctx, `write \`${written}\``, node.span, written));
  report(ctx, "claim.types", claim.span, { left, right }, { fixes });
  return false;
}

/** A plain number as the contrasts that it may stand for: a ratio, or stops. */
function contrastsFor(node: Expression): readonly string[] {
  if (node.kind !== "quantity" || node.amounts.length !== 1) return [];
  const number = printNode(node);
  return [`${number}:1`, `${number} stop`];
}

function checkIs(ctx: Context, claim: Extract<Claim, { kind: "is" }>, value: Expr | null): ClaimModel | null {
  const target = expr(ctx, claim.target);
  const of = claim.side === null ? null : expr(ctx, claim.side.of);
  if (value === null || target === null || claim.within === null) return null;
  if (claim.side !== null) {
    if (of === null) return null;
    if (target.type !== "stops") {
      report(ctx, "claim.types", claim.target.span, {
        left: `what stands before \`${claim.side.word}\``,
        right: wordsOf(target.type),
      });
      return null;
    }
    if (!sameKind(ctx, claim, value, of, claim.side.of)) return null;
  } else if (!sameKind(ctx, claim, value, target, claim.target)) return null;
  const type = claim.side !== null ? "stops" : value.type === "number" ? target.type : value.type;
  const tolerance = checkTolerance(ctx, claim.within, type, target);
  if (tolerance === null) return null;
  noteNoFNumber(ctx, claim.value, [value, claim.side === null ? target : of]);
  return {
    kind: "within",
    value,
    target,
    side: claim.side === null || of === null ? null : { word: claim.side.word, of },
    tolerance,
  };
}

function checkTolerance(
  ctx: Context,
  node: Expression,
  type: Expr["type"],
  target: Expr,
): { readonly value: number; readonly kind: "difference" | "share" } | null {
  const allowed = toleranceOf(type);
  const read = constant(ctx, node, { words: "a tolerance", example: allowed.example });
  if (read === null) return null;
  const model = toleranceModel(type, target, read);
  if (model !== null) return model;
  const wanted =
    dimensionWords(allowed.unit).replace(/^(a|an) (number of )?/, "") + (allowed.share ? " or per cent" : "");
  report(
    ctx,
    "claim.tolerance",
    node.span,
    {
      words: wordsOf(type),
      wanted,
      found: read.unit === "1" && read.written.endsWith("%") ? "per cent" : dimensionWords(read.unit),
      example: allowed.example,
    },
    { fixes: [replace(ctx, `within \`${allowed.example}\``, node.span, allowed.example)] },
  );
  return null;
}
