import { printNode } from "../format/print-node.js";
import type { Expectation } from "../model/types.js";
import type { ClaimModel } from "../model/values.js";
import type { Expect } from "../syntax/ast.js";
import { checkClaim } from "./claims/claim.js";
import { type Context, here } from "./context.js";

/** One `expect`. Null when one of its claims could not be understood. */
export function checkExpectation(ctx: Context, statement: Expect): Expectation | null {
  const claims: ClaimModel[] = [];
  let complete = statement.claims.length > 0;
  for (const claim of statement.claims) {
    const checked = checkClaim(ctx, claim);
    if (checked === null) complete = false;
    else claims.push(checked);
  }
  if (!complete) return null;
  return {
    written: printNode(statement),
    surely: statement.surely,
    claims,
    because: statement.because?.value ?? null,
    origin: here(ctx, statement.span),
  };
}
