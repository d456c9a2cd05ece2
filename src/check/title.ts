import type { Span } from "../core/span.js";
import type { Recipe } from "../model/types.js";
import type { File } from "../syntax/ast.js";
import { type Context, replace, report } from "./context.js";
import { nearNames } from "./suggest.js";

/** The kind of file and its title. */
export interface CheckedTitle {
  readonly kind: Recipe["kind"];
  readonly text: string;
  readonly of: string | null;
  readonly variant: string | null;
  readonly span: Span;
}

const words = ["recipe", "kit", "session"] as const;

/** Checks the line that says what the file is. Null after a finding. */
export function checkTitle(ctx: Context, file: File, whole: boolean): CheckedTitle | null {
  const title = file.title;
  if (title === null) {
    // A file of a newer version, or one that is too large, has not been read at all.
    if (!whole && file.header === null && file.items.length === 0) return null;
    const start = file.header?.span.end ?? file.span.start;
    report(ctx, "title.missing", { start, end: start }, {});
    return null;
  }
  const word = words.find((candidate) => candidate === title.word.text);
  if (word === undefined) {
    const near = nearNames(title.word.text, words);
    report(
      ctx,
      "title.word",
      title.word.span,
      { word: title.word.text },
      {
        fixes: near.map((name) => replace(ctx, `write \`${name}\``, title.word.span, name)),
      },
    );
    return null;
  }
  if ((word === "session") !== (title.of !== null)) report(ctx, "title.session", title.span, {});
  const { text, of, variant, span } = title;
  if (variant !== undefined && of === null && word !== "session") report(ctx, "title.session", span, {});
  return { kind: word, text: text.value, of: of?.value ?? null, variant: variant?.value ?? null, span };
}
