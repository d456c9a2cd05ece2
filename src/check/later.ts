import { printNode } from "../format/print-node.js";
import type { LaterStatement, Recipe } from "../model/types.js";
import type { Item } from "../syntax/ast.js";
import { type Context, here, report } from "./context.js";

/** Keeps a statement that is no part of a set-up: one that a later version evaluates, and the measurements of a day. */
export function keepForLater(ctx: Context, item: Item, kind: Recipe["kind"]): LaterStatement | null {
  const kept = describe(item);
  if (kept === null) return null;
  if (item.kind === "measured") {
    const word = { start: item.span.start, end: item.span.start + item.kind.length };
    if (kind !== "session") report(ctx, "measured.placed", word, { kind });
    return { ...kept, written: printNode(item), origin: here(ctx, item.span) };
  }
  report(ctx, "statement.later", item.span, {
    statement: kept.title === null ? kept.statement : `${kept.statement} "${kept.title}"`,
  });
  return { ...kept, written: printNode(item), origin: here(ctx, item.span) };
}

function describe(
  item: Item,
): { readonly statement: LaterStatement["statement"]; readonly title: string | null } | null {
  switch (item.kind) {
    case "solve":
      return { statement: "solve", title: item.title?.value ?? null };
    case "measured":
      return { statement: item.kind, title: null };
    default:
      return null;
  }
}
