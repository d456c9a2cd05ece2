import { visibleLine } from "../../diagnostics/print-visible.js";
import { cells, padEnd, padStart, wrap } from "../../diagnostics/print-width.js";
import type { Table, TableColumn, TableRow } from "../../tables/types.js";
import { isRight, reasons, titleOf, wordsOf } from "./words.js";

/** Rows that are seen before columns get their widths. */
const SAMPLE = 200;
/** Cells that a title may take before it is broken between words; a longer word makes its column wider, up to a limit where there is no room. */
const TITLE = 12;
const WORD = 28;

/** A table for a terminal, in pieces as its rows come: aligned columns, or a row a block where it is too narrow. */
export function* tableText(table: Table, width: number): Generator<string, void> {
  const why = reasons(table.columns);
  yield `${visibleLine(table.title)}\n`;
  const rows = table.work();
  const sample: (readonly string[])[] = [];
  for (let next = rows.next(); !next.done; next = rows.next()) {
    why.see(next.value);
    sample.push(textsOf(table, next.value));
    if (sample.length >= SAMPLE) break;
  }
  const widthsOf = (longest: number): readonly number[] =>
    table.columns.map((column, i) =>
      sample.reduce((most, row) => Math.max(most, cells(row[i] ?? "")), titleWidth(column, longest)),
    );
  const totalOf = (widths: readonly number[]): number => widths.reduce((sum, one) => sum + one + 2, -2);
  const whole = widthsOf(width);
  const widths = totalOf(whole) <= width ? whole : widthsOf(WORD);
  const total = totalOf(widths);
  const lay =
    total <= width
      ? (row: readonly string[]) => line(table, row, widths)
      : (row: readonly string[]) => block(table, row, width);
  if (total <= width) yield `\n${head(table, widths)}`;
  for (const row of sample) yield lay(row);
  for (const row of rows) {
    why.see(row);
    yield lay(textsOf(table, row));
  }
  for (const note of [...(table.note === null ? [] : [table.note]), ...why.lines()]) {
    yield `\n${wrap(visibleLine(note), width).join("\n")}\n`;
  }
}

const textsOf = ({ columns }: Table, row: TableRow): readonly string[] =>
  columns.map((column, i) => {
    const cell = row[i];
    return cell === undefined ? "" : visibleLine(wordsOf(cell, column));
  });

/** The width that a title needs, broken between its words; words that are longer than `longest` are cut. */
function titleWidth(column: TableColumn, longest: number): number {
  const title = visibleLine(titleOf(column));
  const word = title.split(" ").reduce((most, part) => Math.max(most, cells(part)), TITLE);
  return wrap(title, Math.min(longest, word)).reduce((most, part) => Math.max(most, cells(part)), 0);
}

/** Titles over their columns, broken where they are longer, the last lines level. */
function head({ columns }: Table, widths: readonly number[]): string {
  const broken = columns.map((column, i) => wrap(visibleLine(titleOf(column)), widths[i] ?? TITLE));
  const most = broken.reduce((size, parts) => Math.max(size, parts.length), 0);
  const lines = Array.from({ length: most }, (_, n) =>
    joined(
      columns,
      broken.map((parts) => parts[n - most + parts.length] ?? ""),
      widths,
    ),
  );
  return `${lines.join("\n")}\n`;
}

function joined(columns: readonly TableColumn[], row: readonly string[], widths: readonly number[]): string {
  return columns
    .map((column, i) => (isRight(column) ? padStart : padEnd)(row[i] ?? "", widths[i] ?? 0))
    .join("  ")
    .trimEnd();
}

const line = ({ columns }: Table, row: readonly string[], widths: readonly number[]): string =>
  `${joined(columns, row, widths)}\n`;

/** One row as a block of lines: title and value. */
function block({ columns }: Table, row: readonly string[], width: number): string {
  const lines = columns.flatMap((column, i) => {
    const text = `${visibleLine(titleOf(column))}: ${row[i] ?? ""}`;
    return wrap(text, width - 2).map((part, n) => `${i === 0 && n === 0 ? "" : "  "}${part}`);
  });
  return `\n${lines.join("\n")}\n`;
}
