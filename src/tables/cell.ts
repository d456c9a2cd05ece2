import { sweepLabel, sweepNumber, sweepUnit } from "../model/tables/sweep-label.js";
import { sweepValue } from "../model/tables/sweep-value.js";
import type { ColumnModel, SweepModel } from "../model/tables/types.js";
import type { Expr } from "../model/values.js";
import type { Found } from "../report/evaluate/found.js";
import { nothing } from "../report/evaluate/found.js";
import { reportValue, show, unitOf } from "../report/evaluate/show.js";
import { findUnit, fromBase } from "../units/spellings.js";
import type { TableCell, TableColumn } from "./types.js";

/** Whether an expression is the width of a shadow's edge, which is said in millimetres. */
function isEdge(value: Expr): boolean {
  switch (value.kind) {
    case "result":
      return value.name === "shadow_edge" || value.name === "shadow_edge_10_90";
    case "negation":
      return isEdge(value.operand);
    case "sum":
      return value.terms.every((term) => isEdge(term.value));
    case "product":
      return value.type === "length" && value.factors.some((factor) => isEdge(factor.value));
    default:
      return false;
  }
}

/** The unit of a column's numbers. */
function unitOfColumn({ value, unit }: ColumnModel): string {
  if (unit !== null) return unit;
  return unitOf({ ...nothing(value.type, ""), edge: isEdge(value) });
}

/** A column of results. */
export function resultColumn(column: ColumnModel, blank: readonly string[]): TableColumn {
  const { title, unit } = column;
  return {
    title,
    unit: unitOfColumn(column),
    asked: unit !== null,
    swept: false,
    blank: blank.includes(title),
  };
}

/** The column of what is varied. */
export function sweptColumn(sweep: SweepModel, blank: readonly string[]): TableColumn {
  const unit = sweepUnit(sweep) ?? "text";
  return { title: sweep.path, unit, asked: false, swept: true, blank: blank.includes(sweep.path) };
}

/** What a result came to, in the unit of its column. */
export function resultCell({ unit }: ColumnModel, found: Found): TableCell {
  if (found.value === null) return { value: null, text: null, reason: found.reason };
  const row = unit === null ? null : findUnit(unit);
  const value = row === null ? reportValue(found) : fromBase(row, found.value);
  return { value: value === 0 ? 0 : value, text: show(found), reason: null };
}

/** A cell of a row that cannot be worked out. */
export const emptyCell = (reason: string): TableCell => ({ value: null, text: null, reason });

/** A value that is swept. */
export function sweptCell(sweep: SweepModel, index: number): TableCell {
  const { value, written } = sweepValue(sweep, index);
  const isTitle = sweep.target.kind === "variant" && value !== null;
  return {
    value: sweepNumber(sweep, index),
    text: isTitle ? String(value) : sweep.target.kind === "variant" ? written : sweepLabel(sweep, index),
    reason: null,
  };
}
