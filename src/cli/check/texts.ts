import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { visibleLine } from "../../diagnostics/print-visible.js";
import { defaultView, indented, type ViewOptions } from "../../render/report-lines.js";
import type { Verdict } from "../../report/verdict.js";
import type { Session } from "../session.js";
import type { Language, Light } from "../stages/load.js";
import { printOptions } from "../texts.js";
import { type Examined, notHeld, ownWarnings } from "./examine.js";
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
    parts.push(...verdictLines(views, examined.report, view));
    for (const variant of examined.variants) {
      const lines = [
        ...notHeld(variant).map(({ text, reason }) => {
          const words = `Not held: ${visibleLine(`${text}: ${reason}`)}`;
          return `${indented(words, "  ", view.width).join("\n")}\n`;
        }),
        ...verdictLines(views, { ...variant, warnings: ownWarnings(examined, variant) }, view),
      ];
      if (lines.length > 0) parts.push(`Variant "${visibleLine(variant.title)}":\n`, ...lines);
    }
  }
  parts.push(`${examined.source.name}: ${countsInWords(countsOf(examined))}.\n`);
  return parts.join("\n");
}

/** What does not hold, and the warnings, in lines. */
function verdictLines(views: Light, verdict: Verdict, view: ViewOptions): readonly string[] {
  const open = verdict.expectations.filter((item) => item.outcome !== "passed");
  return [
    ...open.map((item) => views.expectationLines(item, view)),
    ...verdict.warnings.map((item) => views.warningLines(item, view)),
  ].map((lines) => lines.map((line) => `${line}\n`).join(""));
}

/** The line at the end of a check of several files. */
export function bookAsText(all: readonly Examined[]): string {
  return `${kindsInWords(all)}: ${countsInWords(sumOf(all.map(countsOf)))}.\n`;
}
