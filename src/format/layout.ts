import type { TokenType } from "chevrotain";
import {
  CloseBrace,
  CloseRound,
  CloseSquare,
  Colon,
  Comma,
  Dot,
  Minus,
  OpenBrace,
  OpenRound,
  OpenSquare,
} from "../text/kinds.js";
import type { Hints } from "./hints.js";
import type { Piece } from "./pieces.js";

/** A bracket that is open while the layout goes on. */
interface Level {
  readonly close: TokenType;
  /** Whether what it holds stands on lines of its own. */
  readonly broken: boolean;
  /** Whether it is a brace. */
  readonly brace: boolean;
}

/** Writes pieces as text: two blanks for each level, one blank between tokens, the author's lines kept. */
export function layOut(pieces: readonly Piece[], hints: Hints): string {
  const broken = brokenOnes(pieces);
  const levels: Level[] = [];
  const out: string[] = [];
  let before: Piece | null = null;
  let depth = 0;
  let span = 0;
  for (let index = 0; index < pieces.length; index++) {
    const piece = pieces[index];
    if (piece === undefined) continue;
    while ((hints.spans[span]?.[1] ?? Number.POSITIVE_INFINITY) <= piece.start) span++;
    const goesOn = (hints.spans[span]?.[0] ?? Number.POSITIVE_INFINITY) < piece.start;
    const level = levels[levels.length - 1];
    if (piece.type === Comma && isNeedless(pieces, index, level, goesOn)) continue;
    const closes = level !== undefined && piece.type === level.close;
    if (closes) {
      levels.pop();
      if (level.broken) depth--;
    }
    if (before !== null) {
      const lines = linesBetween(before, piece, level, closes);
      const hang = goesOn && !closes && level?.brace !== false ? 1 : 0;
      if (lines > 0) out.push("\n".repeat(lines), "  ".repeat(depth + hang));
      else out.push(gapBetween(before, piece, hints));
    }
    out.push(piece.text);
    const opened = openedBy(piece, broken.has(index));
    if (opened !== null) {
      levels.push(opened);
      if (opened.broken) depth++;
    }
    before = piece;
  }
  return before === null ? "" : `${out.join("")}\n`;
}

/** Indices of opening brackets with a line end anywhere between them and their partners. */
function brokenOnes(pieces: readonly Piece[]): ReadonlySet<number> {
  const broken = new Set<number>();
  const open: number[] = [];
  pieces.forEach((piece, index) => {
    const { type } = piece;
    if (piece.breaks > 0 || piece.tall || piece.type === null) for (const each of open) broken.add(each);
    if (type === CloseBrace || type === CloseRound || type === CloseSquare) {
      const opener = open.pop();
      if (opener === index - 1) broken.delete(opener);
    } else if (type === OpenBrace || type === OpenRound || type === OpenSquare) open.push(index);
  });
  return broken;
}

function openedBy(piece: Piece, broken: boolean): Level | null {
  switch (piece.type) {
    case OpenBrace:
      return { close: CloseBrace, broken, brace: true };
    case OpenRound:
      return { close: CloseRound, broken, brace: false };
    case OpenSquare:
      return { close: CloseSquare, broken, brace: false };
    default:
      return null;
  }
}

/** A comma at the end of a line of a block, or before a closing bracket on its line, says nothing. */
function isNeedless(
  pieces: readonly Piece[],
  index: number,
  level: Level | undefined,
  goesOn: boolean,
): boolean {
  let next = index + 1;
  let breaks = 0;
  for (; next < pieces.length; next++) {
    breaks += pieces[next]?.breaks ?? 0;
    if (pieces[next]?.type !== null) break;
  }
  const after = pieces[next]?.type;
  if (after === CloseRound || after === CloseSquare) return breaks === 0;
  if (after === CloseBrace) return true;
  return level?.brace === true && breaks > 0 && !goesOn;
}

/** Line ends between two pieces: 0, 1, or 2 for an empty line. */
function linesBetween(before: Piece, piece: Piece, level: Level | undefined, closes: boolean): number {
  const afterOpening = before.type === OpenBrace || before.type === OpenRound || before.type === OpenSquare;
  if (afterOpening && closes) return 0;
  if (before.type === null) return closes || piece.breaks < 2 ? 1 : 2;
  if (piece.type === null && piece.breaks === 0) return 0;
  const edge = level?.brace === true && level.broken && (closes || before.type === OpenBrace);
  if (edge) return 1;
  if (closes || afterOpening) return Math.min(piece.breaks, 1);
  return piece.breaks;
}

/** What stands between two pieces on one line. */
function gapBetween(before: Piece, piece: Piece, hints: Hints): string {
  if (piece.type === null) return "  ";
  const left = before.type;
  const right = piece.type;
  if (left === OpenBrace && right === CloseBrace) return "";
  if (right === Comma || right === Colon || right === Dot || left === Dot) return "";
  if (right === CloseRound || right === CloseSquare || left === OpenRound || left === OpenSquare) return "";
  if (right === OpenRound && hints.callEnds.has(before.end)) return "";
  if (left === Minus && hints.negations.has(before.start)) return "";
  return " ";
}
