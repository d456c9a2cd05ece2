import { printNode } from "../../format/print-node.js";
import { shownIn, wordsOf } from "../../model/result-types.js";
import type { ColumnModel } from "../../model/tables/types.js";
import type { ResultType } from "../../model/values.js";
import type { Column } from "../../syntax/ast.js";
import { canonicalUnit, findUnit, unitTable } from "../../units/spellings.js";
import { expr } from "../claims/expr.js";
import { type Context, replace, report } from "../context.js";
import { nearNames } from "../suggest.js";

/** One column: a result of any kind, typed, and the unit it is shown in. Null after a finding. */
export function checkColumn(ctx: Context, column: Column): ColumnModel | null {
  const value = expr(ctx, column.value);
  if (value === null) return null;
  const unit = column.as === null ? null : unitOf(ctx, column, value.type);
  if (unit === undefined) return null;
  return { title: column.title?.value ?? printNode(column.value), value, unit };
}

/** The unit of a column as the language spells it; undefined after a finding. */
function unitOf(ctx: Context, { as }: Column, type: ResultType): string | undefined {
  if (as === null) return undefined;
  const row = findUnit(as.text);
  const base = shownIn[type];
  if (row !== null && base !== undefined && row.base === base) return row.name;
  const units = unitTable.filter((one) => one.base === base).map((one) => one.name);
  if (row === null) {
    const near = [...new Set(nearNames(as.text, units).map((name) => canonicalUnit(name) ?? name))];
    const fixes = near.map((name) => replace(ctx, `write \`${name}\``, as.span, name));
    report(ctx, "unit.unknown", as.span, { unit: as.text }, { fixes });
    return undefined;
  }
  const words = wordsOf(type);
  report(ctx, "table.unit", as.span, {
    words: words.charAt(0).toUpperCase() + words.slice(1),
    unit: row.name,
    remedy:
      units.length === 0
        ? "Leave `as` out: it is shown in its usual form."
        : `It is shown in ${units.map((name) => `\`${name}\``).join(", ")}.`,
  });
  return undefined;
}
