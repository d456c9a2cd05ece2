import type { Define } from "../syntax/ast.js";
import { blockRow, definableKinds } from "../vocabulary/index.js";
import { exampleName } from "./block.js";
import { type Context, here, report } from "./context.js";
import { aKind } from "./words.js";

/** Takes note of a definition; one of a name that is taken is reported. */
export function declareDefinition(ctx: Context, statement: Define): void {
  const [kind, name] = statement.block.words;
  if (kind === undefined) return;
  const row = blockRow(kind.text);
  if (row === null) return; // said when the block itself is checked
  if (!(definableKinds as readonly string[]).includes(kind.text)) {
    report(ctx, "define.kind", kind.span, { kind: aKind(kind.text), kinds: definableKinds.join(", ") });
    return;
  }
  if (name === undefined) {
    report(ctx, "block.name-missing", kind.span, {
      kind: `define ${kind.text}`,
      example: kind.text === "light" ? "strobe" : exampleName(kind.text),
    });
    return;
  }
  if (name.text.includes(".")) report(ctx, "name.point", name.span, { name: name.text });
  const before = ctx.definitions.get(name.text);
  if (before !== undefined) {
    const brought = before.home !== null;
    const related = [{ place: before.place, text: brought ? "brought in here" : "defined first here" }];
    report(ctx, brought ? "use.twice" : "define.twice", name.span, { name: name.text }, { related });
    return;
  }
  const place = here(ctx, name.span);
  ctx.definitions.set(name.text, {
    statement,
    kind: kind.text,
    name: name.text,
    place,
    home: null,
    used: false,
  });
}
