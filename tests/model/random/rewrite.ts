import { writeNumber } from "../../../src/core/write-number.js";
import { printNode } from "../../../src/format/print-node.js";
import type { File, Quantity } from "../../../src/syntax/ast.js";
import { findUnit, fromBase, toBase } from "../../../src/units/spellings.js";

/** Every quantity of a tree, wherever it stands. */
function quantitiesIn(value: unknown, into: Quantity[]): void {
  if (Array.isArray(value)) for (const item of value) quantitiesIn(item, into);
  else if (typeof value === "object" && value !== null) {
    if ((value as { kind?: unknown }).kind === "quantity") into.push(value as Quantity);
    else for (const inner of Object.values(value)) quantitiesIn(inner, into);
  }
}

/** A quantity with all its lengths in another unit; null where there is no length in it. */
function inUnit(quantity: Quantity, unit: string): string | null {
  const to = findUnit(unit);
  const last = quantity.amounts[quantity.amounts.length - 1]?.unit ?? null;
  const rows = quantity.amounts.map((amount) => findUnit((amount.unit ?? last)?.text ?? ""));
  if (to === null || rows.some((row) => row?.base !== "m")) return null;
  const values = quantity.amounts.map((amount, index) => {
    const row = rows[index];
    return row == null ? 0 : toBase(row, amount.value);
  });
  const shown = quantity.joined === "beside" ? [values.reduce((sum, value) => sum + value, 0)] : values;
  return shown.map((value) => `${writeNumber(fromBase(to, value))} ${to.name}`).join(" x ");
}

/** A text with every length in one unit. */
export function withLengthsIn(text: string, file: File, unit: string): string {
  const found: Quantity[] = [];
  quantitiesIn(file, found);
  return found
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((changed, quantity) => {
      const by = inUnit(quantity, unit);
      return by === null
        ? changed
        : changed.slice(0, quantity.span.start) + by + changed.slice(quantity.span.end);
    }, text);
}

/** The items of a file in another order; the first two lines stay. */
export function withItemsIn(file: File, order: readonly number[]): string {
  const items = file.items.map((item, index) => ({
    text: printNode(item),
    at: order[index % order.length] ?? 0,
    index,
  }));
  items.sort((a, b) => a.at - b.at || a.index - b.index);
  const head = [file.header, file.title].flatMap((part) => (part === null ? [] : [printNode(part)]));
  return `${[...head, ...items.map(({ text }) => text)].join("\n")}\n`;
}
