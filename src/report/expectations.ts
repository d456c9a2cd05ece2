import type { Expectation } from "../model/types.js";
import { type Judgement, judge } from "./evaluate/claim.js";
import type { Asked } from "./evaluate/expression.js";
import type { MeasuredInput } from "./evaluate/inputs.js";
import { reportValue, show, unitOf } from "./evaluate/show.js";
import { judgeSurely, reachOf } from "./evaluate/surely.js";
import { nearestChanges, SPARE } from "./nearest/nearest.js";
import { wholePerCents } from "./say/per-cents.js";
import type { ReportExpectation } from "./schema/report.js";

/** What became of every expectation of the recipe, in file order. `lineOf` tells the line of an offset, if known. */
export function reportExpectations(
  asked: Asked,
  inputs: () => readonly MeasuredInput[],
  lineOf: (expectation: Expectation) => number | null,
): readonly ReportExpectation[] {
  const { expectations } = asked.plan.recipe;
  return expectations.map((row) => reportExpectation(asked, row, inputs, lineOf(row)));
}

function reportExpectation(
  asked: Asked,
  expectation: Expectation,
  inputs: () => readonly MeasuredInput[],
  line: number | null,
): ReportExpectation {
  const judged = expectation.claims.map((claim) =>
    expectation.surely ? judgeSurely(asked, claim, inputs()) : judge(asked, claim),
  );
  const worst = worstOf(judged);
  const found = judged.map(foundWords);
  const first = worst ?? judged[0];
  return {
    text: expectation.written,
    outcome: worst?.outcome ?? "passed",
    found: found.some((text) => text !== null) ? found.map((text) => text ?? "not known").join("; ") : null,
    value: first === undefined ? null : reportValue(first.found),
    unit: first === undefined ? null : unitOf(first.found),
    shares: first === undefined ? [] : sharesOf(first),
    reason: worst?.reason ?? null,
    ...nearestOf(asked, expectation, judged, inputs),
    because: expectation.because,
    line,
  };
}

/** The nearest single changes by which an expectation that does not hold would; null where its value is not known. */
function nearestOf(
  asked: Asked,
  expectation: Expectation,
  judged: readonly Judgement[],
  inputs: () => readonly MeasuredInput[],
): Pick<ReportExpectation, "nearest" | "nearest_reason"> {
  const worst = worstOf(judged);
  const at = worst === null ? -1 : judged.indexOf(worst);
  const claim = expectation.claims[at];
  if (worst === null || claim === undefined || worst.found.value === null) {
    return { nearest: null, nearest_reason: null };
  }
  const spare = expectation.surely ? (reachOf(asked, claim, inputs()) ?? 0) * SPARE : 0;
  const { changes, reason } = nearestChanges(asked, expectation, at, spare);
  if (changes.length === 0) return { nearest: null, nearest_reason: reason };
  const rows = changes.map(({ path, value, unit, shown }) => ({ what: path, value, unit, shown }));
  return {
    nearest: { text: rows.map(({ what, shown }) => `${what} ${shown}`).join(", or "), changes: rows },
    nearest_reason: null,
  };
}

/** The judgement that decides: one that failed, else one that is undecidable; null where all passed. */
function worstOf(judged: readonly Judgement[]): Judgement | null {
  return (
    judged.find((row) => row.outcome === "failed") ??
    judged.find((row) => row.outcome === "undecidable") ??
    null
  );
}

/** What was found, in words; for `A is 1 stop under B` with how far A is from B. */
function foundWords({ found, apart }: Judgement): string | null {
  const words = show(found, true);
  return words === null || apart === undefined ? (words ?? apart ?? null) : `${words}, ${apart}`;
}

function sharesOf({ found }: Judgement): ReportExpectation["shares"] {
  const gives = found.shares.map((share) => share.direct + share.bounced);
  if (!gives.some((amount) => amount > 0)) return [];
  const parts = wholePerCents(gives);
  return found.shares.map(({ name }, index) => ({ name, text: `${parts[index] ?? 0} %` }));
}
