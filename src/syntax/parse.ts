import { MAX_DEPTH, MAX_DIAGNOSTICS } from "../core/limits.js";
import type { Source } from "../core/source.js";
import { placeIn } from "../core/span.js";
import { finding } from "../diagnostics/create.js";
import type { Diagnostic, Sink } from "../diagnostics/diagnostic.js";
import { lex } from "../text/lex.js";
import type { Comment, Lexed, Token } from "../text/token.js";
import type { File } from "./ast.js";
import { spanOf } from "./build.js";
import { depthsOf } from "./caps.js";
import { RecipeParser } from "./grammar.js";
import { reportSuspects } from "./suspects.js";
import { checkVersion } from "./version.js";

/** A parsed text. */
export interface Parsed {
  readonly file: File;
  readonly tokens: readonly Token[];
  readonly comments: readonly Comment[];
  /** True when nothing had to be reported as an error: the tree says all that the text says. */
  readonly complete: boolean;
}

const shared: { parser: RecipeParser | null } = { parser: null };

/** The one parser of this process, made on first use. */
export function sharedParser(skipValidations = true): RecipeParser {
  shared.parser ??= new RecipeParser({ skipValidations });
  return shared.parser;
}

/**
 * Reads a text into a syntax tree. Any text gives a tree of what could be understood; the rest is reported to the
 * sink, in the order of the text, at most 100 findings and a note when there are more. Never throws. Takes time
 * proportional to the text.
 *
 * Holes left by mistakes are `damaged` nodes, and blocks that hold a mistake say so.
 */
export function parseFile(source: Source, sink: Sink): Parsed {
  const found: Diagnostic[] = [];
  const collect = (diagnostic: Diagnostic): void => {
    found.push(diagnostic);
  };
  const lexed = lex(source, collect);
  const file = readTokens(source, lexed, found, collect);
  const errors = found.some((diagnostic) => diagnostic.severity === "error");
  for (const diagnostic of inOrder(source, found)) sink(diagnostic);
  return {
    file,
    tokens: lexed.tokens,
    comments: lexed.comments,
    complete: !errors,
  };
}

function readTokens(source: Source, lexed: Lexed, found: readonly Diagnostic[], collect: Sink): File {
  const text = source.text;
  const nothing: File = {
    kind: "file",
    span: { start: 0, end: text.length },
    header: null,
    title: null,
    items: [],
  };
  if (!lexed.whole && lexed.tokens.length === 0) return nothing;
  const lexFaults = found.map((diagnostic) => diagnostic.place.start).sort((a, b) => a - b);
  if (!checkVersion(source.name, text, lexed.tokens, collect)) return nothing;
  const { tooDeep, unbalanced, unpaired } = depthsOf(lexed.tokens);
  const cut = tooDeep >= 0 || !lexed.whole;
  const tokens = tooDeep < 0 ? lexed.tokens : lexed.tokens.slice(0, tooDeep);
  const deep = lexed.tokens[tooDeep];
  if (deep !== undefined)
    collect(
      finding("limit.depth", placeIn(source.name, spanOf(deep)), {
        limit: MAX_DEPTH,
      }),
    );
  const limit = tokens[tokens.length - 1]?.endOffset ?? 0;
  const parserSink: Sink = cut
    ? (diagnostic) => diagnostic.place.end <= limit && collect(diagnostic)
    : collect;
  const run = {
    file: source.name,
    text,
    tokens,
    sink: parserSink,
    lexFaults,
    unbalanced,
    unpaired,
  };
  const { file, suspects } = sharedParser().read(run);
  reportSuspects(source.name, file, suspects, parserSink);
  return file;
}

/** Findings in the order of the text, capped. Those at one place stay in the order in which they were made. */
function inOrder(source: Source, found: readonly Diagnostic[]): readonly Diagnostic[] {
  const sorted = found
    .map((diagnostic, index) => ({ diagnostic, index }))
    .sort((a, b) => a.diagnostic.place.start - b.diagnostic.place.start || a.index - b.index)
    .map((entry) => entry.diagnostic);
  if (sorted.length <= MAX_DIAGNOSTICS) return sorted;
  const shown = sorted.slice(0, MAX_DIAGNOSTICS);
  const place = shown[shown.length - 1]?.place ?? placeIn(source.name, { start: 0, end: 0 });
  return [...shown, finding("limit.findings", place, { limit: MAX_DIAGNOSTICS })];
}
