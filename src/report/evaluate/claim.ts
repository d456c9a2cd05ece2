import type { ClaimModel } from "../../model/values.js";
import { fixed } from "../say/number.js";
import { type Asked, evaluate } from "./expression.js";
import type { Found } from "./found.js";
import { judgedScale, placeOnScale } from "./scales.js";

/** The outcome of one claim; `found` is the value that was claimed about. */
export interface Judgement {
  readonly outcome: "passed" | "failed" | "undecidable";
  readonly found: Found;
  /** Why it is undecidable, or how far it was missed. */
  readonly reason: string | null;
}

/** What is forgiven at a bound, in the unit that is judged: the rounding of sums, no more. */
export const HAIR = 1e-9;

/** Judges one claim. A value that cannot be had makes it undecidable, which is not a pass. */
export function judge(asked: Asked, claim: ClaimModel): Judgement {
  const found = evaluate(asked, claim.value);
  switch (claim.kind) {
    case "true":
      return decided(found, found.value === null ? null : found.value !== 0);
    case "within":
      return within(asked, claim, found);
    case "between": {
      const low = side(found, evaluate(asked, claim.low));
      const high = side(found, evaluate(asked, claim.high));
      if (low.by === null || high.by === null) return open(found, low.reason ?? high.reason);
      return decided(found, low.by >= -HAIR && high.by <= HAIR);
    }
    case "compare": {
      const { by, reason } = side(found, evaluate(asked, claim.target));
      if (by === null) return open(found, reason);
      return decided(found, compares(claim.sign, by));
    }
    default:
      return claim satisfies never;
  }
}

function compares(sign: "<" | "<=" | ">" | ">=", by: number): boolean {
  switch (sign) {
    case "<":
      return by < -HAIR;
    case "<=":
      return by <= HAIR;
    case ">":
      return by > HAIR;
    case ">=":
      return by >= -HAIR;
    default:
      return sign satisfies never;
  }
}

function within(asked: Asked, claim: Extract<ClaimModel, { kind: "within" }>, found: Found): Judgement {
  const target = evaluate(asked, claim.target);
  const { tolerance } = claim;
  if (claim.side !== null) {
    const other = evaluate(asked, claim.side.of);
    const { by, reason } = side(found, other);
    if (by === null || target.value === null) return open(found, reason ?? target.reason);
    const wanted = claim.side.word === "under" ? -target.value : target.value;
    const allowed = tolerance.kind === "share" ? tolerance.value * Math.abs(target.value) : tolerance.value;
    const missed = by - wanted;
    const words = `${fixed(Math.abs(by), 1)} stop ${by < 0 ? "under" : "over"}`;
    const judged = decided(found, Math.abs(missed) <= allowed + HAIR);
    return {
      ...judged,
      reason: judged.outcome === "failed" ? `it is ${words}` : null,
    };
  }
  if (tolerance.kind === "share") {
    if (found.value === null || target.value === null) return open(found, found.reason ?? target.reason);
    const missed = Math.abs(found.value - target.value);
    return decided(found, missed <= tolerance.value * Math.abs(target.value) + HAIR);
  }
  const { by, reason } = side(found, target);
  if (by === null) return open(found, reason);
  return decided(found, Math.abs(by) <= tolerance.value + HAIR);
}

/** By how much a value lies above another on the scale on which its type is judged. */
export function side(
  found: Found,
  target: Found,
): { readonly by: number | null; readonly reason: string | null } {
  const missing = [found, target].find((row) => row.value === null && !comparable(found, target));
  if (missing !== undefined) return { by: null, reason: missing.reason ?? "it is not known" };
  if (comparable(found, target)) {
    // Two readings compare without an ISO value: it counts for both.
    const [a, b] = [found.reading, target.reading];
    if (a === null || b === null) return { by: null, reason: "it is not known" };
    return {
      by: Math.log2(a.exposure / a.constant) - Math.log2(b.exposure / b.constant),
      reason: null,
    };
  }
  if (judgedScale(found.type) === "own") {
    return { by: (found.value ?? 0) - (target.value ?? 0), reason: null };
  }
  const a = placeOnScale(found);
  const b = placeOnScale(target);
  return a === null || b === null
    ? { by: null, reason: "one of the two has no place on the scale" }
    : { by: a - b, reason: null };
}

function comparable(a: Found, b: Found): boolean {
  return a.reading !== null && b.reading !== null && a.reading.exposure > 0 && b.reading.exposure > 0;
}

function decided(found: Found, holds: boolean | null): Judgement {
  if (holds === null) return open(found, found.reason);
  return { outcome: holds ? "passed" : "failed", found, reason: null };
}

function open(found: Found, reason: string | null): Judgement {
  return {
    outcome: "undecidable",
    found,
    reason: reason ?? "it cannot be worked out",
  };
}
