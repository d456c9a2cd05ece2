import type { Table, TableColumn } from "../../tables/types.js";
import { type CsvCell, renderCsv } from "../csv.js";

const plainUnits: ReadonlySet<string> = new Set(["text", "1", "truth"]);

/** A column's title with the unit of its numbers. */
const csvTitle = ({ title, unit }: TableColumn): string =>
  plainUnits.has(unit) ? title : `${title} (${unit})`;

/** A table as CSV, in pieces as its rows come: numbers as numbers in the unit of the title, texts guarded. */
export function* tableCsv(table: Table): Generator<string, void> {
  const { columns } = table;
  yield renderCsv([columns.map(csvTitle)]);
  for (const row of table.work()) {
    yield renderCsv([row.map((cell): CsvCell => cell.value ?? (cell.reason === null ? cell.text : null))]);
  }
}
