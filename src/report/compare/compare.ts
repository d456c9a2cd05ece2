import type { Difference } from "../../model/differences.js";
import { fixed } from "../say/number.js";
import type { Report, ReportWarning } from "../schema/report.js";
import { type Measured, measuredIn, type Scale } from "./measured.js";

/** One value in two set-ups. */
export interface ComparedValue {
  readonly what: string;
  /** What the change is given in: stops, degrees, or per cent of the first. */
  readonly scale: Scale;
  readonly before: string | null;
  readonly after: string | null;
  /** + where the second has more; null where one of the two has no value. */
  readonly change: number | null;
  /** The change in words: `+1.3 stop`, `-40 %`. */
  readonly shown: string | null;
  /** Whether it is more than the remaining error of what was worked out, and more than anyone would see. */
  readonly matters: boolean;
}

/** What two set-ups have different, and what that does to the light. */
export interface Comparison {
  readonly before: string;
  readonly after: string;
  /** What is written differently. */
  readonly changes: readonly Difference[];
  /** Every value that both or either of them has. */
  readonly light: readonly ComparedValue[];
  /** Warnings that only one of them has. */
  readonly gone: readonly ReportWarning[];
  readonly appeared: readonly ReportWarning[];
  /** What was turned or moved in either so that a reading is held. */
  readonly held: readonly ComparedHold[];
  /** Expectations of either that do not hold, or of which it cannot be told, with what was found. */
  readonly failed: readonly ComparedExpectation[];
}

/** One expectation of one of the two that does not hold. */
export interface ComparedExpectation {
  readonly in: string;
  readonly text: string;
  readonly outcome: "failed" | "undecidable";
  /** What was found instead; null where there is no value. */
  readonly found: string | null;
  /** Why it cannot be told; null where it can. */
  readonly reason: string | null;
}

/** One hold of one of the two. */
export interface ComparedHold {
  readonly in: string;
  readonly text: string;
  readonly by: string;
  readonly setting: string | null;
  readonly reason: string | null;
}

/** One side of a comparison. */
export interface Side {
  readonly label: string;
  readonly report: Report;
  readonly held: readonly Omit<ComparedHold, "in">[];
}

/** Changes up to these are noise: a twentieth of a stop, half a degree, one per cent (common practice, no source). */
const noise: Readonly<Record<Scale, number>> = { stops: 0.05, degrees: 0.5, share: 0.01 };

/** Holds two set-ups against each other; what only one of them has is null in the other. */
export function compare(a: Side, b: Side, changes: readonly Difference[]): Comparison {
  const before = measuredIn(a.report);
  const after = measuredIn(b.report);
  const later = new Map(after.map((row) => [row.what, row]));
  const earlier = new Set(before.map((row) => row.what));
  const light = [
    ...before.map((row) => compared(row, later.get(row.what) ?? null)),
    ...after.filter((row) => !earlier.has(row.what)).map((row) => compared(null, row)),
  ].filter((row) => row !== null);
  const holds = [a, b].flatMap((side) => side.held.map((row) => ({ in: side.label, ...row })));
  return {
    before: a.label,
    after: b.label,
    changes,
    light,
    gone: onlyIn(a.report, b.report),
    appeared: onlyIn(b.report, a.report),
    held: holds,
    failed: [a, b].flatMap(failedIn),
  };
}

function failedIn({ label, report }: Side): readonly ComparedExpectation[] {
  return report.expectations.flatMap(({ text, outcome, found, reason }) =>
    outcome === "passed" ? [] : [{ in: label, text, outcome, found, reason }],
  );
}

function compared(before: Measured | null, after: Measured | null): ComparedValue | null {
  const row = before ?? after;
  if (row === null || ((before?.value ?? null) === null && (after?.value ?? null) === null)) return null;
  const change = changeOf(before?.value ?? null, after?.value ?? null, row.scale);
  return {
    what: row.what,
    scale: row.scale,
    before: before?.shown ?? null,
    after: after?.shown ?? null,
    change,
    shown: change === null ? null : sayChange(change, row.scale),
    matters: change === null || Math.abs(change) > noise[row.scale],
  };
}

function changeOf(before: number | null, after: number | null, scale: Scale): number | null {
  if (before === null || after === null) return null;
  if (scale !== "share") return after - before;
  return before === 0 ? null : after / before - 1;
}

function sayChange(change: number, scale: Scale): string {
  const sign = change > 0 ? "+" : "";
  switch (scale) {
    case "stops":
      return `${sign}${fixed(change, Math.abs(change) < 0.095 ? 2 : 1)} stop`;
    case "degrees":
      return `${sign}${fixed(change, 1)} deg`;
    case "share":
      return `${sign}${fixed(change * 100, Math.abs(change) < 0.0995 ? 1 : 0)} %`;
    default:
      return scale satisfies never;
  }
}

const keyOf = (warning: ReportWarning): string => `${warning.code} ${warning.about ?? ""}`;

/** Warnings of the first report that the second does not have, by their code and what they are about. */
function onlyIn(report: Report, other: Report): readonly ReportWarning[] {
  const known = new Set(other.warnings.map(keyOf));
  return report.warnings.filter((row) => !known.has(keyOf(row)));
}
