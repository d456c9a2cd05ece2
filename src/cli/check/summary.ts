import { many } from "../counts.js";
import { warningCount } from "../verdict.js";
import { type Examined, errorsIn, notHeld, ownWarnings } from "./examine.js";

/** What was counted in one file or in several. */
export interface Counts {
  readonly errors: number;
  readonly notes: number;
  readonly passed: number;
  readonly expectations: number;
  /**
   * What `--max-warnings` counts: the warnings of the recipe, those that only a variant has, and the holds that are not
   * held. Null where no light was worked out.
   */
  readonly warnings: number | null;
  /** Those of the warnings that are a hold which is not held. */
  readonly not_held: number;
}

/** What there is to count in a file. */
export function countsOf(examined: Examined): Counts {
  const errors = errorsIn(examined);
  const verdicts = [...(examined.report === null ? [] : [examined.report]), ...examined.variants];
  const asked = verdicts.flatMap((verdict) => verdict.expectations);
  const missed = examined.variants.flatMap(notHeld).length;
  const own = examined.variants.map((variant) => warningCount({ warnings: ownWarnings(examined, variant) }));
  const warned = own.reduce((sum, count) => sum + count, warningCount(examined.report ?? { warnings: [] }));
  return {
    errors,
    notes: examined.findings.length - errors,
    passed: asked.filter((item) => item.outcome === "passed").length,
    expectations: asked.length,
    warnings: examined.report === null ? null : warned + missed,
    not_held: missed,
  };
}

/** Counts of several files together. */
export function sumOf(all: readonly Counts[]): Counts {
  const sum = (of: (counts: Counts) => number): number => all.reduce((total, one) => total + of(one), 0);
  return {
    errors: sum((one) => one.errors),
    notes: sum((one) => one.notes),
    passed: sum((one) => one.passed),
    expectations: sum((one) => one.expectations),
    warnings: all.every((one) => one.warnings === null) ? null : sum((one) => one.warnings ?? 0),
    not_held: sum((one) => one.not_held),
  };
}

/** Counts in words: `no errors, 2 of 2 expectations passed, 0 warnings`. */
export function countsInWords(counts: Counts): string {
  const parts = [counts.errors === 0 ? "no errors" : many(counts.errors, "error")];
  if (counts.notes > 0) parts.push(many(counts.notes, "note"));
  if (counts.expectations > 0)
    parts.push(`${counts.passed} of ${many(counts.expectations, "expectation")} passed`);
  if (counts.warnings !== null) parts.push(many(counts.warnings, "warning") + ofHolds(counts));
  return parts.join(", ");
}

/** How many of the warnings are holds that are not held; nothing for none. */
function ofHolds({ warnings, not_held: missed }: Counts): string {
  if (missed === 0) return "";
  const which = missed === 1 ? "a hold that is not held" : "holds that are not held";
  return missed === warnings ? ` (${which})` : ` (${missed} of them ${which})`;
}

/** How many files of which kind: `12 files (10 recipes, 2 kits)`. */
export function kindsInWords(all: readonly Examined[]): string {
  const kinds = (["recipe", "kit", "session"] as const)
    .map((kind) => ({ kind, count: all.filter((one) => one.kind === kind).length }))
    .filter(({ count }) => count > 0);
  const unknown = all.filter((one) => one.kind === null).length;
  const words = kinds.map(({ kind, count }) => many(count, kind));
  if (unknown > 0) words.push(`${unknown} without a title`);
  return `${many(all.length, "file")} (${words.join(", ")})`;
}
