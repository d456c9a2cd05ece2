import type { Plan } from "../plan.js";
import type { ReportSilence, ReportWarning } from "../schema/report.js";
import { rules } from "./index.js";
import { asWarning, type Rule } from "./rule.js";

const order = { stop: 0, check: 1, note: 2 } as const;

/** What the rules have found, and which of it the recipe silences. */
export interface Warned {
  /** What stops the picture first, then checks, then notes, each in the order of the table. */
  readonly warnings: readonly ReportWarning[];
  /** A row for each silenced warning in file order, also for one that does not speak. */
  readonly silenced: readonly ReportSilence[];
}

/** The warnings of a plan. Those about safety cannot be silenced. */
export function runRules(plan: Plan): Warned {
  const wanted = plan.recipe.silence.filter((row) => rules.some((rule) => isSilencedBy(rule, row.code)));
  const isSilent = (code: string): boolean => wanted.some((row) => row.code === code);
  const found: ReportWarning[] = [];
  for (const rule of rules) for (const finding of rule.check(plan)) found.push(asWarning(rule, finding));
  const loud = found.filter((warning) => !isSilent(warning.code));
  return {
    warnings: [...loud].sort((a, b) => order[a.severity] - order[b.severity]),
    silenced: wanted.map(({ code, because }) => ({
      code,
      because,
      warnings: found.filter((warning) => warning.code === code),
    })),
  };
}

function isSilencedBy(rule: Rule, code: string): boolean {
  return rule.code === code && !rule.safety;
}
