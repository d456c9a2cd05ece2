import type { ClaimModel, Expr } from "../../model/values.js";
import { nearestChanges } from "../nearest/nearest.js";
import type { Plan } from "../plan.js";

/** The nearest single changes by which a claim would hold, in words; null where none is within reach. */
export function nearestChange(plan: Plan, claim: ClaimModel): string | null {
  const expectation = { written: "", surely: false, claims: [claim], because: null };
  const { changes } = nearestChanges({ plan, alarms: 0 }, expectation, 0, 0);
  if (changes.length === 0) return null;
  return `Nearest single change: ${changes.map(({ path, shown }) => `${path} ${shown}`).join(", or ")}.`;
}

/** A light's elevation at the first face, as a claim asks for it. */
export const elevationOf = (light: string): Extract<Expr, { kind: "result" }> => ({
  kind: "result",
  type: "angle",
  name: "elevation",
  of: light,
  args: [],
});
