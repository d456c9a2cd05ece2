import type { Table } from "../../tables/types.js";
import { exact } from "../number.js";

const compact = (data: unknown): string =>
  JSON.stringify(data, (_key, value: unknown) => (typeof value === "number" ? exact(value) : value));

/** Tables as JSON (format 1), in pieces as their rows come; one row a line. */
export function* tablesJson(recipe: string, tables: readonly Table[]): Generator<string, void> {
  yield `{\n  "format": 1,\n  "recipe": ${compact(recipe)},\n  "tables": [`;
  for (const [i, table] of tables.entries()) {
    const { title, note } = table;
    const columns = table.columns.map(({ title, unit, swept, blank }) => ({ title, unit, swept, blank }));
    yield `${i === 0 ? "" : ","}\n    {\n      "title": ${compact(title)},\n      "note": ${compact(note)},\n`;
    yield `      "columns": [\n${columns.map((column) => `        ${compact(column)}`).join(",\n")}\n      ],\n      "rows": [`;
    let first = true;
    for (const row of table.work()) {
      const cells = row.map(({ value, text, reason }) => ({ value, shown: text, reason }));
      yield `${first ? "" : ","}\n        ${compact(cells)}`;
      first = false;
    }
    yield `${first ? "" : "\n      "}]\n    }`;
  }
  yield "\n  ]\n}\n";
}
