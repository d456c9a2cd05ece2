import { dotsOf, LETTER_HIGH, LETTER_WIDE } from "./letters.js";

/** A picture in greys, a byte a pixel, with the words that stand under it in small letters. */
export interface Labelled {
  readonly greys: Uint8Array;
  readonly label: string;
}

/** Greys with their size. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly greys: Uint8Array;
}

/** The gutter over the width of one picture. */
const GUTTER = 0.04;
/** Pictures are this many pixels wide for each step of the size of letters. */
const LETTERS = 180;
const PAPER = 255;
const INK = 0;

/** Two pictures of one size beside each other on white, with a gutter between and their labels below. */
export function besideEachOther(
  width: number,
  height: number,
  pair: readonly [left: Labelled, right: Labelled],
): GreyPicture {
  const gutter = Math.max(4, Math.round(width * GUTTER));
  const size = Math.max(1, Math.round(width / LETTERS));
  const band = (LETTER_HIGH + 6) * size;
  const whole = 2 * width + gutter;
  const greys = new Uint8Array(whole * (height + band)).fill(PAPER);
  pair.forEach(({ greys: own, label }, side) => {
    const left = side * (width + gutter);
    for (let row = 0; row < height; row++)
      greys.set(own.subarray(row * width, (row + 1) * width), row * whole + left);
    const wide = label.length * (LETTER_WIDE + 1) * size;
    const x = left + Math.max(0, Math.round((width - wide) / 2));
    const y = height + 3 * size;
    for (const [column, line] of dotsOf(label))
      for (let v = 0; v < size; v++)
        for (let u = 0; u < size; u++) {
          const across = x + column * size + u;
          if (across < left + width) greys[(y + line * size + v) * whole + across] = INK;
        }
  });
  return { width: whole, height: height + band, greys };
}
