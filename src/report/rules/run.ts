import type { Plan } from "../plan.js";
import type { ReportWarning } from "../schema/report.js";
import { rules } from "./index.js";
import { asWarning } from "./rule.js";

const order = { stop: 0, check: 1, note: 2 } as const;

/** The warnings of a plan: what stops the picture first, then checks, then notes, each in the order of the table. */
export function runRules(plan: Plan): readonly ReportWarning[] {
  const found = rules.flatMap((rule) => rule.check(plan).map((finding) => asWarning(rule, finding)));
  return [...found].sort((a, b) => order[a.severity] - order[b.severity]);
}
