import { visibleLine } from "./print-visible.js";
import { cells } from "./print-width.js";

/** One line of a text as it is shown, and the line of marks under it. */
export interface Frame {
  readonly text: string;
  readonly marks: string;
}

const TAB = 4;

interface Piece {
  readonly shown: string;
  readonly at: number;
  readonly cells: number;
}

/** Every character of a line as it is shown: tabs to the next stop of four, hidden characters as `\u{..}`. */
function pieces(line: string): readonly Piece[] {
  const found: Piece[] = [];
  let at = 0;
  let cell = 0;
  for (const character of line) {
    const shown =
      character === "\ufeff" && at === 0
        ? ""
        : character === "\t"
          ? " ".repeat(TAB - (cell % TAB))
          : visibleLine(character);
    const width = cells(shown);
    found.push({ shown, at, cells: width });
    at += character.length;
    cell += width;
  }
  return found;
}

/**
 * Shows one line with the characters from `start` to `end` (UTF-16 offsets in the line) marked by `~`, in at most
 * `width` cells. White space in front is left away unless it is marked itself; a long line is cut at either end
 * with `…`, and the marked place stays in view.
 */
export function frame(line: string, start: number, end: number, width: number): Frame {
  const indent = line.length - line.trimStart().length;
  const all = pieces(line);
  const first = start < indent ? 0 : all.findIndex((piece) => piece.at >= indent);
  let shown = first < 0 ? [] : all.slice(first);
  const total = shown.reduce((sum, piece) => sum + piece.cells, 0);
  let before = "";
  let after = "";
  if (total > width) {
    const lead = Math.max(0, Math.floor(width / 3));
    const target = shown.findIndex((piece) => piece.at >= start);
    let from = target < 0 ? shown.length : target;
    let room = lead;
    while (from > 0 && room >= (shown[from - 1]?.cells ?? 0)) {
      from--;
      room -= shown[from]?.cells ?? 0;
    }
    if (from > 0) before = "…";
    let left = width - before.length - 1;
    let to = from;
    while (to < shown.length && left >= (shown[to]?.cells ?? 0)) {
      left -= shown[to]?.cells ?? 0;
      to++;
    }
    if (to < shown.length) after = "…";
    shown = shown.slice(from, to);
  }
  let offset = before.length;
  let marked = 0;
  for (const piece of shown) {
    if (piece.at < start) offset += piece.cells;
    else if (piece.at < end) marked += piece.cells;
  }
  return {
    text: before + shown.map((piece) => piece.shown).join("") + after,
    marks: " ".repeat(offset) + "~".repeat(Math.max(1, marked)),
  };
}
