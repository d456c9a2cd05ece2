import { printNode } from "../format/print-node.js";
import type { LaterStatement } from "../model/types.js";
import type { Item } from "../syntax/ast.js";
import { type Context, here, report } from "./context.js";

/** Keeps a statement that a later version evaluates, and says so. */
export function keepForLater(ctx: Context, item: Item): LaterStatement | null {
  const kept = describe(item);
  if (kept === null) return null;
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
