import { gaussLegendre, integrate } from "../math/quadrature.js";

/**
 * View factor of two equal rectangles that face each other squarely (Howell, Catalog of Radiation Heat Transfer
 * Configuration Factors, C-11).
 *
 * @param a - One side, above 0.
 * @param b - The other side, above 0, same unit.
 * @param gap - Distance between the planes, above 0, same unit.
 * @returns Share of the light leaving one that reaches the other, 0 to 1.
 */
export function viewFactorParallel(a: number, b: number, gap: number): number {
  const x = a / gap;
  const y = b / gap;
  if (x < FAR && y < FAR) return farFactor(x, y);
  const xx = 1 + x * x;
  const yy = 1 + y * y;
  const rx = Math.sqrt(xx);
  const ry = Math.sqrt(yy);
  const sum =
    Math.log1p((x * x * y * y) / (xx + yy - 1)) / 2 +
    x * ry * Math.atan(x / ry) +
    y * rx * Math.atan(y / rx) -
    x * Math.atan(x) -
    y * Math.atan(y);
  return (2 * sum) / (Math.PI * x * y);
}

/** Sides over gap below which the closed form would lose digits. */
const FAR = 0.1;

/** The same for a gap of 1 and small sides: the double area integral, brought to one over the two shifts. */
function farFactor(x: number, y: number): number {
  const rule = gaussLegendre(8);
  const inner = (u: number): number =>
    integrate(rule, (v) => ((x - u) * (y - v)) / ((1 + u * u + v * v) * (1 + u * u + v * v)), 0, y);
  return (4 / Math.PI) * (integrate(rule, inner, 0, x) / x / y);
}

/** A rectangle with sides along two axes of a plane. */
export interface AxisRectangle {
  readonly x1: number;
  readonly x2: number;
  readonly y1: number;
  readonly y2: number;
}

/**
 * View factor of two rectangles in parallel planes with parallel sides, anywhere over each other (Howell C-13: the sum
 * of sixteen terms).
 *
 * @param from - The rectangle that sends, x1 < x2 and y1 < y2.
 * @param to - The rectangle that receives, in the same axes.
 * @param gap - Distance between the planes, above 0, same unit.
 * @returns Share of the light leaving `from` that reaches `to`, 0 to 1.
 */
export function viewFactorOffsetParallel(from: AxisRectangle, to: AxisRectangle, gap: number): number {
  const xs = [from.x1 / gap, from.x2 / gap] as const;
  const ys = [from.y1 / gap, from.y2 / gap] as const;
  const us = [to.x1 / gap, to.x2 / gap] as const;
  const vs = [to.y1 / gap, to.y2 / gap] as const;
  let sum = 0;
  for (let i = 0; i < 2; i += 1) {
    for (let j = 0; j < 2; j += 1) {
      for (let k = 0; k < 2; k += 1) {
        for (let l = 0; l < 2; l += 1) {
          const term = cornerTerm(xs[i]! - us[k]!, ys[j]! - vs[l]!);
          sum += (i + j + k + l) % 2 === 0 ? term : -term;
        }
      }
    }
  }
  return Math.max(0, sum) / (2 * Math.PI * (xs[1] - xs[0]) * (ys[1] - ys[0]));
}

/** G of Howell C-13 for a gap of 1. */
function cornerTerm(dx: number, dy: number): number {
  const rx = Math.sqrt(1 + dx * dx);
  const ry = Math.sqrt(1 + dy * dy);
  return dy * rx * Math.atan(dy / rx) + dx * ry * Math.atan(dx / ry) - Math.log1p(dx * dx + dy * dy) / 2;
}
