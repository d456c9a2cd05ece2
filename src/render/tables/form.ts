import type { Table } from "../../tables/types.js";
import { tableCsv } from "./csv.js";
import { tableHtml } from "./html.js";
import { tableMarkdown } from "./markdown.js";
import { tableText } from "./text.js";

/** Tables one after another in a form for people: `text`, `markdown`, `html` or `csv`. */
export function* inForm(form: string, tables: readonly Table[], width: number): Generator<string, void> {
  for (const [i, table] of tables.entries()) {
    if (i > 0) yield "\n";
    if (form === "markdown") yield* tableMarkdown(table);
    else if (form === "html") yield* tableHtml(table);
    else if (form === "csv") yield* tableCsv(table);
    else yield* tableText(table, width);
  }
}
