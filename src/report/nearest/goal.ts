import type { ClaimModel } from "../../model/values.js";
import { readingAs } from "../evaluate/as-reading.js";
import { side } from "../evaluate/claim.js";
import { type Asked, evaluate } from "../evaluate/expression.js";

/** What a search brings to 0: how far a claim's value lies from where it should; null where it cannot be said. */
export type Goal = (asked: Asked, claim: ClaimModel) => number | null;

/** How far inside its bounds a value is brought, as a share of the width between them. */
const INSET = 0.1;
/** The same where there is one bound only, on the scale on which it is judged. */
const HAIR = 1e-6;

/**
 * The goals of a claim that fails, the better first: of `is ... within ...` what is asked for, then the nearer end of
 * what is still allowed; of a bound the bound itself, with `spare` left for inputs that may be off. None for a truth.
 *
 * @param spare - What must be left to a bound, on the scale on which the claim is judged.
 */
export function goalsOf(asked: Asked, claim: ClaimModel, spare: number): readonly Goal[] {
  switch (claim.kind) {
    case "true":
      return [];
    case "within": {
      const now = fromTarget(asked, claim);
      if (now === null) return [];
      const allowed = allowedOf(asked, claim) - spare;
      const end = (now > 0 ? 1 : -1) * (1 - INSET) * allowed;
      const exact: Goal = (there, own) => (own.kind === "within" ? fromTarget(there, own) : null);
      return allowed > 0 ? [exact, shifted(exact, end)] : [exact];
    }
    case "between": {
      const to = (word: "low" | "high"): Goal => {
        return (there, own) =>
          own.kind === "between" ? by(there, own, word === "low" ? own.low : own.high) : null;
      };
      const low = to("low")(asked, claim);
      const high = to("high")(asked, claim);
      if (low === null || high === null) return [];
      const inset = Math.min((low - high) / 2, Math.max(INSET * (low - high), spare));
      return low < high || Math.abs(low) < Math.abs(high)
        ? [shifted(to("low"), inset)]
        : [shifted(to("high"), -inset)];
    }
    case "compare": {
      const up = claim.sign === ">" || claim.sign === ">=";
      const bound: Goal = (there, own) => (own.kind === "compare" ? by(there, own, own.target) : null);
      // A bound that may be reached is aimed at itself: a share of a whole ends there.
      const beyond = claim.sign.endsWith("=") ? 0 : HAIR;
      return [shifted(bound, (up ? 1 : -1) * (beyond + spare))];
    }
    default:
      return claim satisfies never;
  }
}

const shifted =
  (goal: Goal, amount: number): Goal =>
  (asked, claim) => {
    const off = goal(asked, claim);
    return off === null ? null : off - amount;
  };

function by(asked: Asked, claim: ClaimModel, target: Parameters<typeof evaluate>[1]): number | null {
  return side(asked, evaluate(asked, claim.value), evaluate(asked, target)).by;
}

/** By how much a value is more than what `is ... within ...` asks for. */
function fromTarget(asked: Asked, claim: Extract<ClaimModel, { kind: "within" }>): number | null {
  if (claim.side === null) {
    if (claim.tolerance.kind === "difference") return by(asked, claim, claim.target);
    const target = evaluate(asked, claim.target);
    const found = readingAs(asked.plan, evaluate(asked, claim.value), target.type);
    return found.value === null || target.value === null ? null : found.value - target.value;
  }
  const apart = by(asked, claim, claim.side.of);
  const amount = evaluate(asked, claim.target).value;
  if (apart === null || amount === null) return null;
  return apart - (claim.side.word === "under" ? -amount : amount);
}

function allowedOf(asked: Asked, claim: Extract<ClaimModel, { kind: "within" }>): number {
  const { kind, value } = claim.tolerance;
  return kind === "difference" ? value : value * Math.abs(evaluate(asked, claim.target).value ?? 0);
}
