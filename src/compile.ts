import type { ReadPhoto } from "./check/kits/files.js";
import { shelf } from "./check/kits/kits.js";
import type { ReadKit } from "./check/kits/read.js";
import type { TableLimits } from "./check/tables/limits.js";
import { type RowSetUp, setUpOfRow } from "./check/tables/row.js";
import { checkText, kitOf } from "./check/text.js";
import { MAX_DIAGNOSTICS } from "./core/limits.js";
import type { Source } from "./core/source.js";
import { finding } from "./diagnostics/create.js";
import type { Diagnostic, Sink } from "./diagnostics/diagnostic.js";
import type { SessionModel } from "./model/session.js";
import type { TableModel } from "./model/tables/types.js";
import type { Recipe } from "./model/types.js";
import type { File } from "./syntax/ast.js";

/** The first half of the way: text to syntax to checked model. Loads nothing that computes light. */
export interface Compiled {
  readonly source: Source;
  readonly file: File;
  /** The model of everything that could be understood; null where there is no title to go by. */
  readonly recipe: Recipe | null;
  /** What a session measured, with the recipe it belongs to; null for other texts, and for a session with errors. */
  readonly session: SessionModel | null;
  /** The text itself, then the settings given with it and all kits that were read; findings may stand in any of them. */
  readonly sources: readonly Source[];
  /** True where no error was found, so that the model means what the text says. */
  readonly sound: boolean;
  /** All findings, in the order of the texts. */
  readonly diagnostics: readonly Diagnostic[];
  /** The set-up of a row of a table whose rows are checked as text. */
  readonly rowSetUp: (table: TableModel, indices: readonly number[]) => RowSetUp;
}

/** What else there is to a text. */
export interface CompileOptions {
  /** Reads the kits that the text names by `use`; without it a `use` is an error. */
  readonly read?: ReadKit;
  /** Reads the settings of the photograph that a camera names; without it a note says that they are not read. */
  readonly readPhoto?: ReadPhoto;
  /** How large its tables may be; without it 10,000 rows and 100,000 cells. */
  readonly tables?: TableLimits;
  /**
   * Values that take the place of the recipe's own, one a line: `key.distance=3 m`. They are read and checked like the
   * lines of a variant; findings about them stand in this text. A kit or a session is left as it is.
   */
  readonly settings?: Source;
}

/**
 * Reads and checks one text, and the kits it uses. Any text whatsoever gives a result; it never throws, unless the
 * given reader does.
 */
export function compile(source: Source, options: CompileOptions = {}): Compiled {
  const diagnostics: Diagnostic[] = [];
  const sink: Sink = (diagnostic) => {
    diagnostics.push(diagnostic);
  };
  const kits = shelf(options.read ?? null, kitOf, options.readPhoto ?? null);
  const own = kits.from([source.name]);
  const { file, recipe, session } = checkText(source, own, sink, options);
  const given = options.settings === undefined ? [] : [options.settings];
  const sources = [source, ...given, ...kits.sources];
  return {
    source,
    file,
    recipe,
    session,
    sources,
    sound: diagnostics.every((diagnostic) => diagnostic.severity !== "error"),
    diagnostics: capped(source.name, sortDiagnostics(diagnostics, sources)),
    rowSetUp: (table, indices) => setUpOfRow({ file, name: source.name, kits: own }, table, indices),
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
 * Findings in the order of the texts: the first text's first, and in each text by their place. Those at one place stay
 * in the order in which they were made.
 */
export function sortDiagnostics(
  diagnostics: readonly Diagnostic[],
  sources: readonly Source[] = [],
): readonly Diagnostic[] {
  const ranks = new Map(sources.map(({ name }, index) => [name, index]));
  const rank = ({ place }: Diagnostic): number => ranks.get(place.file) ?? 0;
  return diagnostics
    .map((diagnostic, index) => ({ diagnostic, index }))
    .sort(
      (a, b) =>
        rank(a.diagnostic) - rank(b.diagnostic) ||
        a.diagnostic.place.start - b.diagnostic.place.start ||
        a.index - b.index,
    )
    .map((entry) => entry.diagnostic);
}
