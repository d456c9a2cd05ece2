import { MAX_DIAGNOSTICS } from "../core/limits.js";
import { lineStarts, positionAt, type Source } from "../core/source.js";
import type { Diagnostic, Sink } from "../diagnostics/diagnostic.js";
import type { Recipe } from "../model/types.js";
import type { File } from "../syntax/ast.js";
import { parseFile } from "../syntax/parse.js";
import type { Context } from "./context.js";
import { checkFile } from "./file.js";
import type { CheckKit, Kits } from "./kits/kits.js";
import type { TableLimits } from "./tables/limits.js";

/** A text that was read and checked. */
export interface CheckedText {
  readonly file: File;
  /** The model of everything that could be understood; null where there is no title to go by. */
  readonly recipe: Recipe | null;
  readonly ctx: Context;
}

/** Reads and checks one text; findings go to the sink, also those of the kits that are read for it. */
export function checkText(source: Source, kits: Kits, sink: Sink, limits?: TableLimits): CheckedText {
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
  const { recipe, ctx } = checkFile(parsed.file, source.name, trusted, kits, parsed.complete, limits);
  return { file: parsed.file, recipe, ctx };
}

/** Reads and checks a kit; null where the text calls itself something else. */
export const kitOf: CheckKit = (source, kits, sink) => {
  const { file, ctx } = checkText(source, kits, sink);
  return file.title?.word.text === "kit" ? ctx : null;
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
