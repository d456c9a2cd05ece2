import { cells, padEnd, padStart, wrap } from "../diagnostics/print-width.js";

/** Cells that a broken column keeps. */
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

/**
 * Lays out rows under titles, two spaces between columns, no lines drawn. Where the table is wider than `width`, the
 * column `loose` is broken into several lines; null where that column would get less than 16 cells.
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
    if (room < LEAST) return null;
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
