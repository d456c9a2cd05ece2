import type { Table } from "../../tables/types.js";
import { heading, paragraph, type ViewPart, words } from "../parts.js";
import { isRight, reasons, titleOf, wordsOf } from "./words.js";

/** A lesson table with all its rows, as parts of a page. Columns that are blank in a worksheet are filled. */
export function tableParts(table: Table): readonly ViewPart[] {
  const { columns } = table;
  const why = reasons(columns);
  const rows: (readonly string[])[] = [];
  for (const row of table.work()) {
    why.see(row);
    rows.push(columns.map((column, i) => (row[i] === undefined ? "" : wordsOf(row[i], column))));
  }
  const titles = columns.map((column) => ({
    title: titleOf(column),
    align: isRight(column) ? ("right" as const) : ("left" as const),
  }));
  const notes = [...(table.note === null ? [] : [table.note]), ...why.lines()];
  return [
    heading(2, table.title),
    { kind: "table", columns: titles, rows },
    ...notes.map((note) => paragraph(words(note))),
  ];
}
