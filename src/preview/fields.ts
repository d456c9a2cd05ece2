import type { Convex } from "../math/convex.js";
import { SEEN, type View } from "./view.js";

/** The pixels of a square that lie in the picture, with its far edges where they do: all of them see one side. */
export interface Patch {
  /** Index of the thing that is seen. */
  readonly thing: number;
  /** A body that holds every place that is seen. */
  readonly hull: Convex;
  /** Whether the places lie in a plane: the hull is that of its corners then. */
  readonly flat: boolean;
  /** No two places are farther from each other, m. */
  readonly wide: number;
  /** Whether the far edges lie in the picture. */
  readonly whole: boolean;
  /** The pixels in its corners. */
  readonly corners: readonly number[];
}

/** A square of pixels of a picture, and its quarters. */
export interface Field {
  readonly left: number;
  readonly top: number;
  readonly size: number;
  /** Null where the pixels see several sides, or nothing. */
  readonly patch: Patch | null;
  /** Made when first asked for. */
  quarters: readonly Field[] | null;
}

/** The squares of a picture from its top left, row by row. */
export function fieldsOf(view: View, things: number, size: number): readonly Field[] {
  const fields: Field[] = [];
  for (let top = 0; top < view.height; top += size)
    for (let left = 0; left < view.width; left += size) fields.push(fieldAt(view, things, left, top, size));
  return fields;
}

/**
 * The quarters of a square that lie in the picture.
 *
 * @param flats - How many of the things, the first ones, are flat.
 */
export function quartersOf(view: View, flats: number, field: Field): readonly Field[] {
  if (field.quarters !== null) return field.quarters;
  const { left, top } = field;
  const half = field.size / 2;
  const quarters: Field[] = [];
  for (const y of [top, top + half])
    for (const x of [left, left + half])
      if (x < view.width && y < view.height) quarters.push(fieldAt(view, flats, x, y, half));
  field.quarters = quarters;
  return quarters;
}

function fieldAt(view: View, flats: number, left: number, top: number, size: number): Field {
  return { left, top, size, patch: patchAt(view, flats, left, top, size), quarters: null };
}

function patchAt(view: View, flats: number, left: number, top: number, size: number): Patch | null {
  const { width, height, side, data } = view;
  const right = Math.min(left + size, width - 1);
  const bottom = Math.min(top + size, height - 1);
  const first = top * width + left;
  const on = side[first] as number;
  if (on < 0) return null;
  if (!oneSide(view, left, top, right, bottom)) return null;
  const points = new Float64Array(12);
  const last = bottom * width + left;
  const corners = [first, first + right - left, last, last + right - left];
  for (let i = 0; i < 12; i++)
    points[i] = data[SEEN * (corners[Math.floor(i / 3)] as number) + (i % 3)] as number;
  const thing = on >> 1;
  const flat = thing < flats;
  // Straight lines of a plane are straight in the picture; a body bulges out of the middles between its corners.
  const bulge = flat ? 0 : bulgeOf(view, left, top, right, bottom, points);
  const middle = new Float64Array(3);
  for (let k = 0; k < 3; k++)
    middle[k] =
      ((points[k] as number) +
        (points[k + 3] as number) +
        (points[k + 6] as number) +
        (points[k + 9] as number)) /
      4;
  const axes = Float64Array.of(bulge, 0, 0, 0, bulge, 0, 0, 0, bulge);
  const wide = Math.max(apartIn(points, 0, 9), apartIn(points, 3, 6)) + 2 * bulge;
  const whole = right === left + size && bottom === top + size;
  return { thing, hull: { points, axes, middle }, flat, wide, whole, corners };
}

/** Whether all pixels from one to another, both included, see what the first one sees. */
export function oneSide(
  { side, width }: View,
  left: number,
  top: number,
  right: number,
  bottom: number,
): boolean {
  const first = side[top * width + left];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) if (side[row * width + column] !== first) return false;
  return true;
}

/** How far the places of a square are at most from those between its corners, m. */
function bulgeOf(
  { width, data }: View,
  left: number,
  top: number,
  right: number,
  bottom: number,
  points: Float64Array,
): number {
  let most = 0;
  for (let row = top; row <= bottom; row++) {
    const t = bottom > top ? (row - top) / (bottom - top) : 0;
    for (let column = left; column <= right; column++) {
      const s = right > left ? (column - left) / (right - left) : 0;
      const at = SEEN * (row * width + column);
      let d2 = 0;
      for (let k = 0; k < 3; k++) {
        const upper = (points[k] as number) * (1 - s) + (points[k + 3] as number) * s;
        const lower = (points[k + 6] as number) * (1 - s) + (points[k + 9] as number) * s;
        const d = (data[at + k] as number) - (upper * (1 - t) + lower * t);
        d2 += d * d;
      }
      if (d2 > most) most = d2;
    }
  }
  return Math.sqrt(most);
}

function apartIn(points: Float64Array, i: number, j: number): number {
  let d2 = 0;
  for (let k = 0; k < 3; k++) {
    const d = (points[i + k] as number) - (points[j + k] as number);
    d2 += d * d;
  }
  return Math.sqrt(d2);
}
