import { checkFile } from "./check/recipe.js";
import { MAX_DIAGNOSTICS } from "./core/limits.js";
import { lineStarts, positionAt, type Source } from "./core/source.js";
import { finding } from "./diagnostics/create.js";
import type { Diagnostic, Sink } from "./diagnostics/diagnostic.js";
import type { Recipe } from "./model/types.js";
import type { File } from "./syntax/ast.js";
import { parseFile } from "./syntax/parse.js";

/** The first half of the way: text to syntax to checked model. Loads nothing that computes light. */
export interface Compiled {
  readonly source: Source;
  readonly file: File;
  /** The model of everything that could be understood; null where there is no title to go by. */
  readonly recipe: Recipe | null;
  /** True where no error was found, so that the model means what the text says. */
  readonly sound: boolean;
  /** All findings, in the order of the text. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads and checks one text. Any text whatsoever gives a result; it never throws. */
export function compile(source: Source): Compiled {
  const diagnostics: Diagnostic[] = [];
  const sink: Sink = (diagnostic) => {
    diagnostics.push(diagnostic);
  };
  const parsed = parseFile(source, sink);
  const broken = brokenLines(source.text, diagnostics);
  const full = diagnostics.length > MAX_DIAGNOSTICS;
  const trusted: Sink = (diagnostic) => {
    if (!full && !broken(diagnostic.place.start)) sink(diagnostic);
  };
  const checked = checkFile(parsed.file, source.name, trusted, parsed.complete);
  return {
    source,
    file: parsed.file,
    recipe: checked.recipe,
    sound: diagnostics.every((diagnostic) => diagnostic.severity !== "error"),
    diagnostics: capped(source.name, sortDiagnostics(diagnostics)),
  };
}

/** At most 100 findings, and a note where there were more; the parser's own cap has its note already. */
function capped(file: string, sorted: readonly Diagnostic[]): readonly Diagnostic[] {
  const last = sorted[MAX_DIAGNOSTICS - 1];
  if (last === undefined || sorted.length <= MAX_DIAGNOSTICS) return sorted;
  if (sorted.some((diagnostic) => diagnostic.code === "limit.findings")) return sorted;
  const more = finding("limit.findings", { ...last.place, file }, { limit: MAX_DIAGNOSTICS });
  return [...sorted.slice(0, MAX_DIAGNOSTICS), more];
}

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

/** Findings in the order of the text; those at one place stay in the order in which they were made. */
export function sortDiagnostics(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return diagnostics
    .map((diagnostic, index) => ({ diagnostic, index }))
    .sort((a, b) => a.diagnostic.place.start - b.diagnostic.place.start || a.index - b.index)
    .map((entry) => entry.diagnostic);
}
