import { quote } from "../../core/quote.js";
import type { Source } from "../../core/source.js";
import type { Diagnostic, Sink } from "../../diagnostics/diagnostic.js";
import type { SessionModel } from "../../model/session.js";
import type { Recipe } from "../../model/types.js";
import type { Block, Entry, File, Item, Measured, Reading, TextLiteral, Variant } from "../../syntax/ast.js";
import { parseFile } from "../../syntax/parse.js";
import { changeFile } from "../change/change.js";
import { placed } from "../change/settings.js";
import { type Context, here, replace, report } from "../context.js";
import type { Kits } from "../kits/kits.js";
import { kitLook } from "../kits/look.js";
import { checkSetUp } from "../recipe.js";
import { nearNames, suggestion } from "../suggest.js";
import { fileOfVariant } from "../variants/check.js";
import { changesOf, withoutRepeats } from "../variants/repeats.js";
import { checkReadings } from "./readings.js";

/** A recipe that was read for a session: its tree and its model. */
export interface ReadRecipe {
  readonly file: File;
  readonly recipe: Recipe | null;
}

/** Reads and checks one text as it is checked by itself. */
export type CheckText = (source: Source, kits: Kits, sink: Sink) => ReadRecipe;

/** What belongs to a recipe and to no set-up of a day. */
const elsewhere: ReadonlySet<Item["kind"]> = new Set(["table", "variant", "solve", "measured", "expect"]);

/**
 * Checks a session: reads the recipe it belongs to, puts what was measured into it as another set-up, and checks the
 * readings by the names of that set-up. Null after an error.
 */
export function checkSession(
  ctx: Context,
  file: File,
  kits: Kits,
  checkText: CheckText,
): SessionModel | null {
  let sound = true;
  const to: Context = {
    ...ctx,
    sink: (diagnostic) => {
      if (diagnostic.severity === "error") sound = false;
      ctx.sink(diagnostic);
    },
  };
  const { title } = file;
  if (title === null || title.of === null) return null;
  for (const item of file.items) checkPlaced(to, item);
  const lines = file.items.filter((item) => item.kind === "measured").flatMap((item) => item.lines);
  if (lines.every((line) => line.kind !== "reading"))
    report(to, "session.empty", title.text.span, { title: title.text.value });
  const opened = kits.recipe(to, title.of);
  if (opened === null) return null;
  const { source } = opened;
  if (titleWord(source) !== "recipe") {
    report(to, "session.no-recipe", title.of.span, { path: title.of.value });
    return null;
  }
  const told = { place: here(to, title.of.span), text: "read for this session" };
  const read = checkText(source, opened.kits, (diagnostic) => {
    if (diagnostic.severity === "error") to.sink(withLabel(diagnostic, told));
  });
  if (read.recipe === null || !sound) return null;
  const planned = plannedSetUp(to, { ...read, recipe: read.recipe }, source.name, opened.kits, title.variant);
  if (planned === null) return null;
  const entries = lines.filter((line): line is Entry => line.kind !== "reading");
  const built = builtSetUp(to, planned.file, source.name, opened.kits, placed(entries, inFile(to)));
  if (built === null || !sound) return null;
  const readings = checkReadings({ ...built.ctx, file: to.file, sink: to.sink }, readingsOf(lines));
  if (!sound) return null;
  return {
    title: title.text.value,
    of: title.of.value,
    variant: title.variant?.value ?? null,
    plan: { ...planned.recipe, later: [] },
    built: built.recipe,
    readings,
  };
}

/** The recipe, or its variant by that title, as a whole set-up. Null after a finding. */
function plannedSetUp(
  to: Context,
  { file, recipe }: { readonly file: File; readonly recipe: Recipe },
  name: string,
  kits: Kits,
  wanted: TextLiteral | undefined,
): { readonly file: File; readonly recipe: Recipe } | null {
  if (wanted === undefined) return { file, recipe };
  const variant = recipe.variants.find(({ title }) => title === wanted.value);
  const changed = variant === undefined ? null : fileOfVariant(file, wanted.value, name, kits);
  if (variant !== undefined && changed !== null) return { file: changed, recipe: variant.recipe };
  const titles = recipe.variants.map(({ title }) => title);
  const near = nearNames(wanted.value, titles);
  const known = suggestion(near.map(quote), titles.map(quote), "It has no variants.");
  report(
    to,
    "session.variant",
    wanted.span,
    { title: wanted.value, known },
    { fixes: near.map((title) => replace(to, `write ${quote(title)}`, wanted.span, quote(title))) },
  );
  return null;
}

const readingsOf = (lines: Measured["lines"]): readonly Reading[] =>
  lines.filter((line): line is Reading => line.kind === "reading");

const inFile =
  (to: Context) =>
  (span: { readonly start: number; readonly end: number }): ReturnType<typeof here> =>
    here(to, span);

/** The word that a file's title begins with; null without a title. Says nothing about the text. */
const titleWord = (source: Source): string | null =>
  parseFile(source, () => undefined).file.title?.word.text ?? null;

/** Refuses statements that have no meaning among the measurements of a day; blocks, tables and variants have been. */
function checkPlaced(to: Context, { kind, span }: Item): void {
  if (["block", "measured", "table", "variant"].includes(kind)) return;
  report(to, "session.placed", { start: span.start, end: span.start + kind.length }, { what: kind });
}

/** The recipe with what was measured in the place of what was planned. Null where it has no meaning. */
function builtSetUp(
  to: Context,
  file: File,
  name: string,
  kits: Kits,
  entries: readonly Entry[],
): { readonly recipe: Recipe; readonly ctx: Context } | null {
  const base = { ...file, items: file.items.filter((item) => !elsewhere.has(item.kind)) };
  const lines = withoutRepeats(to, base, asVariant(entries));
  const changed = changeFile(base, changesOf(lines), to, kitLook(file, name, kits));
  const measured = {
    place: here(to, entries[0]?.span ?? { start: 0, end: 0 }),
    text: "with what is measured here",
  };
  const { recipe, ctx } = checkSetUp(
    changed,
    name,
    (diagnostic) => {
      if (diagnostic.place.file === to.file) to.sink(diagnostic);
      else if (diagnostic.severity === "error") to.sink(withLabel(diagnostic, measured));
    },
    kits,
    true,
  );
  return recipe === null ? null : { recipe: { ...recipe, later: [] }, ctx };
}

/** The lines of a day as those of a variant, which are put into a recipe in the same way. */
const asVariant = (entries: readonly (Block | Entry)[]): Variant => ({
  kind: "variant",
  span: { start: 0, end: 0 },
  title: { kind: "text", span: { start: 0, end: 0 }, value: "", block: false },
  from: null,
  lines: entries,
});

const withLabel = (diagnostic: Diagnostic, label: Diagnostic["related"][number]): Diagnostic => ({
  ...diagnostic,
  related: [...diagnostic.related, label],
});
