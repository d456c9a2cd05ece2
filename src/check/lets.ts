import type { Let } from "../syntax/ast.js";
import type { Quantity } from "../units/quantity.js";
import { constant } from "./constant.js";
import { type Context, here, report } from "./context.js";
import { takenNames } from "./places.js";
import { shared } from "./tolerance.js";

/** Takes note of a `let`; a second one of the same name is reported. */
export function declareLet(ctx: Context, statement: Let): void {
  const name = statement.name.text;
  const before = ctx.lets.get(name);
  if (before !== undefined) {
    report(
      ctx,
      "let.twice",
      statement.name.span,
      { name },
      {
        related: [{ place: here(ctx, before.statement.name.span), text: "set first here" }],
      },
    );
    return;
  }
  if (takenNames.has(name)) report(ctx, "name.taken", statement.name.span, { name });
  ctx.lets.set(name, { statement, used: false, state: "waiting", value: null });
}

/** The value of a `let`, worked out when first asked for; "none" where there is no such `let`. */
export function useLet(ctx: Context, name: string): Quantity | null | "none" {
  const entry = ctx.lets.get(name);
  if (entry === undefined) return "none";
  entry.used = true;
  return workOut(ctx, name);
}

function workOut(ctx: Context, name: string): Quantity | null {
  const entry = ctx.lets.get(name);
  if (entry === undefined) return null;
  if (entry.state === "busy") {
    report(ctx, "let.circle", entry.statement.name.span, { name });
    entry.state = "done";
    return null;
  }
  if (entry.state === "waiting") {
    entry.state = "busy";
    const value = constant(ctx, entry.statement.value, { words: "a quantity", example: "5.4 m" });
    if (entry.state === "busy") {
      const { start } = entry.statement.name.span;
      entry.value = value === null ? null : shared(value, `${ctx.file} ${start}`, name);
    }
    entry.state = "done";
  }
  return entry.value;
}

/** Works out every `let` that nothing asked for, so that its mistakes are found, and says so. */
export function finishLets(ctx: Context): void {
  for (const [name, entry] of ctx.lets) {
    if (entry.state === "waiting") workOut(ctx, name);
    if (!entry.used) report(ctx, "let.unused", entry.statement.name.span, { name });
  }
}
