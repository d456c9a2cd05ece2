import { asSentence } from "../diagnostics/print-sentence.js";
import { visibleLine } from "../diagnostics/print-visible.js";
import type {
  Report,
  ReportExpectation,
  ReportResult,
  ReportSilence,
  ReportWarning,
} from "../report/schema/report.js";
import { indented, labelled, type ViewOptions } from "./report-lines.js";

/** How the three outcomes are said. */
export const outcomeWords = { passed: "passed", failed: "failed", undecidable: "not decidable" } as const;
/** How the three severities are said. */
export const severityWords = { stop: "Stop", check: "Check", note: "Note" } as const;

/** Results, each as one asks for it in a recipe and what it is. */
export function resultLines(results: readonly ReportResult[], view: ViewOptions): readonly string[] {
  return results.flatMap((result) => {
    const shown = visibleLine(result.shown);
    const reason = result.reason === null ? "" : ` (${visibleLine(result.reason)})`;
    const within = result.shown_interval === null ? "" : `, ${visibleLine(result.shown_interval)}`;
    return indented(`${visibleLine(result.text)} = ${shown}${within}${reason}`, "  ", view.width);
  });
}

/** One expectation: its outcome in words, what was found, what each light gives, why, and what would meet it. */
export function expectationLines(item: ReportExpectation, view: ViewOptions): readonly string[] {
  const word = outcomeWords[item.outcome];
  const tone = item.outcome === "passed" ? "passed" : "failed";
  const room = 15;
  const lines: string[] = [];
  const say = (label: string, text: string): void => {
    lines.push(...labelled(label, text, "  ", room, view.width));
  };
  say(word, visibleLine(item.text).replace(/^expect /, ""));
  const first = lines[0] ?? "";
  lines[0] = first.replace(word, () => view.paint(tone, word));
  if (item.found !== null) say("", `found: ${visibleLine(item.found)}`);
  if (item.shares.length > 0) {
    say("", item.shares.map((share) => `${visibleLine(share.name)}: ${visibleLine(share.text)}`).join(", "));
  }
  if (item.reason !== null)
    say(
      "",
      asSentence(
        item.reason,
        item.shares.map((share) => share.name),
      ),
    );
  const nearest = nearestWords(item);
  if (nearest !== null) say("", visibleLine(nearest));
  // The text of an expectation ends with its reason, as it was written.
  if (item.because !== null && !item.text.includes(item.because))
    say("", `wanted because: ${visibleLine(item.because)}`);
  if (item.line !== null && item.outcome !== "passed") say("", `said in line ${item.line}`);
  return lines;
}

/** What would meet an expectation that does not hold, or why nothing near does; null for one that holds. */
export function nearestWords({ nearest, nearest_reason }: ReportExpectation): string | null {
  return nearest === null ? nearest_reason : `nearest single change: ${nearest.text}`;
}

/** A silenced warning: its reason, and what it would say. */
export function silenceLines(item: ReportSilence, view: ViewOptions): readonly string[] {
  return [
    ...indented(
      `${visibleLine(item.code)}, because: ${asSentence(visibleLine(item.because))}`,
      "  ",
      view.width,
    ),
    ...silenceWords(item).flatMap((text) => indented(visibleLine(text), "    ", view.width)),
  ];
}

/** The title of a report: the recipe's, and the variant's behind it. */
export function titleOf({ title, variant }: Report): string {
  const own = title === "" ? "Untitled" : title;
  return variant === null ? own : `${own}: ${variant.title}`;
}

/** What became of the holds of a variant, a sentence each. */
export function heldSentences({ variant }: Report): readonly string[] {
  return (variant?.held ?? []).map(({ text, by, setting, reason }) => {
    const parts = [setting === null ? "" : `${by} is ${setting}`, reason ?? ""];
    return `${text}: ${parts.filter((part) => part !== "").join("; ")}`;
  });
}

/** What a silenced warning would say, a sentence each. */
export function silenceWords(item: ReportSilence): readonly string[] {
  if (item.warnings.length === 0) return ["It does not speak here, so the line can go."];
  return item.warnings.map(
    (row) => `${severityWords[row.severity]}: ${asSentence(row.message, [row.about])}`,
  );
}

/** One warning: severity, what it is about, cause, remedy, caution, code. */
export function warningLines(item: ReportWarning, view: ViewOptions): readonly string[] {
  const word = severityWords[item.severity];
  const about = item.about === null ? "" : ` ${visibleLine(item.about)}`;
  const head = indented(`${word}:${about} (${visibleLine(item.code)})`, "  ", view.width);
  const lines = head.map((line, index) =>
    index === 0 ? line.replace(word, () => view.paint(item.severity, word)) : line,
  );
  lines.push(...indented(asSentence(item.message, [item.about]), "    ", view.width));
  if (item.remedy !== "")
    lines.push(...indented(`What to do: ${visibleLine(item.remedy)}`, "    ", view.width));
  if (item.caution !== null)
    lines.push(...indented(`Caution: ${visibleLine(item.caution)}`, "    ", view.width));
  return lines;
}
