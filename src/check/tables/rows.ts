import { sweepLength, sweepValue } from "../../model/tables/sweep-value.js";
import type { SweepModel, TableModel } from "../../model/tables/types.js";
import { type Reporter, report } from "../context.js";
import { type RowSetUp, type RowText, setUpOfRow } from "./row.js";

/** Values of a list that are tried; a longer list is tried at its ends like a sweep in steps. */
const TRIED = 50;

/** Tries the set-ups of a table that are checked as text, one sweep at a time, and reports values that do not fit. */
export function tryRows(at: RowText, table: TableModel, to: Reporter): boolean {
  let fit = true;
  const anyVariant = table.sweeps.some(({ target }) => target.kind === "variant");
  table.sweeps.forEach((sweep, which) => {
    if (sweep.target.kind !== "text") return;
    for (const index of triedOf(sweep)) {
      const indices = table.sweeps.map((_, i) => (i === which ? index : 0));
      const problem = troubleOf(setUpOfRow(at, table, indices), anyVariant);
      if (problem === undefined) continue;
      fit = false;
      const place = sweep.origin ?? table.origin ?? { file: at.name, ...at.file.span };
      const value = sweepValue(sweep, index).written;
      report(to, "sweep.row", place, { path: sweep.path, value, what: problem.replace(/\.$/, "") });
      return;
    }
  });
  return fit;
}

/** Why a value does not fit. A column may go without one in a variant that removes what it asks for. */
function troubleOf(row: RowSetUp, anyVariant: boolean): string | undefined {
  if (row.problem !== undefined || anyVariant) return row.problem;
  return row.columns.flatMap((column) => ("problem" in column ? [column.problem] : []))[0];
}

function triedOf(sweep: SweepModel): readonly number[] {
  const length = sweepLength(sweep);
  if (sweep.range.kind === "list" && length <= TRIED) return Array.from({ length }, (_, i) => i);
  return length > 1 ? [0, length - 1] : [0];
}
