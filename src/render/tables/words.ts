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

/** Collects reasons while rows go by. */
export interface Reasons {
  readonly see: (row: readonly TableCell[]) => void;
  readonly lines: () => readonly string[];
}

/** A collector of reasons. */
export function reasons(): Reasons {
  const found = new Set<string>();
  return {
    see: (row) => {
      for (const cell of row) {
        if (cell.value === null && cell.reason !== null && found.size <= MOST_REASONS) found.add(cell.reason);
      }
    },
    lines: () => {
      const all = [...found];
      const shown = all
        .slice(0, MOST_REASONS)
        .map((reason) => `${NOTHING} where ${reason.replace(/\.$/, "")}`);
      return all.length > MOST_REASONS ? [...shown, `${NOTHING} for other reasons, too`] : shown;
    },
  };
}
