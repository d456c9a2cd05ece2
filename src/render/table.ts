import { cells, padEnd, padStart } from "../diagnostics/print-width.js";

/** One column of a table on a terminal. */
export interface TableColumn {
  readonly title: string;
  readonly align: "left" | "right";
}

/** Lays out rows under titles, two spaces between columns, no lines drawn. */
export function layTable(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const widths = columns.map((column, index) =>
    rows.reduce((most, row) => Math.max(most, cells(row[index] ?? "")), cells(column.title)),
  );
  const lay = (row: readonly string[]): string =>
    columns
      .map((column, index) => {
        const pad = column.align === "right" ? padStart : padEnd;
        return pad(row[index] ?? "", widths[index] ?? 0);
      })
      .join("  ")
      .trimEnd();
  return [lay(columns.map((column) => column.title)), ...rows.map(lay)];
}

/** Cells that a table takes. */
export function tableWidth(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): number {
  return layTable(columns, rows).reduce((most, line) => Math.max(most, cells(line)), 0);
}
