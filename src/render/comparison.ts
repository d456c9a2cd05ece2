import { visible, visibleLine } from "../diagnostics/print-visible.js";
import type { ComparedValue, Comparison } from "../report/compare/compare.js";
import { renderCsv } from "./csv.js";
import { markdownText } from "./markdown-escape.js";
import { indented, type ViewOptions, wrapText } from "./report-lines.js";
import { layTable, type TableColumn } from "./table.js";
import { severityWords } from "./text-verdicts.js";

/** What to show of a comparison. */
export interface ComparisonView extends ViewOptions {
  /** Also what differs by no more than noise. */
  readonly all: boolean;
}

const NONE = "-";
/** What stands where one of the two does not say what the other says. */
const UNSAID = "not said";

const safe = (text: string): string => markdownText(visible(text));

type Row = readonly string[];

const changeRows = ({ changes }: Comparison): readonly Row[] =>
  changes.map((row) => [row.path, row.before ?? UNSAID, row.after ?? UNSAID]);

const shownOf = (comparison: Comparison, all: boolean): readonly ComparedValue[] =>
  comparison.light.filter((row) => all || row.matters);

const lightRows = (comparison: Comparison, all: boolean): readonly Row[] =>
  shownOf(comparison, all).map((row) => [row.what, row.before ?? NONE, row.after ?? NONE, row.shown ?? NONE]);

/** Holds and warnings, a sentence each. */
function sentences({ held, gone, appeared }: Comparison): readonly string[] {
  return [
    ...held.map(({ in: where, text, by, setting, reason }) => {
      const done = setting === null ? "" : `${by} is ${setting}`;
      return `${where}: ${text}: ${[done, reason ?? ""].filter((part) => part !== "").join("; ")}`;
    }),
    ...gone.map((row) => `No longer: ${severityWords[row.severity]} (${row.code}): ${row.message}`),
    ...appeared.map((row) => `New: ${severityWords[row.severity]} (${row.code}): ${row.message}`),
  ];
}

/** Expectations that do not hold: what is expected, and what was found in either. */
function failedRows({ before, after, failed }: Comparison): readonly Row[] {
  const texts = [...new Set(failed.map(({ text }) => text))];
  return texts.map((text) => [
    text,
    ...[before, after].map((label) => {
      const row = failed.find((one) => one.in === label && one.text === text);
      if (row === undefined) return NONE;
      return row.outcome === "failed" ? (row.found ?? "does not hold") : (row.reason ?? "cannot be told");
    }),
  ]);
}

const left = (title: string): TableColumn => ({ title, align: "left" });

/** A table, or where the line is too short for it an entry of several lines for each row. */
function table(
  titles: readonly string[],
  rows: readonly Row[],
  loose: number,
  width: number,
): readonly string[] {
  const clean = rows.map((row) => row.map(visibleLine));
  const laid = layTable(titles.map(left), clean, width - 2, loose);
  if (laid !== null) return laid.map((line) => `  ${line}`);
  return clean.flatMap((row) => [
    ...indented(row[0] ?? "", "  ", width),
    ...row.slice(1).flatMap((cell, index) => indented(`${titles[index + 1] ?? ""}: ${cell}`, "    ", width)),
  ]);
}

/** A comparison for a terminal. */
export function renderComparisonText(comparison: Comparison, view: ComparisonView): string {
  const { before, after } = comparison;
  const [changed, light, said] = [
    changeRows(comparison),
    lightRows(comparison, view.all),
    sentences(comparison),
  ];
  const out: string[] = [
    ...wrapText(visibleLine(`${after} against ${before}`), view.width).map((line) =>
      view.paint("strong", line),
    ),
  ];
  const section = (title: string, lines: readonly string[]): void => {
    out.push("", view.paint("strong", title), ...lines);
  };
  if (changed.length > 0) {
    section("What is changed", table(["", visibleLine(before), visibleLine(after)], changed, 2, view.width));
  } else out.push("", "Nothing is written differently.");
  if (light.length > 0) {
    section(
      "What that does to the light",
      table(["", visibleLine(before), visibleLine(after), "change"], light, 0, view.width),
    );
  } else out.push("", "The light is the same.");
  const failed = failedRows(comparison);
  if (failed.length > 0) {
    const titles = ["", visibleLine(before), visibleLine(after)];
    section("Expectations that do not hold", table(titles, failed, 0, view.width));
  }
  if (said.length > 0) {
    section(
      "Held, and warnings",
      said.flatMap((line) => indented(visibleLine(line), "  ", view.width)),
    );
  }
  return out.map((line) => `${line.trimEnd()}\n`).join("");
}

/** A comparison as Markdown: two tables and a list. */
export function renderComparisonMarkdown(comparison: Comparison, all: boolean): string {
  const { before, after } = comparison;
  const rowOf = (cells: Row): string => `| ${cells.map((cell) => safe(cell) || " ").join(" | ")} |`;
  const tableOf = (titles: Row, rows: readonly Row[]): readonly string[] => [
    rowOf(titles),
    `|${titles.map(() => "---").join("|")}|`,
    ...rows.map(rowOf),
    "",
  ];
  const [changed, light, said] = [changeRows(comparison), lightRows(comparison, all), sentences(comparison)];
  const out = [`## ${safe(`${after} against ${before}`)}`, ""];
  if (changed.length > 0) out.push(...tableOf(["Changed", before, after], changed));
  else out.push("Nothing is written differently.", "");
  if (light.length > 0) out.push(...tableOf(["Light", before, after, "Change"], light));
  else out.push("The light is the same.", "");
  const failed = failedRows(comparison);
  if (failed.length > 0) out.push(...tableOf(["Does not hold", before, after], failed));
  if (said.length > 0) out.push(...said.map((line) => `- ${safe(line)}`), "");
  return `${out.join("\n").trimEnd()}\n`;
}

/** Comparisons as CSV: a row for each thing that differs. */
export function renderComparisonCsv(comparisons: readonly Comparison[], all: boolean): string {
  return renderCsv([
    ["part", "before", "after", "what", "value_before", "value_after", "change", "unit"],
    ...comparisons.flatMap((comparison) => {
      const { before, after } = comparison;
      return [
        ...comparison.changes.map((row) => [
          "set-up",
          before,
          after,
          row.path,
          row.before,
          row.after,
          null,
          "",
        ]),
        ...shownOf(comparison, all).map((row) => {
          const percent = row.scale === "share";
          const change = row.change === null ? null : percent ? row.change * 100 : row.change;
          const unit = percent ? "%" : row.scale === "stops" ? "stop" : "deg";
          return ["light", before, after, row.what, row.before, row.after, change, unit];
        }),
        ...comparison.held.map((row) => [
          "held",
          before,
          after,
          row.text,
          row.in,
          row.setting,
          null,
          row.reason ?? "",
        ]),
        ...comparison.failed.map((row) => [
          row.outcome,
          before,
          after,
          row.text,
          row.in === before ? row.found : null,
          row.in === before ? null : row.found,
          null,
          row.reason ?? "",
        ]),
        ...comparison.gone.map((row) => [
          "warning gone",
          before,
          after,
          row.code,
          row.message,
          null,
          null,
          "",
        ]),
        ...comparison.appeared.map((row) => [
          "warning new",
          before,
          after,
          row.code,
          null,
          row.message,
          null,
          "",
        ]),
      ];
    }),
  ]);
}
