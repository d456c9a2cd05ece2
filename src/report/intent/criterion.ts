import type { Plan } from "../plan.js";
import type { ReportCriterion } from "../schema/intent.js";
import { type ThresholdName, threshold } from "../settings.js";

/** How a wish is met in one point. */
export type Verdict = ReportCriterion["verdict"];

/** Ends between which a value lies; null for none. */
export interface Band {
  readonly low: number | null;
  readonly high: number | null;
}

/** What a criterion is told: what is wanted, what was found, and what to do where the two differ. */
export interface CriterionGiven {
  readonly wish: ReportCriterion["wish"];
  readonly name: string;
  /** Null where it cannot be had; infinite where there is nothing to compare with. */
  readonly value: number | null;
  readonly unit: ReportCriterion["unit"];
  /** As it should be. */
  readonly wanted: Band;
  /** Nearly as it should be; the same as `wanted` where there is no such grade. */
  readonly still: Band;
  readonly say: (value: number) => string;
  /** Why there is no value. */
  readonly reason?: string;
  /** Worked out only where the wish is not met. */
  readonly remedy?: () => string | null;
}

const HAIR = 1e-9;

function lies(value: number, { low, high }: Band): boolean {
  return (low === null || value >= low - HAIR) && (high === null || value <= high + HAIR);
}

/** The verdict on a value. */
export function verdictOn(value: number | null, wanted: Band, still: Band): Verdict {
  if (value === null) return "not known";
  return lies(value, wanted) ? "met" : lies(value, still) ? "nearly" : "missed";
}

function bandWords({ low, high }: Band, say: (value: number) => string): string {
  if (low === null) return `at most ${say(high ?? 0)}`;
  return high === null ? `at least ${say(low)}` : `${say(low)} to ${say(high)}`;
}

/** One point of a wish, judged. */
export function criterion(given: CriterionGiven): ReportCriterion {
  const { wish, name, value, unit, wanted, still, say } = given;
  const verdict = verdictOn(value, wanted, still);
  const open = verdict === "nearly" || verdict === "missed";
  return {
    wish,
    name,
    wanted: bandWords(wanted, say),
    wanted_least: wanted.low,
    wanted_most: wanted.high,
    found: value === null ? null : Number.isFinite(value) ? say(value) : "without end",
    value: value !== null && Number.isFinite(value) ? value : null,
    unit,
    verdict,
    reason: value === null ? (given.reason ?? "it cannot be worked out") : null,
    remedy: open ? (given.remedy?.() ?? null) : null,
  };
}

/** A band around a middle. */
export function around(middle: number, by: number): Band {
  return { low: middle - by, high: middle + by };
}

/** A plan in which a threshold is another: what a rule says about a wish that is stricter than its warning. */
export function withThreshold(plan: Plan, name: ThresholdName, value: number): Plan {
  const { recipe } = plan;
  const others = recipe.thresholds.filter((row) => row.name !== name);
  const unit = recipe.thresholds.find((row) => row.name === name)?.unit ?? "1";
  return {
    ...plan,
    recipe: { ...recipe, thresholds: [...others, { name, value, unit, written: `${value}` }] },
  };
}

/** Up to a threshold. */
export function upTo(plan: Plan, name: ThresholdName): Band {
  return { low: null, high: threshold(plan.recipe, name) };
}

/** From a threshold on. */
export function from(plan: Plan, name: ThresholdName): Band {
  return { low: threshold(plan.recipe, name), high: null };
}

/** From one threshold to another. */
export function within(plan: Plan, low: ThresholdName, high: ThresholdName): Band {
  return { low: threshold(plan.recipe, low), high: threshold(plan.recipe, high) };
}
