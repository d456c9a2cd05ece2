import type { TokenType } from "chevrotain";
import { MAX_DIAGNOSTICS } from "../core/limits.js";
import { placeIn } from "../core/span.js";
import type { ArgsOf, Code } from "../diagnostics/catalogue/index.js";
import { type Extra, finding } from "../diagnostics/create.js";
import type { Fix, Sink } from "../diagnostics/diagnostic.js";
import type { Comment, Token } from "./token.js";

/** The state of one run of the lexer. */
export interface Scan {
  readonly file: string;
  readonly text: string;
  readonly sink: Sink;
  readonly tokens: Token[];
  readonly comments: Comment[];
  /** Brackets open here, as character codes, innermost last. */
  readonly open: number[];
  /** Where each of them stands. */
  readonly openAt: number[];
  /** Where the line at hand starts. */
  lineStart: number;
  /** 0: no number before; 1: right behind a number; 2: behind its first unit word; 3: behind its whole unit. */
  afterNumber: number;
  /** How many mistakes were found; those beyond the cap are counted and not made. */
  found: number;
}

/** Appends a token that reaches from `start` to `end` (exclusive). */
export function emit(
  scan: Scan,
  type: TokenType,
  start: number,
  end: number,
  value: number | string | null = null,
  broken = false,
): void {
  scan.tokens.push({
    image: scan.text.slice(start, end),
    startOffset: start,
    endOffset: end - 1,
    tokenTypeIdx: type.tokenTypeIdx ?? 0,
    tokenType: type,
    value,
    broken,
  });
  scan.afterNumber = 0;
}

/** Reports a finding about the characters from `start` to `end` (exclusive). */
export function report<C extends Code>(
  scan: Scan,
  code: C,
  start: number,
  end: number,
  args: ArgsOf<C>,
  extra: Extra = {},
): void {
  scan.found++;
  // One more than are shown, so that it can be said that there are more.
  if (scan.found <= MAX_DIAGNOSTICS + 1)
    scan.sink(finding(code, placeIn(scan.file, { start, end }), args, extra));
}

/** A fix that puts `text` in place of the characters from `start` to `end`. */
export function replacing(scan: Scan, start: number, end: number, text: string, certain: boolean): Fix {
  const title = text.trim() === "" ? "take it out" : `write \`${text.trim()}\``;
  return { title, certain, edits: [{ place: placeIn(scan.file, { start, end }), text }] };
}

/** The type of the last token, or null at the start. */
export function lastType(scan: Scan): TokenType | null {
  return scan.tokens[scan.tokens.length - 1]?.tokenType ?? null;
}
