import { MAX_CELLS, MAX_ROWS } from "../../core/limits.js";
import type { Span } from "../../core/span.js";
import { type Context, report } from "../context.js";

/** How large a table may be. */
export interface TableLimits {
  readonly rows: number;
  readonly cells: number;
}

/** What the command allows. */
export const usualLimits: TableLimits = { rows: MAX_ROWS, cells: MAX_CELLS };

/** The most rows of a table. */
export const rowLimit = (ctx: Context): number => ctx.limits.rows;
/** The most cells of a table. */
export const cellLimit = (ctx: Context): number => ctx.limits.cells;

/** Says that a sweep alone, or two together, make too many rows. */
export function tooManyRows(ctx: Context, span: Span, rows: number): null {
  report(ctx, "limit.rows", span, { rows: howMany(rows), limit: rowLimit(ctx) });
  return null;
}

/** A count for a message: counts beyond all sense are not spelt out. */
export const howMany = (count: number): string =>
  count < 1e12 ? String(count) : "more than a million million";
