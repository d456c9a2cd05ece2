import type { WarningCode } from "../../vocabulary/warnings.js";
import type { Plan } from "../plan.js";
import type { ReportWarning } from "../schema/report.js";
import type { ThresholdName } from "../settings.js";

/** How much a warning weighs: the picture or a person is at risk, it is worth a look, it is worth knowing. */
export type RuleSeverity = "stop" | "check" | "note";

/** What a rule has found. */
export interface RuleFinding {
  readonly severity: RuleSeverity;
  /** One sentence in the words of the trade, with the numbers. */
  readonly message: string;
  /** What to do, with numbers worked out anew for the changed set-up. */
  readonly remedy: string;
  /** The light, subject or piece it is about; null for the whole set-up. */
  readonly about: string | null;
}

/** The page of a rule: what `halfshade explain` says, and a section of the guide. */
export interface RulePage {
  /** When it speaks, thresholds included. */
  readonly when: string;
  /** What it means for the picture. */
  readonly means: string;
  /** What to do about it. */
  readonly todo: string;
  /** Where the threshold comes from. */
  readonly source: string;
}

/** One warning of the report. */
export interface Rule {
  /** Words joined by hyphens: `lamp-through-ceiling`. */
  readonly code: WarningCode;
  /** The thresholds that a recipe may set for it. */
  readonly thresholds: readonly ThresholdName[];
  /** True for warnings about people's safety; they carry a caution and cannot be silenced. */
  readonly safety: boolean;
  readonly page: RulePage;
  readonly check: (plan: Plan) => readonly RuleFinding[];
}

/** The words that end every warning about safety. */
export const caution =
  "This is a rough sum and no safety approval: the maker's manual and the rules of the place come first, and what needs a licensed person is a licensed person's work.";

/** A finding as the report carries it. */
export function asWarning(rule: Rule, finding: RuleFinding): ReportWarning {
  return {
    code: rule.code,
    severity: finding.severity,
    message: finding.message,
    remedy: finding.remedy,
    caution: rule.safety ? caution : null,
    about: finding.about,
  };
}
