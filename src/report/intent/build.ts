import type { Plan } from "../plan.js";
import { keyLight } from "../rules/key-light.js";
import { count, list } from "../say/number.js";
import type { ReportCriterion, ReportIntent } from "../schema/intent.js";
import type { ThresholdName } from "../settings.js";
import { faceWishes } from "./face-wishes.js";
import { naturalLight } from "./natural.js";
import { overcastCriteria } from "./overcast.js";
import { plainWishes } from "./plain-wishes.js";
import { sunCriteria } from "./sun.js";
import { sunPlace } from "./sun-place.js";
import { windowCriteria } from "./window.js";

/** The thresholds that wishes are judged by besides those of warnings. */
export const intentThresholds = [
  "sun_angular_size_wanted",
  "sun_shadow_wanted_least",
  "sun_shadow_wanted_most",
  "sun_elevation_wanted",
  "sun_elevation",
  "fan_wanted",
  "head_to_toe_wanted",
  "sun_warmth_wanted",
  "sun_warmth",
  "shade_cooler_least",
  "shade_cooler_most",
  "overcast_contrast_wanted",
  "overcast_planes_least",
  "overcast_planes_most",
  "window_size_wanted",
  "window_size",
  "window_fall_off_wanted",
  "window_fall_off",
  "window_elevation_wanted",
  "window_elevation",
  "hard_edges_wanted",
  "hard_edges",
  "soft_edges_wanted",
  "soft_edges",
] as const satisfies readonly ThresholdName[];

/** What the recipe wishes for and how it is met, point by point; null where it wishes for nothing. */
export function reportIntent(plan: Plan): ReportIntent | null {
  if (plan.recipe.intent === null) return null;
  const criteria = [...judged(plan), ...faceWishes(plan)];
  const passes_for = naturalLight(plan);
  return criteria.length === 0 && passes_for === null
    ? null
    : { passes_for, criteria, summary: summaryOf(criteria) };
}

function judged(plan: Plan): readonly ReportCriterion[] {
  const key = keyLight(plan);
  if (key === null) return [];
  const wish = plan.recipe.intent?.pass_for;
  const sun = wish === undefined ? null : sunPlace(wish);
  const natural =
    sun !== null
      ? sunCriteria(plan, key, sun)
      : wish?.kind === "overcast"
        ? overcastCriteria(plan, key)
        : wish?.kind === "window"
          ? windowCriteria(plan, key, wish)
          : [];
  return [...natural, ...plainWishes(plan, key).filter((row) => !isImplied(row, natural))];
}

/** Whether a point says again what one of the natural light says: of the same thing, within its band, as well met. */
function isImplied(row: ReportCriterion, natural: readonly ReportCriterion[]): boolean {
  return natural.some((other) => {
    const least = other.wanted_least ?? Number.NEGATIVE_INFINITY;
    const most = other.wanted_most ?? Number.POSITIVE_INFINITY;
    return (
      other.name === row.name &&
      other.verdict === row.verdict &&
      least >= (row.wanted_least ?? Number.NEGATIVE_INFINITY) &&
      most <= (row.wanted_most ?? Number.POSITIVE_INFINITY)
    );
  });
}

function summaryOf(criteria: readonly ReportCriterion[]): string {
  if (criteria.length === 0) return "without a light that is on and a subject nothing can be compared";
  const parts = (["met", "nearly", "missed", "not known"] as const).flatMap((verdict) => {
    const amount = criteria.filter((row) => row.verdict === verdict).length;
    return amount === 0 ? [] : [`${amount} ${verdict}`];
  });
  return `of ${count(criteria.length, "point")} ${list(parts)}`;
}
