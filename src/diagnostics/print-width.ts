/** First and last code points of the letters that take two cells (Unicode Standard Annex 11, W and F, condensed). */
const wide: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x231a, 0x231b],
  [0x2329, 0x232a],
  [0x23e9, 0x23ec],
  [0x23f0, 0x23f0],
  [0x23f3, 0x23f3],
  [0x25fd, 0x25fe],
  [0x2614, 0x2615],
  [0x2648, 0x2653],
  [0x267f, 0x267f],
  [0x2693, 0x2693],
  [0x26a1, 0x26a1],
  [0x26aa, 0x26ab],
  [0x26bd, 0x26be],
  [0x26c4, 0x26c5],
  [0x26ce, 0x26ce],
  [0x26d4, 0x26d4],
  [0x26ea, 0x26ea],
  [0x26f2, 0x26f3],
  [0x26f5, 0x26f5],
  [0x26fa, 0x26fa],
  [0x26fd, 0x26fd],
  [0x2705, 0x2705],
  [0x270a, 0x270b],
  [0x2728, 0x2728],
  [0x274c, 0x274c],
  [0x274e, 0x274e],
  [0x2753, 0x2755],
  [0x2757, 0x2757],
  [0x2795, 0x2797],
  [0x27b0, 0x27b0],
  [0x27bf, 0x27bf],
  [0x2b1b, 0x2b1c],
  [0x2b50, 0x2b50],
  [0x2b55, 0x2b55],
  [0x2e80, 0x303e],
  [0x3041, 0x4dbf],
  [0x4e00, 0xa4cf],
  [0xa960, 0xa97c],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe10, 0xfe19],
  [0xfe30, 0xfe6b],
  [0xff01, 0xff60],
  [0xffe0, 0xffe6],
  [0x16fe0, 0x18cff],
  [0x1aff0, 0x1b2fb],
  [0x1f004, 0x1f004],
  [0x1f0cf, 0x1f0cf],
  [0x1f18e, 0x1f18e],
  [0x1f191, 0x1f19a],
  [0x1f200, 0x1f64f],
  [0x1f680, 0x1f6ff],
  [0x1f7e0, 0x1f7f0],
  [0x1f90c, 0x1f9ff],
  [0x1fa70, 0x1faff],
  [0x20000, 0x3fffd],
];

/** Cells of a terminal that one character takes: 0 for a mark set on the letter before it, 2 for a wide one, else 1. */
export function characterCells(character: string): 0 | 1 | 2 {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x300) return 1;
  if (/^\p{M}/u.test(character)) return 0;
  return wide.some(([first, last]) => code >= first && code <= last) ? 2 : 1;
}

/** Cells of a terminal that a text without line ends takes. */
export function cells(text: string): number {
  let sum = 0;
  for (const character of text) sum += characterCells(character);
  return sum;
}

/** The text and spaces behind it, up to so many cells. */
export function padEnd(text: string, width: number): string {
  return text + " ".repeat(Math.max(0, width - cells(text)));
}

/** Spaces and the text behind them, up to so many cells. */
export function padStart(text: string, width: number): string {
  return " ".repeat(Math.max(0, width - cells(text))) + text;
}

/** Signs behind which a long name may be cut. */
const joints = /[_.,(/-]/;

/**
 * Takes characters from the front until the cells are used up, to the last joint of a name where that leaves at least half
 * of them.
 */
function head(word: string, width: number): string {
  const most = cut(word, width);
  for (let end = most.length; 2 * cells(most.slice(0, end)) >= width && end > 0; end--)
    if (joints.test(most[end - 1] as string)) return most.slice(0, end);
  return most;
}

/** Characters from the front that take so many cells, one at least. */
function cut(word: string, width: number): string {
  let taken = "";
  let used = 0;
  for (const character of word) {
    used += characterCells(character);
    if (used > width && taken !== "") break;
    taken += character;
  }
  return taken;
}

/** Breaks a text at spaces into lines of so many cells; a longer word is cut, where it can be at a joint. Never empty. */
export function wrap(text: string, width: number): readonly string[] {
  const most = Math.max(1, width);
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \n]+/)) {
    let rest = word;
    if (line !== "" && cells(line) + 1 + cells(rest) <= most) {
      line += ` ${rest}`;
      continue;
    }
    if (line !== "") lines.push(line);
    while (cells(rest) > most) {
      const part = head(rest, most);
      lines.push(part);
      rest = rest.slice(part.length);
    }
    line = rest;
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}
