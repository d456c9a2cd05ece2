import type { Report } from "../report/schema/report.js";
import { CLEAN, FOUND } from "./exit.js";
import { type Session, wholeNumber } from "./session.js";

/** What `--max-warnings` says; null without it; a sentence where it is no number. */
export const warningLimit = (session: Session): number | null | { readonly problem: string } =>
  wholeNumber(session.options, "max-warnings", 0, 100_000);

/** Warnings that `--max-warnings` counts: not the notes. */
export const warningCount = (report: Pick<Report, "warnings">): number =>
  report.warnings.filter((warning) => warning.severity !== "note").length;

/** The exit code that a report asks for. */
export function exitOf(report: Pick<Report, "expectations" | "warnings">, limit: number | null): number {
  if (report.expectations.some((item) => item.outcome !== "passed")) return FOUND;
  return limit !== null && warningCount(report) > limit ? FOUND : CLEAN;
}
