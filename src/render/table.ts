import { cells, padEnd, padStart, wrap } from "../diagnostics/print-width.js";

/** Cells that a broken column keeps at least, and always those of its longest word: no name is broken to save a column. */
const LEAST = 16;

/** One column of a table on a terminal. */
export interface TableColumn {
  readonly title: string;
  readonly align: "left" | "right";
}

const widthsOf = (columns: readonly TableColumn[], rows: readonly (readonly string[])[]): readonly number[] =>
  columns.map((column, index) =>
    rows.reduce((most, row) => Math.max(most, cells(row[index] ?? "")), cells(column.title)),
  );

const longestWord = (text: string): number => Math.max(...text.split(" ").map(cells));

/**
 * Lays out rows under titles, two spaces between columns, no lines drawn. Where the table is wider than `width`, the
 * column `loose` is broken into several lines; null where that column would get less than 16 cells or
 * less than its longest word.
 */
export function layTable(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  width: number,
  loose: number,
): readonly string[] | null {
  const widths = [...widthsOf(columns, rows)];
  const total = widths.reduce((sum, one) => sum + one, 2 * (columns.length - 1));
  if (total > width) {
    const room = (widths[loose] ?? 0) - (total - width);
    if (room < Math.max(LEAST, ...rows.map((row) => longestWord(row[loose] ?? "")))) return null;
    widths[loose] = room;
  }
  const lay = (row: readonly string[]): readonly string[] => {
    const broken = wrap(row[loose] ?? "", widths[loose] ?? LEAST);
    return broken.map((part, line) =>
      columns
        .map((column, index) => {
          const text = index === loose ? part : line === 0 ? (row[index] ?? "") : "";
          return (column.align === "right" ? padStart : padEnd)(text, widths[index] ?? 0);
        })
        .join("  ")
        .trimEnd(),
    );
  };
  return [columns.map((column) => column.title), ...rows].flatMap(lay);
}
