/** One text to be read, with the name it is reported under. */
export interface Source {
  readonly name: string;
  readonly text: string;
}

/** A position as people count: line and column from 1, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Offsets at which lines start; line ends are `\n`, `\r\n` and `\r`. */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 13 && text.charCodeAt(i + 1) === 10) i++;
    if (c === 10 || c === 13) starts.push(i + 1);
  }
  return starts;
}

/** Line and column of an offset; offsets beyond the text are taken to its end by the caller. */
export function positionAt(starts: readonly number[], offset: number): Position {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
}
