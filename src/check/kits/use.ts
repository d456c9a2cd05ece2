import { writeName } from "../../model/make/points.js";
import type { Name, Use } from "../../syntax/ast.js";
import { type Context, here, replace, report } from "../context.js";
import { nearNames, suggestion } from "../suggest.js";
import type { Kits } from "./kits.js";

/** Brings the definitions that a `use` names into the file that says it. */
export function bringIn(ctx: Context, statement: Use, kits: Kits): void {
  const kit = kits.open(ctx, statement.from);
  for (const name of statement.names) {
    if (kit === null) {
      ctx.missing.add(name.text);
      continue;
    }
    const entry = kit.definitions.get(name.text);
    const before = ctx.definitions.get(name.text);
    if (entry === undefined || entry.home !== null) {
      // A kit with errors may define it in what could not be read; then only the error is said.
      const unread =
        kit.missing.has(name.text) || (entry === undefined && kit.unread?.name(name.text) === true);
      const meant = unread ? [] : unknown(ctx, statement, name, kit);
      for (const word of [name.text, ...meant]) ctx.missing.add(word);
    } else if (before !== undefined) {
      const related = [{ place: before.place, text: "brought in first here" }];
      report(ctx, "use.twice", name.span, { name: name.text }, { related });
    } else {
      const place = here(ctx, name.span);
      ctx.definitions.set(name.text, { ...entry, place, home: kit, used: false });
    }
  }
}

/** Reports a name that the kit does not define. Gives the names that may have been meant. */
function unknown(ctx: Context, statement: Use, name: Name, kit: Context): readonly string[] {
  const own = [...kit.definitions.values()].filter((entry) => entry.home === null);
  const known = own.map((entry) => writeName(entry.name));
  const near = nearNames(name.text, known);
  report(
    ctx,
    "use.unknown",
    name.span,
    { path: statement.from.value, name: name.text, known: remedy(name.text, kit, near, known) },
    { fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, name.span, candidate)) },
  );
  return near;
}

function remedy(name: string, kit: Context, near: readonly string[], known: readonly string[]): string {
  const there = kit.definitions.get(name)?.home;
  if (there !== undefined && there !== null)
    return `That kit takes it from ${there.file}: use it from there.`;
  if (kit.lets.has(name)) return "It is a `let` there, and only definitions can be used.";
  return suggestion(near, known, "Nothing is defined there.");
}
