import type { CandelaTable } from "./photometry.js";

/**
 * Intensity in a direction given by the table's own angles, linear between neighbours in both. Outside the vertical
 * range it is 0. A table that covers a quarter or a half of the circle is mirrored to the rest.
 *
 * @param photometry - The table.
 * @param vertical - Vertical angle in degrees: from the nadir in system C.
 * @param horizontal - Horizontal angle in degrees, any value.
 * @returns Candelas.
 */
export function candelaAt(photometry: CandelaTable, vertical: number, horizontal: number): number {
  const column = bracket(photometry.vertical, vertical);
  const row = rowsAround(photometry, horizontal);
  if (column === null || row === null) return 0;
  const one = rowValue(photometry.candela[row.from] ?? [], column);
  const other = rowValue(photometry.candela[row.to] ?? [], column);
  return one + (other - one) * row.share;
}

/**
 * Mean intensity around the axis at a vertical angle (system C): the exact mean of the linear course in between.
 *
 * @param photometry - A table of system C.
 * @param vertical - Degrees from the nadir.
 * @returns Candelas.
 */
export function meanCandela(photometry: CandelaTable, vertical: number): number {
  const column = bracket(photometry.vertical, vertical);
  if (column === null) return 0;
  const weights = rowWeights(photometry);
  let sum = 0;
  photometry.candela.forEach((row, index) => {
    sum += (weights[index] ?? 0) * rowValue(row, column);
  });
  return sum;
}

/**
 * Share of the circle that each row of a system C table stands for, by the trapezium rule over what the table covers;
 * a quarter or half is mirrored, so that its rows keep their shares. A full circle that leaves out its last angle is
 * closed by the first row.
 *
 * @param photometry - A table of system C.
 * @returns One share a row; they add up to 1.
 */
export function rowWeights(photometry: CandelaTable): readonly number[] {
  const angles = photometry.horizontal;
  const count = angles.length;
  const whole = horizontalReach(photometry);
  if (count === 1) return [1];
  const weights = angles.map(() => 0);
  for (let i = 0; i + 1 < count; i += 1) {
    const half = ((angles[i + 1] ?? 0) - (angles[i] ?? 0)) / 2;
    weights[i] = (weights[i] ?? 0) + half;
    weights[i + 1] = (weights[i + 1] ?? 0) + half;
  }
  if (whole === 360) {
    const gap = ((angles[0] ?? 0) + 360 - (angles[count - 1] ?? 0)) / 2;
    weights[0] = (weights[0] ?? 0) + gap;
    weights[count - 1] = (weights[count - 1] ?? 0) + gap;
  }
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}

/** How far a table reaches around the circle before it repeats: 90, 180 or 360 degrees; 0 for one angle alone. */
function horizontalReach(photometry: CandelaTable): 0 | 90 | 180 | 360 {
  const angles = photometry.horizontal;
  if (angles.length === 1) return 0;
  const first = angles[0] ?? 0;
  const last = angles[angles.length - 1] ?? 0;
  if (photometry.system === "B") return first >= 0 ? 90 : 180;
  if (first === 0 && last === 90) return 90;
  if ((first === 0 && last === 180) || (first === 90 && last === 270)) return 180;
  return 360;
}

/** Takes a horizontal angle to the part of the circle that the table covers. */
function foldHorizontal(photometry: CandelaTable, horizontal: number): number {
  const angles = photometry.horizontal;
  const first = angles[0] ?? 0;
  const reach = horizontalReach(photometry);
  if (photometry.system === "B") return reach === 90 ? Math.abs(horizontal) : horizontal;
  if (reach === 0) return first;
  const around = horizontal - 360 * Math.floor(horizontal / 360);
  if (reach === 90) {
    const half = around > 180 ? 360 - around : around;
    return half > 90 ? 180 - half : half;
  }
  if (reach === 180) {
    if (first === 0) return around > 180 ? 360 - around : around;
    if (around < 90) return 180 - around;
    return around > 270 ? 540 - around : around;
  }
  return around < first ? around + 360 : around;
}

/** The two rows that a horizontal angle lies between; past the last row of an open circle, the last and the first. */
function rowsAround(
  photometry: CandelaTable,
  horizontal: number,
): { readonly from: number; readonly to: number; readonly share: number } | null {
  const angles = photometry.horizontal;
  const folded = foldHorizontal(photometry, horizontal);
  const found = bracket(angles, folded);
  if (found !== null) {
    return { from: found.index, to: Math.min(found.index + 1, angles.length - 1), share: found.share };
  }
  if (photometry.system === "B" || !Number.isFinite(folded)) return null;
  const last = angles[angles.length - 1] ?? 0;
  const gap = (angles[0] ?? 0) + 360 - last;
  return gap > 0 ? { from: angles.length - 1, to: 0, share: (folded - last) / gap } : null;
}

interface Bracket {
  readonly index: number;
  readonly share: number;
}

/** The interval of a rising list that a value lies in and how far along it, or null outside the list. */
function bracket(list: readonly number[], value: number): Bracket | null {
  const count = list.length;
  const first = list[0];
  const last = list[count - 1];
  if (first === undefined || last === undefined || !(value >= first && value <= last)) return null;
  let low = 0;
  let high = count - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((list[middle] ?? 0) <= value) low = middle;
    else high = middle;
  }
  const from = list[low] ?? 0;
  const to = list[high] ?? 0;
  return { index: low, share: to > from ? (value - from) / (to - from) : 0 };
}

function rowValue(row: readonly number[], column: Bracket): number {
  const one = row[column.index] ?? 0;
  const other = row[column.index + 1] ?? one;
  return one + (other - one) * column.share;
}
