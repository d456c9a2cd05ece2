/**
 * By how much the inverse square overrates a large source on its axis, as a share of the true illuminance. The rule
 * of five times the largest size keeps it within 1 % (ANSI/IES LS-1, 9.1.1).
 */

/** A uniform disc at k diameters: 1 / (4 k^2), exactly. */
export function pointErrorOfDisc(distanceOverDiameter: number): number {
  return 1 / (4 * distanceOverDiameter * distanceOverDiameter);
}

/**
 * A uniform square at k sides. Its true value is 4 t atan t with t = x / sqrt(1 + x^2), x = 1 / (2 k) (the corner
 * form of an element facing a parallel rectangle), against 4 x^2.
 */
export function pointErrorOfSquare(distanceOverSide: number): number {
  const x = 1 / (2 * distanceOverSide);
  const x2 = x * x;
  const t = x / Math.sqrt(1 + x2);
  return x2 + (1 + x2) * tangentExcess(t);
}

/** The same at k diagonals. */
export function pointErrorOfSquareByDiagonal(distanceOverDiagonal: number): number {
  return pointErrorOfSquare(distanceOverDiagonal * Math.SQRT2);
}

/** t / atan t - 1 with all digits: a series where the two nearly agree. */
function tangentExcess(t: number): number {
  if (t > 0.1) return t / Math.atan(t) - 1;
  const t2 = t * t;
  let excess = 0;
  let term = t;
  let sign = 1;
  for (let n = 3; n <= 19; n += 2) {
    term *= t2;
    excess += (sign * term) / n;
    sign = -sign;
  }
  return excess / Math.atan(t);
}
