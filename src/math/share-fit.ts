import { exp2 } from "../core/exp2.js";

/** How far each factor can be told, and what it leaves. */
export interface ShareFit {
  /** log2 of each factor. */
  readonly stops: readonly number[];
  /** How far each may be off to either side by the tolerances of the targets; large where they do not tell it. */
  readonly halves: readonly number[];
  /** What is left of each target, in log2: + where the target is more. */
  readonly left: readonly number[];
}

/** No factor is looked for beyond these, log2. */
const LEAST = -12;
const MOST = 12;
/** A factor is held to 1 by no more than this, log2, so that one that nothing tells stays where it is. */
const LOOSE = 20;
const STEPS = 60;

/**
 * Factors above nothing, one for each column, by which sums of shares come nearest to their targets: least squares in
 * log2, each row weighed by its tolerance. Gauss and Newton's steps with Levenberg's damping (Marquardt 1963, J. SIAM
 * 11, 431); the log2 of the factors is what is looked for, so that none falls below nothing.
 *
 * The half width of a factor is what the tolerances come to by propagation of errors; where what is left is more than
 * the tolerances say, all are widened by that (Birge 1932, Phys. Rev. 40, 207).
 *
 * @param shares - Rows of shares, each with a sum above nothing.
 * @param targets - log2 of what each row is to come to.
 * @param tolerances - Of the targets, log2, above nothing.
 */
export function fitShares(
  shares: readonly (readonly number[])[],
  targets: readonly number[],
  tolerances: readonly number[],
): ShareFit {
  const count = shares[0]?.length ?? 0;
  const weights = tolerances.map((one) => 1 / (one * one));
  const leftAt = (stops: readonly number[]): readonly number[] =>
    shares.map((row, i) => (targets[i] ?? 0) - Math.log2(sum(row.map((s, j) => s * exp2(stops[j] ?? 0)))));
  const cost = (stops: readonly number[]): number =>
    sum(leftAt(stops).map((r, i) => (weights[i] ?? 0) * r * r)) +
    sum(stops.map((g) => (g * g) / (LOOSE * LOOSE)));
  const start = weightedMean(leftAt(Array(count).fill(0)), weights);
  let stops: readonly number[] = Array(count).fill(clamp(start));
  let damping = 1e-3;
  for (let step = 0; step < STEPS; step++) {
    const jacobian = jacobianAt(shares, stops);
    const left = leftAt(stops);
    const gradient = stops.map(
      (g, j) =>
        sum(left.map((r, i) => (weights[i] ?? 0) * (jacobian[i]?.[j] ?? 0) * r)) - g / (LOOSE * LOOSE),
    );
    const matrix = normal(jacobian, weights, count);
    const damped = matrix.map((row, j) => row.map((m, k) => (j === k ? m * (1 + damping) : m)));
    const by = inverse(damped).map((row) => sum(row.map((m, k) => m * (gradient[k] ?? 0))));
    const next = stops.map((g, j) => clamp(g + (by[j] ?? 0)));
    if (cost(next) <= cost(stops)) {
      const size = Math.max(...next.map((g, j) => Math.abs(g - (stops[j] ?? 0))));
      stops = next;
      damping /= 10;
      if (size < 1e-12) break;
    } else damping *= 10;
    if (damping > 1e12) break;
  }
  const left = leftAt(stops);
  const covariance = inverse(normal(jacobianAt(shares, stops), weights, count));
  const free = shares.length - count;
  const squares = sum(left.map((r, i) => (weights[i] ?? 0) * r * r));
  const widened = free > 0 ? Math.sqrt(Math.max(1, squares / free)) : 1;
  const halves = covariance.map((row, j) => widened * Math.sqrt(Math.max(0, row[j] ?? 0)));
  return { stops, halves, left };
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
const clamp = (stops: number): number => Math.min(MOST, Math.max(LEAST, stops));

/** The mean of values of unlike weight; 0 of none. */
export function weightedMean(values: readonly number[], weights: readonly number[]): number {
  const total = sum([...weights]);
  return total > 0 ? sum(values.map((one, i) => one * (weights[i] ?? 0))) / total : 0;
}

/** How each row's log2 follows the log2 of each factor: the part that its share has in the sum. */
function jacobianAt(
  shares: readonly (readonly number[])[],
  stops: readonly number[],
): readonly (readonly number[])[] {
  return shares.map((row) => {
    const parts = row.map((s, j) => s * exp2(stops[j] ?? 0));
    const total = sum(parts);
    return parts.map((part) => part / total);
  });
}

function normal(
  jacobian: readonly (readonly number[])[],
  weights: readonly number[],
  count: number,
): readonly (readonly number[])[] {
  const indices = [...Array(count).keys()];
  return indices.map((j) =>
    indices.map(
      (k) =>
        sum(jacobian.map((row, i) => (weights[i] ?? 0) * (row[j] ?? 0) * (row[k] ?? 0))) +
        (j === k ? 1 / (LOOSE * LOOSE) : 0),
    ),
  );
}

/** The inverse of a symmetric matrix with positive eigenvalues, by Gauss and Jordan. */
function inverse(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = matrix.length;
  const rows = matrix.map((row, j) => [...row, ...row.map((_m, k) => (j === k ? 1 : 0))]);
  for (let at = 0; at < size; at++) {
    let best = at;
    for (let j = at; j < size; j++)
      if (Math.abs(rows[j]?.[at] ?? 0) > Math.abs(rows[best]?.[at] ?? 0)) best = j;
    const lead = rows[best] as number[];
    rows[best] = rows[at] as number[];
    const head = lead[at] as number;
    const scaled = lead.map((m) => m / head);
    rows[at] = scaled;
    for (let j = 0; j < size; j++) {
      const row = rows[j] as number[];
      const by = row[at] as number;
      if (j !== at) rows[j] = row.map((m, k) => m - by * (scaled[k] as number));
    }
  }
  return rows.map((row) => row.slice(size));
}
