/** A stretch of text: UTF-16 offsets from the start of the file, `end` exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A stretch of text in a named file. `file` is the name the reader gave, for example `plan.light`. */
export interface Place extends Span {
  readonly file: string;
}

/** The smallest span that holds both. */
export function cover(a: Span, b: Span): Span {
  return { start: Math.min(a.start, b.start), end: Math.max(a.end, b.end) };
}

/** Puts a file's name on a span. */
export function placeIn(file: string, span: Span): Place {
  return { file, start: span.start, end: span.end };
}
