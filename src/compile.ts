import { checkFile } from "./check/recipe.js";
import type { Source } from "./core/source.js";
import type { Diagnostic } from "./diagnostics/diagnostic.js";
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
  const sink = (diagnostic: Diagnostic): void => {
    diagnostics.push(diagnostic);
  };
  const parsed = parseFile(source, sink);
  const checked = checkFile(parsed.file, source.name, sink);
  return {
    source,
    file: parsed.file,
    recipe: checked.recipe,
    sound: diagnostics.every((diagnostic) => diagnostic.severity !== "error"),
    diagnostics: sortDiagnostics(diagnostics),
  };
}

/** Findings in the order of the text; those at one place stay in the order in which they were made. */
export function sortDiagnostics(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  return diagnostics
    .map((diagnostic, index) => ({ diagnostic, index }))
    .sort((a, b) => a.diagnostic.place.start - b.diagnostic.place.start || a.index - b.index)
    .map((entry) => entry.diagnostic);
}
