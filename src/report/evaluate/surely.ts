import type { ClaimModel, Expr } from "../../model/values.js";
import { twoFigures } from "../say/number.js";
import { sayEdge, sayLength } from "../say/quantity.js";
import { readingAs } from "./as-reading.js";
import { HAIR, type Judgement, judge, side } from "./claim.js";
import { type Asked, evaluate } from "./expression.js";
import type { Found } from "./found.js";
import type { MeasuredInput } from "./inputs.js";
import { judgedScale, placeOnScale } from "./scales.js";
import { type Interval, intervalOf, spreadOf } from "./spread.js";

/**
 * Judges a claim that is to hold over the whole interval of what it is about, with every measured input off by its
 * tolerance. Where it holds only as computed it is undecidable.
 */
export function judgeSurely(asked: Asked, claim: ClaimModel, inputs: readonly MeasuredInput[]): Judgement {
  const plain = judge(asked, claim);
  if (plain.outcome !== "passed") return plain;
  const room = roomOf(asked, claim);
  if (room === null) return plain;
  const reach = reachOf(asked, claim, inputs);
  if (reach === null) {
    return {
      ...plain,
      outcome: "undecidable",
      reason: "how far its inputs move it cannot be worked out",
    };
  }
  if (reach <= room + HAIR) return plain;
  const { edge } = evaluate(asked, claim.value);
  const say = (amount: number): string => onScale(claim, amount, edge);
  return {
    ...plain,
    outcome: "undecidable",
    reason: `it holds as computed, but measured inputs may move it by ${say(reach)} and only ${say(Math.max(0, room))} is left`,
  };
}

/** A difference on the scale on which a claim is judged, with its unit; lengths as the report says them. */
function onScale(claim: ClaimModel, amount: number, edge: boolean): string {
  const { type } = claim.value;
  const judged = claim.kind === "within" && claim.side !== null ? "stops" : judgedScale(type);
  if (judged === "own" && type === "length") return edge ? sayEdge(amount) : sayLength(amount);
  const units = { angle: "deg", energy: "Ws", time: "s", number: "", truth: "" } as const;
  const unit =
    judged === "stops" ? "stop" : judged === "mired" ? "mired" : (units[type as keyof typeof units] ?? "");
  return `${twoFigures(amount)} ${unit}`.trimEnd();
}

/** How far the value may still go before the claim fails, on its scale; null for a truth. */
function roomOf(asked: Asked, claim: ClaimModel): number | null {
  const by = (target: Expr): number => {
    const found = side(asked, evaluate(asked, claim.value), evaluate(asked, target));
    return found.by ?? 0;
  };
  switch (claim.kind) {
    case "true":
      return null;
    case "compare":
      return Math.abs(by(claim.target));
    case "between":
      return Math.min(Math.abs(by(claim.low)), Math.abs(by(claim.high)));
    case "within": {
      const target = evaluate(asked, claim.target).value ?? 0;
      const share = claim.tolerance.kind === "share" ? claim.tolerance.value * Math.abs(target) : null;
      if (claim.side !== null) {
        const wanted = claim.side.word === "under" ? -target : target;
        return (share ?? claim.tolerance.value) - Math.abs(by(claim.side.of) - wanted);
      }
      if (share === null) return claim.tolerance.value - Math.abs(by(claim.target));
      return roomInShare(
        readingAs(asked.plan, evaluate(asked, claim.value), evaluate(asked, claim.target).type),
        target,
        share,
      );
    }
    default:
      return claim satisfies never;
  }
}

/** How far a value may still go before it leaves a share of a target, on the scale of its type. */
function roomInShare(found: Found, target: number, share: number): number {
  const at = (value: number): number | null =>
    judgedScale(found.type) === "own" ? value : placeOnScale({ ...found, value });
  const here = found.value === null ? null : at(found.value);
  if (here === null) return 0;
  // A bound that has no place on the scale, such as no light at all, is never reached.
  const rooms = [at(target - share), at(target + share)].flatMap((bound) =>
    bound === null ? [] : [Math.abs(here - bound)],
  );
  return rooms.length === 0 ? 0 : Math.min(...rooms);
}

/**
 * How far the inputs move the difference that is judged, to the side that moves more: the value and what it is held
 * against together, so that an input that moves both alike counts for nothing.
 */
export function reachOf(asked: Asked, claim: ClaimModel, inputs: readonly MeasuredInput[]): number | null {
  const interval = intervalOfClaim(asked, claim, inputs);
  return interval === null ? null : Math.max(interval.above, interval.below);
}

function intervalOfClaim(asked: Asked, claim: ClaimModel, inputs: readonly MeasuredInput[]): Interval | null {
  if (claim.kind === "true") return { above: 0, below: 0 };
  if (claim.kind === "between") return spreadOf(asked, claim.value, inputs);
  const target = claim.kind === "within" ? (claim.side?.of ?? claim.target) : claim.target;
  if (target.kind === "value") return spreadOf(asked, claim.value, inputs);
  return intervalOf(
    asked,
    inputs,
    (there) => side(there, evaluate(there, claim.value), evaluate(there, target)).by,
  );
}
