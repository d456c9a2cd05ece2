import { asSentence } from "../diagnostics/print-sentence.js";
import { visible } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import { markdownText } from "./markdown-escape.js";
import { expectationCount } from "./text.js";
import { cameraSentences } from "./text-camera.js";
import { lightFacts, lightTitle } from "./text-lights.js";
import { shadowTable, shadowWords } from "./text-shadows.js";
import { bounceSentences, roomLightSentences, stationTable } from "./text-stations.js";
import { heldSentences, outcomeWords, severityWords, silenceWords, titleOf } from "./text-verdicts.js";

const safe = (text: string): string => markdownText(visible(text));

/** A table; the cells are escaped here. */
function table(
  titles: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly boolean[],
): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(safe).join(" | ")} |`;
  const rule = `| ${titles.map((_title, index) => (right[index] === true ? "---:" : "---")).join(" | ")} |`;
  return [line(titles), rule, ...rows.map(line)].join("\n");
}

const list = (items: readonly string[]): string => items.map((item) => `- ${item}`).join("\n");

/** The report as Markdown with tables (CommonMark with the table extension), for a page or a lesson. */
export function renderMarkdown(report: Report): string {
  const parts: string[] = [`# ${safe(titleOf(report))}`, `**${safe(report.headline)}**`];
  if (report.matters_most !== null) parts.push(`Measure this with care: ${safe(report.matters_most)}`);
  const held = heldSentences(report);
  if (held.length > 0) parts.push("## Held", list(held.map(safe)));
  if (report.setup.length > 0) parts.push("## Set-up", list(report.setup.map(safe)));
  if (report.camera !== null) parts.push("## Camera", list(cameraSentences(report.camera).map(safe)));
  if (report.lights.length > 0) parts.push("## Lights");
  for (const light of report.lights) {
    parts.push(`### ${safe(lightTitle(light))}`, table(["What", "Value"], lightFacts(light), []));
  }
  if (report.stations.length > 0) {
    const { columns, rows } = stationTable(report, true, true);
    const titles = columns.map((column) => column.title);
    const right = columns.map((column) => column.align === "right");
    parts.push("## Readings", table(titles, rows, right));
    const reasons = report.stations.filter((station) => station.reason !== null);
    if (reasons.length > 0) {
      parts.push(list(reasons.map((item) => safe(`${item.name} ${item.looks}: ${item.reason ?? ""}`))));
    }
  }
  parts.push(...bounceSentences(report).map(safe), ...roomLightSentences(report).map(safe));
  if (report.shadows.length > 0) {
    const { columns, rows } = shadowTable(report);
    const right = columns.map((column) => column.align === "right");
    parts.push(
      "## Shadows",
      table(
        columns.map(({ title }) => title),
        rows,
        right,
      ),
      safe(shadowWords),
    );
  }
  if (report.results.length > 0) {
    const rows = report.results.map((item) => [
      item.text,
      item.reason === null ? item.shown : `${item.shown} (${item.reason})`,
    ]);
    parts.push("## Results", table(["Result", "Value"], rows, []));
  }
  if (report.expectations.length > 0) {
    const rows = report.expectations.map((item) => [
      item.text.replace(/^expect /, ""),
      outcomeWords[item.outcome],
      item.found ?? "",
      [item.reason, item.because].filter((text) => text !== null).join("; "),
      item.shares.map((share) => `${share.name}: ${share.text}`).join(", "),
    ]);
    const titles = ["Expectation", "Outcome", "Found", "Why", "What each light gives"];
    parts.push(`## Expectations: ${expectationCount(report)}`, table(titles, rows, []));
  }
  parts.push("## Warnings");
  if (report.warnings.length === 0) parts.push("None.");
  for (const item of report.warnings) {
    const about = item.about === null ? "" : ` ${safe(item.about)}`;
    const lines = [
      `**${severityWords[item.severity]}:**${about} ${safe(asSentence(item.message, [item.about]))} (${safe(item.code)})`,
    ];
    if (item.remedy !== "") lines.push(`What to do: ${safe(item.remedy)}`);
    if (item.caution !== null) lines.push(`Caution: ${safe(item.caution)}`);
    parts.push(lines.join("\\\n"));
  }
  if (report.silenced.length > 0) {
    const rows = report.silenced.map((item) => [item.code, item.because, silenceWords(item).join(" ")]);
    parts.push("## Silenced", table(["Warning", "Because", "What it would say"], rows, []));
  }
  if (report.assumed.length > 0) {
    const rows = report.assumed.map((item) => [
      item.what,
      item.value,
      item.matters ? "more than 0.2 stop" : "",
    ]);
    parts.push("## Assumed", table(["What", "Value", "May move a result by"], rows, []));
  }
  if (report.not_claimed.length > 0) {
    parts.push("## Not claimed", list(report.not_claimed.map((text) => safe(asSentence(text)))));
  }
  return `${parts.join("\n\n")}\n`;
}
