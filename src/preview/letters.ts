/** Height and width of a letter in dots; lines of a letter are read from the top, its leftmost dot is worth 16. */
export const LETTER_HIGH = 9;
export const LETTER_WIDE = 5;

/** Our own small letters for pictures, nine lines each, the last two below the line: what labels are written with. */
const letters: ReadonlyMap<string, readonly number[]> = new Map([
  ["a", [0, 0, 14, 1, 15, 17, 15, 0, 0]],
  ["b", [16, 16, 30, 17, 17, 17, 30, 0, 0]],
  ["c", [0, 0, 14, 17, 16, 17, 14, 0, 0]],
  ["d", [1, 1, 15, 17, 17, 17, 15, 0, 0]],
  ["e", [0, 0, 14, 17, 31, 16, 14, 0, 0]],
  ["f", [6, 8, 28, 8, 8, 8, 8, 0, 0]],
  ["g", [0, 0, 15, 17, 17, 17, 15, 1, 14]],
  ["h", [16, 16, 22, 25, 17, 17, 17, 0, 0]],
  ["i", [4, 0, 12, 4, 4, 4, 14, 0, 0]],
  ["j", [2, 0, 6, 2, 2, 2, 2, 18, 12]],
  ["k", [16, 16, 18, 20, 24, 20, 18, 0, 0]],
  ["l", [12, 4, 4, 4, 4, 4, 14, 0, 0]],
  ["m", [0, 0, 26, 21, 21, 21, 21, 0, 0]],
  ["n", [0, 0, 22, 25, 17, 17, 17, 0, 0]],
  ["o", [0, 0, 14, 17, 17, 17, 14, 0, 0]],
  ["p", [0, 0, 30, 17, 17, 17, 30, 16, 16]],
  ["q", [0, 0, 15, 17, 17, 17, 15, 1, 1]],
  ["r", [0, 0, 22, 25, 16, 16, 16, 0, 0]],
  ["s", [0, 0, 15, 16, 14, 1, 30, 0, 0]],
  ["t", [8, 8, 28, 8, 8, 9, 6, 0, 0]],
  ["u", [0, 0, 17, 17, 17, 19, 13, 0, 0]],
  ["v", [0, 0, 17, 17, 17, 10, 4, 0, 0]],
  ["w", [0, 0, 17, 17, 21, 21, 10, 0, 0]],
  ["x", [0, 0, 17, 10, 4, 10, 17, 0, 0]],
  ["y", [0, 0, 17, 17, 17, 17, 15, 1, 14]],
  ["z", [0, 0, 31, 2, 4, 8, 31, 0, 0]],
  ["-", [0, 0, 0, 0, 31, 0, 0, 0, 0]],
]);

/** Dots of a text in these letters, from the left: each column, row pair once. What has no letter is a gap. */
export function dotsOf(text: string): readonly (readonly [column: number, row: number])[] {
  return [...text].flatMap((sign, i) =>
    (letters.get(sign) ?? []).flatMap((line, row) =>
      Array.from({ length: LETTER_WIDE }, (_, column) => column)
        .filter((column) => (line & (16 >> column)) !== 0)
        .map((column) => [i * (LETTER_WIDE + 1) + column, row] as const),
    ),
  );
}
