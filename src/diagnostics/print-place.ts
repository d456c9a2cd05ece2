import { lineStarts, type Position, positionAt } from "../core/source.js";
import type { Place } from "../core/span.js";

/** Gives the text of a file by the name that places use, or null where there is none to show. */
export type TextOf = (file: string) => string | null;

/** A place as people count, with the lines it touches. */
export interface Located {
  readonly file: string;
  /** Null where the file's text is not at hand: the finding is about the file as a whole. */
  readonly from: { readonly line: number; readonly column: number } | null;
  readonly to: { readonly line: number; readonly column: number } | null;
  /** The first line without its end, and the marked part of it as offsets in the line. */
  readonly line: string;
  readonly start: number;
  readonly end: number;
}

/** The line that starts at an offset, without its end. */
function lineFrom(text: string, start: number): string {
  let end = start;
  while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
  return text.slice(start, end);
}

/** A byte order mark is no column: nobody sees it. */
function withoutMark(position: Position, text: string): Position {
  const marked = position.line === 1 && position.column > 1 && text.charCodeAt(0) === 0xfeff;
  return marked ? { line: 1, column: position.column - 1 } : position;
}

/** Finds lines and columns of a place. Offsets beyond the text are taken to its end. */
export function locate(place: Place, textOf: TextOf): Located {
  const text = textOf(place.file);
  if (text === null) return { file: place.file, from: null, to: null, line: "", start: 0, end: 0 };
  const starts = lineStarts(text);
  const startOffset = Math.min(Math.max(0, place.start), text.length);
  const endOffset = Math.min(Math.max(startOffset, place.end), text.length);
  const from = positionAt(starts, startOffset);
  const to = positionAt(starts, endOffset);
  const line = lineFrom(text, starts[from.line - 1] ?? 0);
  const start = Math.min(from.column - 1, line.length);
  return {
    file: place.file,
    from: withoutMark(from, text),
    to: withoutMark(to, text),
    line,
    start,
    end: to.line === from.line ? Math.min(to.column - 1, line.length) : line.length,
  };
}

/** `plan.light:7:17`, or the file alone. */
export function placeName(located: Located): string {
  return located.from === null ? located.file : `${located.file}:${located.from.line}:${located.from.column}`;
}
