import type { Table, TableColumn } from "../../tables/types.js";
import { cellText } from "../markdown-cell.js";
import { markdownText } from "../markdown-escape.js";
import { isRight, reasons, titleOf, wordsOf } from "./words.js";

/** A table as Markdown, in pieces as its rows come. */
export function* tableMarkdown(table: Table): Generator<string, void> {
  const { columns } = table;
  const why = reasons(columns);
  const rule = (column: TableColumn): string => (isRight(column) ? "---:" : ":---");
  yield `## ${markdownText(table.title)}\n\n`;
  yield `| ${columns.map((column) => cellText(titleOf(column))).join(" | ")} |\n`;
  yield `| ${columns.map(rule).join(" | ")} |\n`;
  for (const row of table.work()) {
    why.see(row);
    const texts = columns.map((column, i) => (row[i] === undefined ? "" : wordsOf(row[i], column)));
    yield `| ${texts.map(cellText).join(" | ")} |\n`;
  }
  if (table.note !== null) yield `\n${markdownText(table.note)}\n`;
  for (const reason of why.lines()) yield `\n${markdownText(reason)}\n`;
}
