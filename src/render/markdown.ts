import { visible } from "../diagnostics/print-visible.js";
import type { Report } from "../report/schema/report.js";
import { cellText } from "./markdown-cell.js";
import { markdownText } from "./markdown-escape.js";
import { figureHtml, type ViewColumn, type ViewPart, type ViewWords } from "./parts.js";
import { reportParts } from "./report-parts.js";

const safe = (text: string): string => markdownText(visible(text));

function table(columns: readonly ViewColumn[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cellText(visible(cell))).join(" | ")} |`;
  const rules = { left: ":---", right: "---:", none: "---" } as const;
  const rule = `| ${columns.map(({ align }) => rules[align ?? "none"]).join(" | ")} |`;
  return [line(columns.map(({ title }) => title)), rule, ...rows.map(line)].join("\n");
}

/** A fence that is longer than any run of backticks in the text. */
function code(language: string, text: string): string {
  const longest = (text.match(/`+/g) ?? []).reduce((most, run) => Math.max(most, run.length), 2);
  const fence = "`".repeat(longest + 1);
  return `${fence}${language}\n${text}${text === "" || text.endsWith("\n") ? "" : "\n"}${fence}`;
}

function inline(part: ViewWords): string {
  if (part.kind === "break") return "\\\n";
  if (part.kind === "strong") return `**${safe(part.text)}**`;
  // A blank at the beginning parts the words from what stands before.
  return (part.text.startsWith(" ") ? " " : "") + safe(part.text);
}

function print(part: ViewPart): string {
  switch (part.kind) {
    case "heading":
      return `${"#".repeat(part.level)} ${safe(part.text)}`;
    case "paragraph":
      return part.inlines.map(inline).join("");
    case "list":
      return part.items.map((item) => `- ${safe(item)}`).join("\n");
    case "table":
      return table(part.columns, part.rows);
    case "code":
      return code(part.language, part.text);
    case "figure":
      return figureHtml(part.svg);
    default:
      return part satisfies never;
  }
}

/** The parts of a view as Markdown (CommonMark with the table extension). */
export function partsMarkdown(parts: readonly ViewPart[]): string {
  return `${parts.map(print).join("\n\n")}\n`;
}

/** The report as Markdown with tables (CommonMark with the table extension), for a page or a lesson. */
export function renderMarkdown(report: Report): string {
  return partsMarkdown(reportParts(report));
}
