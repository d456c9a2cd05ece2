import { EOF, type TokenType } from "chevrotain";
import {
  Broken,
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  Dot,
  DoubleEquals,
  Equals,
  IsWord,
  LikeWord,
  NewLine,
  OpenBrace,
  OpenRound,
  OpenSquare,
  Text,
  WithWord,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";
import { isWord } from "./token-classes.js";

/** What a line that starts with a word is, seen from its signs alone. */
export type LineKind = "setting" | "block" | "reading" | "title" | "titled" | "word" | "unclear";

/** Index behind a path `a.b.c` that starts at `from`. */
export function pathEnd(tokens: readonly Token[], from: number): number {
  let index = from + 1;
  while (tokens[index]?.tokenType === Dot && isWord(tokens[index + 1])) index += 2;
  return index;
}

/** Whether the line stops at this token. */
export function isStop(token: Token | undefined): boolean {
  if (token === undefined) return true;
  const type = token.tokenType;
  return type === NewLine || type === Comma || type === CloseBrace || type === EOF;
}

/**
 * Looks along a line that starts with a word at `from`, without reading it:
 * `a.b:` is a setting (also with a wrong sign, or none, for the colon), `a b {` a block, `a.b(...) is` a reading,
 * `a "..."` a title, a word (or two) alone `word`. Each token of a line is looked at once.
 */
export function classify(tokens: readonly Token[], from: number): LineKind {
  let index = pathEnd(tokens, from);
  const type = tokens[index]?.tokenType;
  if (type === Colon || type === Equals || type === DoubleEquals) {
    return tokens[index + 1]?.tokenType === OpenBrace ? "block" : "setting";
  }
  if (type === OpenBrace) return "block";
  if (type === Text) {
    if (index === from + 1) return tokens[index + 1]?.tokenType === OpenBrace ? "titled" : "title";
    return hasBraceBefore(tokens, index) ? "block" : "setting";
  }
  if (type === OpenRound) return "reading";
  if (type === WithWord && isWord(tokens[index + 1]) && isColon(tokens[index + 2]?.tokenType))
    return "setting";
  if (isStop(tokens[index])) return opensBelow(tokens, index) ? "block" : "word";
  if (!isWord(tokens[index])) {
    if (type === Broken) return "unclear";
    if (type === Dot) return "setting";
    return hasBraceBefore(tokens, index) ? "block" : "setting";
  }
  const second = type;
  let like = false;
  let words = 1;
  while (isWord(tokens[index])) {
    if (tokens[index]?.tokenType === LikeWord && isWord(tokens[index + 1])) like = true;
    words++;
    index++;
  }
  const behind = tokens[index]?.tokenType;
  if (behind === OpenBrace || like) return "block";
  if (isStop(tokens[index])) {
    if (opensBelow(tokens, index)) return "block";
    if (second === IsWord) return "reading";
    return words === 2 ? "word" : "unclear";
  }
  if (behind === Colon) return tokens[index + 1]?.tokenType === OpenBrace ? "block" : "setting";
  if (second === IsWord) return "reading";
  if (second === WithWord) return "block";
  if (hasBraceBefore(tokens, index)) return "block";
  return "setting";
}

function isColon(type: TokenType | undefined): boolean {
  return type === Colon || type === Equals;
}

/** Whether a line of `measured` that starts at `from` is a reading: no setting, no block, and an `is` in it. */
export function isReading(tokens: readonly Token[], from: number): boolean {
  const kind = classify(tokens, from);
  if (kind === "reading") return true;
  if (kind !== "setting" || isColon(tokens[pathEnd(tokens, from)]?.tokenType)) return false;
  let depth = 0;
  for (let index = from; index < tokens.length; index++) {
    const type = tokens[index]?.tokenType;
    if (type === OpenRound || type === OpenSquare) depth++;
    else if (type === CloseRound || type === CloseSquare) depth--;
    else if (type === IsWord && depth === 0) return true;
    else if (type === Colon && depth === 0) return false;
    else if (isStop(tokens[index]) && (type !== Comma || depth <= 0)) return false;
  }
  return false;
}

/** Whether a line end at `index` is followed by a brace: a block whose brace slipped to the next line. */
export function opensBelow(tokens: readonly Token[], index: number): boolean {
  return tokens[index]?.tokenType === NewLine && tokens[index + 1]?.tokenType === OpenBrace;
}

/** Whether the rest of the line ends with an opening brace: the head of a block with a mistake in it. */
export function hasBraceBefore(tokens: readonly Token[], from: number): boolean {
  for (let index = from; index < tokens.length; index++) {
    const type = tokens[index]?.tokenType;
    if (type === OpenBrace) return true;
    if (type === NewLine || type === CloseBrace || type === Comma || type === Colon) return false;
  }
  return false;
}
