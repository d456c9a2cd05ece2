/**
 * View factor of two rectangles that share an edge at a right angle (Howell, Catalog of Radiation Heat Transfer
 * Configuration Factors, C-14).
 *
 * @param common - Length of the shared edge, above 0.
 * @param from - Width of the rectangle that sends, above 0, same unit.
 * @param to - Width of the rectangle that receives, above 0, same unit.
 * @returns Share of the light leaving the first that reaches the second, 0 to 1.
 */
export function viewFactorPerpendicular(common: number, from: number, to: number): number {
  const w = from / common;
  const h = to / common;
  const ww = w * w;
  const hh = h * h;
  const both = ww + hh;
  const root = Math.sqrt(both);
  const logs =
    Math.log(((1 + ww) * (1 + hh)) / (1 + both)) +
    ww * Math.log((ww * (1 + both)) / ((1 + ww) * both)) +
    hh * Math.log((hh * (1 + both)) / ((1 + hh) * both));
  const sum = w * Math.atan(1 / w) + h * Math.atan(1 / h) - root * Math.atan(1 / root) + logs / 4;
  return sum / (Math.PI * w);
}

/** A rectangle in one of two planes at a right angle: along their common line, and away from it. */
export interface LedgeRectangle {
  /** Where it begins and ends along the common line. */
  readonly along1: number;
  readonly along2: number;
  /** Where it begins and ends away from the common line, 0 or more. */
  readonly away1: number;
  readonly away2: number;
}

/**
 * View factor of two rectangles in planes at a right angle, with sides along the common line of the planes, anywhere
 * on them (Howell C-15; here from Stokes' theorem: only the four edges of each that run along the line count, and
 * the integral of the logarithm over two parallel edges is elementary).
 *
 * @param from - The rectangle that sends, along1 < along2 and away1 < away2.
 * @param to - The rectangle that receives, in the other plane.
 * @returns Share of the light leaving `from` that reaches `to`, 0 to 1.
 */
export function viewFactorOffsetPerpendicular(from: LedgeRectangle, to: LedgeRectangle): number {
  const scale = Math.max(from.along2 - from.along1, from.away2, to.along2 - to.along1, to.away2);
  const x = [from.along1 / scale, from.along2 / scale] as const;
  const u = [to.along1 / scale, to.along2 / scale] as const;
  const y = [from.away1 / scale, from.away2 / scale] as const;
  const z = [to.away1 / scale, to.away2 / scale] as const;
  let sum = 0;
  for (let i = 0; i < 2; i += 1) {
    for (let j = 0; j < 2; j += 1) {
      for (let k = 0; k < 2; k += 1) {
        for (let l = 0; l < 2; l += 1) {
          const term = edgeTerm(x[i]! - u[k]!, y[j]! * y[j]! + z[l]! * z[l]!);
          sum += (i + j + k + l) % 2 === 0 ? term : -term;
        }
      }
    }
  }
  return Math.max(0, sum) / (2 * Math.PI * (x[1] - x[0]) * (y[1] - y[0]));
}

/** Twice integrated ln(sqrt(x x + hh)) by x, without the parts that cancel in the sum over four ends. */
function edgeTerm(x: number, hh: number): number {
  const square = x * x + hh;
  if (square === 0) return 0;
  const h = Math.sqrt(hh);
  return (
    (square * Math.log(square)) / 4 - (hh * Math.log(square)) / 2 + (h === 0 ? 0 : h * x * Math.atan(x / h))
  );
}
