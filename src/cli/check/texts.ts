import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { defaultView } from "../../render/report-lines.js";
import type { Session } from "../session.js";
import type { Language, Light } from "../stages/load.js";
import { printOptions } from "../texts.js";
import type { Examined } from "./examine.js";
import { countsInWords, countsOf, kindsInWords, sumOf } from "./summary.js";

/** Findings, expectations that do not hold, warnings, and the summary of one file. */
export function fileAsText(
  session: Session,
  stage: Language,
  views: Light | null,
  examined: Examined,
  fresh: readonly Diagnostic[],
): string {
  const parts: string[] = [];
  if (fresh.length > 0) {
    parts.push(stage.printDiagnostics(fresh, printOptions(session, examined.sources, "out")));
  }
  if (examined.report !== null && views !== null) {
    const view = { ...defaultView, width: session.width, paint: session.paint };
    const open = examined.report.expectations.filter((item) => item.outcome !== "passed");
    const said = [
      ...open.map((item) => views.expectationLines(item, view)),
      ...examined.report.warnings.map((item) => views.warningLines(item, view)),
    ];
    parts.push(...said.map((lines) => lines.map((line) => `${line}\n`).join("")));
  }
  parts.push(`${examined.source.name}: ${countsInWords(countsOf(examined))}.\n`);
  return parts.join("\n");
}

/** The line at the end of a check of several files. */
export function bookAsText(all: readonly Examined[]): string {
  return `${kindsInWords(all)}: ${countsInWords(sumOf(all.map(countsOf)))}.\n`;
}
