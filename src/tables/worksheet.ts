import type { Table, TableCell, TableColumn, TableRow } from "./types.js";

const blankCell: TableCell = { value: null, text: "", reason: null };

/** Whether there is something to fill in. */
const hasAnswer = ({ value, text }: TableCell): boolean => value !== null || text !== null;

/**
 * The same table with the number of each row in front and the blank columns empty, for a pupil to fill in. Where there
 * is no answer the worksheet says so.
 */
export function worksheetOf(table: Table): Table {
  const { columns, work } = table;
  return {
    ...table,
    columns: [rowColumn, ...columns],
    *work() {
      let number = 0;
      for (const row of work())
        yield [
          numberCell(++number),
          ...row.map((cell, i) => (columns[i]?.blank && hasAnswer(cell) ? blankCell : cell)),
        ];
    },
  };
}

/** The key to the worksheet: the number of each row, what is varied where it is not blank itself, and the answers. */
export function answersOf(table: Table): Table {
  const { columns, work } = table;
  const kept = columns.flatMap((column, i) => (column.swept || column.blank ? [i] : []));
  const pick = <T>(list: readonly T[]): readonly T[] => kept.flatMap((i) => list.slice(i, i + 1));
  return {
    ...table,
    title: `${table.title}: answers`,
    note: null,
    columns: [rowColumn, ...pick(columns).map((column) => ({ ...column, blank: false }))],
    *work() {
      let number = 0;
      for (const row of work()) yield [numberCell(++number), ...pick(row)];
    },
  };
}

/** The table with other columns blank, by their titles. */
export function withBlank(table: Table, titles: readonly string[]): Table {
  const blank = (column: TableColumn): TableColumn => ({ ...column, blank: titles.includes(column.title) });
  return { ...table, columns: table.columns.map(blank) };
}

const rowColumn: TableColumn = { title: "row", unit: "1", asked: false, swept: true, blank: false };
const numberCell = (number: number): TableRow[number] => ({
  value: number,
  text: String(number),
  reason: null,
});
