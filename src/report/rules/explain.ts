import { dimensionWords } from "../../units/dimension.js";
import { thresholdTable } from "../../vocabulary/thresholds.js";
import { findRule, rules } from "./index.js";
import { caution, type Rule } from "./rule.js";

/** The codes of all warnings, in the order of the table. */
export const warningCodes: readonly string[] = rules.map((rule) => rule.code);

/** How a threshold is set in a recipe, for a page. */
function thresholdLine(name: string): string {
  const row = thresholdTable.find((candidate) => candidate.name === name);
  if (row === undefined) return name;
  const unit = row.unit === "1" ? "" : ` ${row.unit}`;
  return `\`${name}: ${row.value}${unit}\` (${dimensionWords(row.unit)}). ${row.help}`;
}

function page(rule: Rule): string {
  const lines = [
    `**When.** ${rule.page.when}`,
    "",
    `**What it means.** ${rule.page.means}`,
    "",
    `**What to do.** ${rule.page.todo}`,
  ];
  if (rule.thresholds.length > 0) {
    lines.push("", "**Set it** in `thresholds { }`:", "");
    for (const name of rule.thresholds) lines.push(`- ${thresholdLine(name)}`);
  }
  lines.push("", `**Source.** ${rule.page.source}`);
  if (rule.safety) lines.push("", `**Caution.** ${caution}`);
  return lines.join("\n");
}

/** The page of a warning as Markdown: when it speaks, what it means, what to do, its thresholds and their source. */
export function explainWarning(code: string): string | null {
  const rule = findRule(code);
  return rule === null ? null : page(rule);
}

/** The pages of all warnings by their codes. */
export function warningPages(): ReadonlyMap<string, string> {
  return new Map(rules.map((rule) => [rule.code, page(rule)]));
}

/** The guide to all warnings as one Markdown text: a section for each, its code as the title. */
export function warningsGuide(): string {
  const head = [
    "# Warnings",
    "",
    "A warning says what a photographer would want to know before the lamps are up. It has a code, a weight, a sentence",
    "with the numbers, and a remedy whose numbers were worked out anew for the changed set-up.",
    "",
    "- **stop**: the picture cannot be made so, or somebody may be hurt.",
    "- **check**: likely to be shot again.",
    "- **note**: worth knowing.",
    "",
    "Every threshold can be set in the recipe's `thresholds { }`. Readings are of all light, bounced light too. Rules that",
    "compare with a wish speak only where `intent { }` has that wish. A warning that is known and accepted is silenced by",
    "its code, with a reason, in `silence { }`; those about safety are not. This page is made from the rules themselves.",
  ];
  const sections = rules.map((rule) => `## ${rule.code}\n\n${page(rule)}`);
  return `${head.join("\n")}\n\n${sections.join("\n\n")}\n`;
}
