import type { TokenType } from "chevrotain";
import {
  By,
  Degree,
  FNumber,
  GreaterEqual,
  LessEqual,
  Minus,
  NewLine,
  PlusMinus,
  TextBlock,
} from "../text/kinds.js";
import type { Comment, Token } from "../text/token.js";
import type { Hints } from "./hints.js";

/** One thing that is written: a token in its usual spelling, or a comment. */
export interface Piece {
  readonly text: string;
  /** Null for a comment. */
  readonly type: TokenType | null;
  readonly start: number;
  readonly end: number;
  /** Line ends between this piece and the one before it, at most two. */
  readonly breaks: number;
  /** Whether its own text holds a line end. */
  readonly tall: boolean;
}

/** Gives a unit's usual spelling, or null for a word that is no unit. */
export type CanonicalUnit = (text: string) => string | null;

/** Tokens and comments in the order of the text, in their usual spelling. Line ends are counted, not kept. */
export function piecesOf(
  text: string,
  tokens: readonly Token[],
  comments: readonly Comment[],
  hints: Hints,
  canonicalUnit: CanonicalUnit,
): readonly Piece[] {
  const pieces: Piece[] = [];
  let last = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let nextComment = 0;
  const add = (shown: string, type: TokenType | null, start: number, end: number): void => {
    pieces.push({
      text: shown,
      type,
      start,
      end,
      breaks: breaksIn(text, last, start),
      tall: shown.includes("\n"),
    });
    last = end;
  };
  const addComments = (before: number): void => {
    for (; ; nextComment++) {
      const comment = comments[nextComment];
      if (comment === undefined || comment.startOffset >= before) return;
      add(commentText(comment.image), null, comment.startOffset, comment.endOffset + 1);
    }
  };
  for (const token of tokens) {
    if (token.tokenType === NewLine || token.startOffset < last) continue;
    addComments(token.startOffset);
    const unit = hints.units.get(token.startOffset);
    if (unit === undefined) add(spelling(token), token.tokenType, token.startOffset, token.endOffset + 1);
    else add(unitText(unit.text, canonicalUnit), token.tokenType, unit.span.start, unit.span.end);
  }
  addComments(text.length + 1);
  return pieces;
}

/** A unit in its usual spelling. */
export function unitText(text: string, canonicalUnit: CanonicalUnit): string {
  return canonicalUnit(text) ?? (text === "°" ? "deg" : text);
}

function breaksIn(text: string, start: number, end: number): number {
  let count = 0;
  for (let at = start; at < end && count < 2; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) count++;
  }
  return count;
}

function commentText(image: string): string {
  const text = image.slice(1).trimEnd();
  return text === "" || /^[\s#!]/.test(text) ? `#${text}` : `# ${text}`;
}

function spelling(token: Token): string {
  switch (token.tokenType) {
    case FNumber:
      return `f/${token.image.slice(2)}`;
    case By:
      return "x";
    case Minus:
      return "-";
    case PlusMinus:
      return "+-";
    case LessEqual:
      return "<=";
    case GreaterEqual:
      return ">=";
    case Degree:
      return "deg";
    case TextBlock:
      return token.image.replaceAll(/\r\n?/g, "\n");
    default:
      return token.image;
  }
}
