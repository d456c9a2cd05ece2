import type { TableCell, TableColumn } from "../../tables/types.js";
import { fixed, NOTHING, significant } from "../number.js";

/** A column's title with its unit, where the cells show bare numbers. */
export function titleOf({ title, unit, asked }: TableColumn): string {
  return asked ? `${title} (${unit})` : title;
}

/** A cell as people read it: a bare number where the unit stands above, else with its unit; a dash for nothing. */
export function wordsOf(cell: TableCell, { unit, asked }: TableColumn): string {
  if (asked && cell.value !== null)
    return unit === "stop" ? fixed(cell.value, 1) : significant(cell.value, 3);
  return cell.text ?? NOTHING;
}

/** Texts to the left, everything that is read as a number to the right. */
export const isRight = ({ unit, swept }: TableColumn): boolean => !(swept && unit === "text");

/** Why cells are empty, each reason once, at most this many. */
const MOST_REASONS = 8;

/** Columns or values that a reason names at most; of more it does not say which. */
const MOST_NAMED = 3;

/** Collects reasons while rows go by. */
export interface Reasons {
  readonly see: (row: readonly TableCell[]) => void;
  readonly lines: () => readonly string[];
}

/** A collector of reasons, each said with the columns and the swept values that it is about. */
export function reasons(columns: readonly TableColumn[]): Reasons {
  const found = new Map<string, Seen>();
  const rows: Seen = seen();
  return {
    see: (row) => {
      note(rows, columns, row, []);
      const empty = new Map<string, number[]>();
      row.forEach(({ value, reason }, i) => {
        if (value === null && reason !== null) empty.set(reason, [...(empty.get(reason) ?? []), i]);
      });
      for (const [reason, at] of empty) {
        if (!found.has(reason) && found.size > MOST_REASONS) continue;
        const about = found.get(reason) ?? seen();
        found.set(reason, about);
        note(about, columns, row, at);
      }
    },
    lines: () => {
      const all = [...found];
      const shown = all
        .slice(0, MOST_REASONS)
        .map(
          ([reason, about]) => `${NOTHING} where ${asClause(reason)}${placeOf(columns, about, rows.values)}`,
        );
      return all.length > MOST_REASONS ? [...shown, `${NOTHING} for other reasons, too`] : shown;
    },
  };
}

/** Where a reason was seen: which columns, and which values of each swept column (as many as tell few from many). */
interface Seen {
  readonly columns: Set<number>;
  readonly values: Map<number, Set<string>>;
}

const seen = (): Seen => ({ columns: new Set(), values: new Map() });

function note(
  to: Seen,
  columns: readonly TableColumn[],
  row: readonly TableCell[],
  at: readonly number[],
): void {
  for (const i of at) to.columns.add(i);
  columns.forEach((column, i) => {
    const cell = row[i];
    if (!column.swept || cell === undefined) return;
    const values = to.values.get(i) ?? new Set();
    if (values.size <= MOST_NAMED) values.add(wordsOf(cell, column));
    to.values.set(i, values);
  });
}

/** A sentence as it stands after "where". */
const asClause = (reason: string): string =>
  reason.replace(/\.$/, "").replace(/^[A-Z](?=[a-z]* )/, (first) => first.toLowerCase());

/** The columns of a reason, unless all have it, and the swept values, unless they are many or all there are. */
function placeOf(columns: readonly TableColumn[], about: Seen, all: Seen["values"]): string {
  const results = columns.flatMap(({ swept, unit }, i) => (swept || unit === "text" ? [] : [i]));
  const titles = results.flatMap((i) => (about.columns.has(i) ? [columns[i]?.title ?? ""] : []));
  const named = titles.length < results.length && titles.length <= MOST_NAMED ? titles : [];
  const values = [...about.values].flatMap(([i, own]) =>
    own.size <= MOST_NAMED && own.size < (all.get(i)?.size ?? 0)
      ? [`${columns[i]?.title ?? ""} ${[...own].join(", ")}`]
      : [],
  );
  const parts = [...(named.length === 0 ? [] : [named.join(", ")]), ...values];
  return parts.length === 0 ? "" : ` (${parts.join("; ")})`;
}
