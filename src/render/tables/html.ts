import type { Table } from "../../tables/types.js";
import { htmlText } from "../html-escape.js";
import { reasons, titleOf, wordsOf } from "./words.js";

/** A table as one HTML `table` element for a page of one's own, in pieces as its rows come: no style, no script. */
export function* tableHtml(table: Table): Generator<string, void> {
  const { columns } = table;
  const why = reasons(columns);
  yield `<table>\n<caption>${htmlText(table.title)}</caption>\n<thead>\n<tr>`;
  yield columns.map((column) => `<th scope="col">${htmlText(titleOf(column))}</th>`).join("");
  yield "</tr>\n</thead>\n<tbody>\n";
  for (const row of table.work()) {
    why.see(row);
    const texts = columns.map((column, i) => {
      const text = htmlText(row[i] === undefined ? "" : wordsOf(row[i], column));
      return column.swept ? `<th scope="row">${text}</th>` : `<td>${text}</td>`;
    });
    yield `<tr>${texts.join("")}</tr>\n`;
  }
  yield "</tbody>\n";
  const notes = [...(table.note === null ? [] : [table.note]), ...why.lines()];
  if (notes.length > 0) {
    const span = `<td colspan="${columns.length}">`;
    yield `<tfoot>\n${notes.map((note) => `<tr>${span}${htmlText(note)}</td></tr>\n`).join("")}</tfoot>\n`;
  }
  yield "</table>\n";
}
