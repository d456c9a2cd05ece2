import type { ClaimModel } from "../../model/values.js";
import { count, fixed, twoFigures } from "../say/number.js";
import { readingAs } from "./as-reading.js";
import { type Asked, evaluate } from "./expression.js";
import type { Found } from "./found.js";
import { judgedScale, placeOnScale, valueAtPlace } from "./scales.js";

/** The outcome of one claim; `found` is the value that was claimed about. */
export interface Judgement {
  readonly outcome: "passed" | "failed" | "undecidable";
  readonly found: Found;
  /** Why it is undecidable. */
  readonly reason: string | null;
  /** What is said beside the value found: for `A is 1 stop under B` how far A really is. */
  readonly apart?: string;
}

/** What is forgiven at a bound, in the unit that is judged: the rounding of sums, no more. */
export const HAIR = 1e-9;

/**
 * Judges one claim. A value that cannot be had makes it undecidable, which is not a pass. Of `stops(a, b)` it is said
 * where the claim would hold with the two the other way round, since signs are easily mistaken.
 */
export function judge(asked: Asked, claim: ClaimModel): Judgement {
  const judged = judgeAsWritten(asked, claim);
  const turned = judged.outcome === "failed" ? otherWayRound(claim) : null;
  if (turned === null || judgeAsWritten(asked, turned).outcome !== "passed") return judged;
  return { ...judged, apart: "the other way round it would hold: + means more light on the first" };
}

/** The same claim of `stops(b, a)`; null for any other. */
function otherWayRound(claim: ClaimModel): ClaimModel | null {
  const { value } = claim;
  if (value.kind !== "result" || value.name !== "stops") return null;
  const [a, b] = value.args;
  if (a === undefined || b === undefined) return null;
  const args = [
    { name: a.name, value: b.value },
    { name: b.name, value: a.value },
  ];
  return { ...claim, value: { ...value, args } };
}

function judgeAsWritten(asked: Asked, claim: ClaimModel): Judgement {
  const found = evaluate(asked, claim.value);
  switch (claim.kind) {
    case "true":
      return truth(asked, found);
    case "within":
      return within(asked, claim, found);
    case "between": {
      const low = side(asked, found, evaluate(asked, claim.low));
      const high = side(asked, found, evaluate(asked, claim.high));
      if (low.by === null || high.by === null) return open(found, low.reason ?? high.reason);
      const [margin, error] = low.by < -high.by ? [low.by, low.error] : [-high.by, high.error];
      return decided(found, margin, error);
    }
    case "compare": {
      const { by, reason, error } = side(asked, found, evaluate(asked, claim.target));
      if (by === null) return open(found, reason);
      const { sign } = claim;
      return decided(found, sign === "<" || sign === "<=" ? -by : by, error, sign === "<" || sign === ">");
    }
    default:
      return claim satisfies never;
  }
}

/** A truth; today the only one is that no warning of severity stop or check speaks. */
function truth(asked: Asked, found: Found): Judgement {
  const judged =
    found.value === null ? open(found, found.reason) : decided(found, found.value === 0 ? -1 : 0, 0);
  if (judged.outcome !== "failed" || !asked.alarms) return judged;
  return { ...judged, reason: `${count(asked.alarms, "warning")} of severity stop or check` };
}

function within(asked: Asked, claim: Extract<ClaimModel, { kind: "within" }>, found: Found): Judgement {
  const target = evaluate(asked, claim.target);
  const { tolerance } = claim;
  if (claim.side !== null) {
    const other = evaluate(asked, claim.side.of);
    const { by, reason, error } = side(asked, found, other);
    if (by === null || target.value === null) return open(found, reason ?? target.reason);
    const wanted = claim.side.word === "under" ? -target.value : target.value;
    const allowed = tolerance.kind === "share" ? tolerance.value * Math.abs(target.value) : tolerance.value;
    const missed = by - wanted;
    const apart = `${fixed(Math.abs(by), 2)} stop ${by < 0 ? "under" : "over"}`;
    return { ...decided(found, allowed - Math.abs(missed), error + target.error), apart };
  }
  if (tolerance.kind === "share") {
    const like = readingAs(asked.plan, found, target.type);
    if (like.value === null || target.value === null) return open(found, like.reason ?? target.reason);
    const missed = Math.abs(like.value - target.value);
    return decided(
      found,
      tolerance.value * Math.abs(target.value) - missed,
      inOwnUnit(like) + inOwnUnit(target),
    );
  }
  const { by, reason, error } = side(asked, found, target);
  if (by === null) return open(found, reason);
  return decided(found, tolerance.value - Math.abs(by), error);
}

/** How far bounced light leaves a value open, in its own unit. */
function inOwnUnit(found: Found): number {
  const place = found.error > 0 ? placeOnScale(found) : null;
  const above = place === null ? null : valueAtPlace(found.type, place + found.error);
  return above === null || found.value === null ? 0 : Math.abs(above - found.value);
}

/** How far one value lies from another, and how far bounced light leaves that open. */
interface Apart {
  readonly by: number | null;
  readonly reason: string | null;
  readonly error: number;
}

/** How far any light lies above no light, stops. */
const BEYOND = 1e6;

/** By how much a value lies above another on the scale on which their type is judged. */
export function side(asked: Asked, found: Found, target: Found): Apart {
  return { ...apartOf(asked, found, target), error: found.error + target.error };
}

function apartOf(asked: Asked, found: Found, target: Found): Omit<Apart, "error"> {
  if (found.type === "reading" && target.type === "reading") return readingsApart(found, target);
  // A reading meets an f-number, an exposure or an exposure value as one of its kind.
  const a = readingAs(asked.plan, found, target.type);
  const b = readingAs(asked.plan, target, found.type);
  if (a.value === null || b.value === null)
    return { by: null, reason: a.reason ?? b.reason ?? "it is not known" };
  if (judgedScale(a.type) === "own") return { by: a.value - b.value, reason: null };
  const [low, high] = [placeOnScale(b), placeOnScale(a)];
  // No light at all lies below any light, farther than any tolerance.
  if (b.value === 0 && low === null && high !== null) return { by: BEYOND, reason: null };
  return low === null || high === null
    ? { by: null, reason: "one of the two has no place on the scale" }
    : { by: high - low, reason: null };
}

/** Two readings compare without an ISO value: it counts for both. */
function readingsApart(
  { reading: a, reason }: Found,
  { reading: b, reason: other }: Found,
): Omit<Apart, "error"> {
  if (a === null || b === null || !(a.exposure > 0) || !(b.exposure > 0)) {
    return {
      by: null,
      reason: (a !== null && a.exposure > 0 ? other : reason) ?? other ?? "it is not known",
    };
  }
  return { by: Math.log2(a.exposure / a.constant) - Math.log2(b.exposure / b.constant), reason: null };
}

/**
 * Decides by how far a value lies on the good side of its limit, on the scale on which it is judged. Where what is
 * known of bounced light leaves open on which side it lies, nothing is decided.
 */
function decided(found: Found, margin: number, error: number, strict = false): Judgement {
  if (error > 0 && Math.abs(margin) < error) {
    return open(
      found,
      `bounced light is known to ${twoFigures(error)} stop here, which is more than lies between it and the limit`,
    );
  }
  const holds = strict ? margin > HAIR : margin >= -HAIR;
  return { outcome: holds ? "passed" : "failed", found, reason: null };
}

function open(found: Found, reason: string | null): Judgement {
  return {
    outcome: "undecidable",
    found,
    reason: reason ?? "it cannot be worked out",
  };
}
