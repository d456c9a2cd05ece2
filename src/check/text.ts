import { MAX_DIAGNOSTICS } from "../core/limits.js";
import { lineStarts, positionAt, type Source } from "../core/source.js";
import type { Diagnostic, Sink } from "../diagnostics/diagnostic.js";
import type { SessionModel } from "../model/session.js";
import type { Recipe } from "../model/types.js";
import type { File } from "../syntax/ast.js";
import { parseFile } from "../syntax/parse.js";
import { changeFile } from "./change/change.js";
import { readSettings } from "./change/settings.js";
import type { Context, Unread } from "./context.js";
import { checkFile } from "./file.js";
import type { CheckKit, Kits } from "./kits/kits.js";
import { type KitLook, kitLook } from "./kits/look.js";
import { checkSession } from "./session/session.js";
import type { TableLimits } from "./tables/limits.js";

/** A text that was read and checked. */
export interface CheckedText {
  /** The tree that was checked: that of the text, with the settings in it. */
  readonly file: File;
  /** The model of everything that could be understood; null where there is no title to go by. */
  readonly recipe: Recipe | null;
  readonly ctx: Context;
  /** What of it could not be read. */
  readonly unread: Unread;
  /** What was measured, with the recipe it belongs to; null for other files, and for a session with errors. */
  readonly session: SessionModel | null;
}

/** What a text is checked with besides its kits. */
export interface Besides {
  readonly tables?: TableLimits;
  /** Values that take the place of the recipe's own, one a line; kits and sessions are left as they are. */
  readonly settings?: Source;
}

/** Reads and checks one text; findings go to the sink, also those of the kits that are read for it. */
export function checkText(source: Source, kits: Kits, sink: Sink, besides: Besides = {}): CheckedText {
  const found: Diagnostic[] = [];
  const parsed = parseFile(source, (diagnostic) => {
    found.push(diagnostic);
    sink(diagnostic);
  });
  const broken = brokenLines(source.text, found);
  const full = found.length > MAX_DIAGNOSTICS;
  const trusted: Sink = (diagnostic) => {
    const elsewhere = diagnostic.place.file !== source.name;
    if (elsewhere || (!full && !broken(diagnostic.place.start))) sink(diagnostic);
  };
  const { settings, tables } = besides;
  const file =
    settings === undefined
      ? parsed.file
      : withSettings(parsed.file, settings, trusted, kitLook(parsed.file, source.name, kits));
  const { recipe, ctx } = checkFile(file, source.name, trusted, kits, parsed.complete, tables);
  const session =
    recipe?.kind === "session" && parsed.complete
      ? checkSession({ ...ctx, sink: trusted }, file, kits, checkText)
      : null;
  const defines = (name: string): boolean =>
    file.items.some((item) => item.kind === "define" && item.block.words.some((word) => word.text === name));
  const unread = { at: broken, name: (name: string) => !parsed.complete || defines(name) };
  return { file, recipe, ctx, unread, session };
}

/** The recipe with values given from outside. Its title says so, and with it every report. */
function withSettings(file: File, settings: Source, sink: Sink, kits: KitLook): File {
  const { title } = file;
  if (title?.word.text !== "recipe") return file;
  const changed = changeFile(file, readSettings(settings, sink), { file: settings.name, sink }, kits);
  const value = `${title.text.value}, with ${settings.text.split("\n").join(", ")}`;
  return { ...changed, title: { ...title, text: { ...title.text, value } } };
}

/** Reads and checks a kit; null where the text calls itself something else. */
export const kitOf: CheckKit = (source, kits, sink) => {
  const { file, ctx, unread } = checkText(source, kits, sink);
  return file.title?.word.text === "kit" ? { ...ctx, unread } : null;
};

/**
 * Tells of an offset whether its line holds a mistake of letters or signs. What the checker says about such a line
 * would mostly follow from that mistake, so it waits until the line can be read.
 */
function brokenLines(text: string, found: readonly Diagnostic[]): (offset: number) => boolean {
  if (found.length === 0) return () => false;
  const starts = lineStarts(text);
  const line = (offset: number): number => positionAt(starts, offset).line;
  const lines = new Set(found.map((diagnostic) => line(diagnostic.place.start)));
  return (offset) => lines.has(line(offset));
}
