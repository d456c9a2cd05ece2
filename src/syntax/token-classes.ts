import { EOF, type TokenType } from "chevrotain";
import * as kinds from "../text/kinds.js";

const STOP = 1;
const LITERAL = 2;
const JOINING = 4;
const WORD = 8;
const OPERATOR = 16;

/** A row of flags for every token type, so that the parser's questions cost one look-up. */
const flags = new Uint8Array(512);

function mark(flag: number, types: readonly TokenType[]): void {
  for (const type of types) {
    const index = type.tokenTypeIdx ?? 0;
    flags[index] = (flags[index] ?? 0) | flag;
  }
}

mark(STOP, [kinds.NewLine, kinds.Comma, kinds.CloseBrace, kinds.CloseRound, kinds.CloseSquare, EOF]);
mark(LITERAL, [kinds.Numeral, kinds.Fraction, kinds.FNumber, kinds.Ratio, kinds.Broken]);
mark(JOINING, [
  kinds.FromWord,
  kinds.UnderWord,
  kinds.OverWord,
  kinds.IsWord,
  kinds.WithinWord,
  kinds.BetweenWord,
  kinds.AndWord,
  kinds.BecauseWord,
  kinds.ByWord,
  kinds.ToWord,
]);
mark(WORD, [kinds.Quoted, kinds.Name, ...kinds.keywords.values()]);
mark(OPERATOR, [kinds.Plus, kinds.Minus, kinds.Times, kinds.Slash]);

interface Typed {
  readonly tokenTypeIdx: number;
}

/** Ends a value: a line end, a comma, a closing bracket, the end of the text. */
export function isEnd(token: Typed): boolean {
  return ((flags[token.tokenTypeIdx] ?? 0) & STOP) !== 0;
}

/** A value by itself: a number in any form, or one that could not be read. */
export function isLiteral(token: Typed): boolean {
  return ((flags[token.tokenTypeIdx] ?? 0) & LITERAL) !== 0;
}

/** A word that joins two values; a value is missing where one of them stands with a value behind it. */
export function isJoining(token: Typed): boolean {
  return ((flags[token.tokenTypeIdx] ?? 0) & JOINING) !== 0;
}

/** A name, a name in backticks or a word of the language: whatever can be a name. */
export function isWord(token: Typed | undefined): boolean {
  return token !== undefined && ((flags[token.tokenTypeIdx] ?? 0) & WORD) !== 0;
}

/** Plus, minus, times or slash. */
export function isOperator(token: Typed): boolean {
  return ((flags[token.tokenTypeIdx] ?? 0) & OPERATOR) !== 0;
}
