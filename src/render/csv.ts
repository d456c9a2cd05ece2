import { exact } from "./number.js";

/** One cell: a text, a number, or nothing. */
export type CsvCell = string | number | null;

/** What a spreadsheet would take for a formula, also behind white space, in full-width form too. */
const formula = /^[\s\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20\t\r\n]/;

/**
 * A cell as CSV (RFC 4180). Texts are always in quotation marks, and one that a spreadsheet would run as a formula gets
 * an apostrophe in front; numbers are written as numbers, with a point.
 */
export function csvCell(cell: CsvCell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? String(exact(cell)) : "";
  const clean = cell.replaceAll("\0", "");
  const safe = formula.test(clean) ? `'${clean}` : clean;
  return `"${safe.replaceAll('"', '""')}"`;
}

/** Rows as CSV, every line closed by CR LF. */
export function renderCsv(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");
}
