import type { Vec3 } from "../core/vector.js";
import { gaussLegendre } from "../math/quadrature.js";
import { addScaled, cross, dot, length, scale, subtract } from "../math/vector.js";

/** Points of the rule along one edge; with the grading below it reaches rounding for edges that touch. */
const RULE = /* @__PURE__ */ gaussLegendre(48);

/** Edges whose directions differ by less than this (as the square of a sine) are taken as parallel. */
const PARALLEL = 1e-24;

/**
 * The double integral of ln r over two straight edges times the cosine between them, the brick of the contour form of
 * a view factor (Sparrow, J. Heat Transfer 85 (1963) 81). Parallel edges in closed form; others with the inner
 * integral in closed form and a graded Gauss rule along the first edge, split where it comes nearest to the second, so
 * that edges that touch or cross are no trouble.
 *
 * @param a - Start of the first edge.
 * @param b - End of the first edge.
 * @param c - Start of the second edge.
 * @param d - End of the second edge, all in one unit; lengths near 1 keep the most digits.
 */
export function edgeIntegral(a: Vec3, b: Vec3, c: Vec3, d: Vec3): number {
  const first = subtract(b, a);
  const second = subtract(d, c);
  const firstLength = length(first);
  const secondLength = length(second);
  if (firstLength === 0 || secondLength === 0) return 0;
  const u = scale(first, 1 / firstLength);
  const v = scale(second, 1 / secondLength);
  const cosine = dot(u, v);
  const across = cross(u, v);
  const sineSquare = dot(across, across);
  if (sineSquare < PARALLEL) {
    return cosine > 0
      ? parallelIntegral(subtract(c, a), u, firstLength, secondLength)
      : -parallelIntegral(subtract(d, a), u, firstLength, secondLength);
  }
  return cosine === 0
    ? 0
    : cosine * skewIntegral(subtract(a, c), u, firstLength, v, secondLength, sineSquare);
}

/** Both edges run along the unit vector `u`; `way` leads from the start of the first to the start of the second. */
function parallelIntegral(way: Vec3, u: Vec3, firstLength: number, secondLength: number): number {
  const start = dot(way, u);
  const h = length(cross(way, u));
  return (
    twice(start + secondLength, h) +
    twice(start - firstLength, h) -
    twice(start + secondLength - firstLength, h) -
    twice(start, h)
  );
}

/** ln(sqrt(x x + h h)) integrated twice by x. */
function twice(x: number, h: number): number {
  const square = x * x + h * h;
  if (square === 0) return 0;
  const log = Math.log(square);
  const angle = h === 0 ? 0 : h * x * Math.atan2(x, h);
  return ((x * x - h * h) * log - 3 * x * x) / 4 + angle;
}

/** ln(sqrt(x x + h h)) integrated once by x. */
function once(x: number, h: number): number {
  const square = x * x + h * h;
  if (square === 0) return 0;
  return (x * Math.log(square)) / 2 - x + (h === 0 ? 0 : h * Math.atan2(x, h));
}

/** The edges run along the unit vectors `u` and `v`; `way` leads from the start of the second to that of the first. */
function skewIntegral(
  way: Vec3,
  u: Vec3,
  firstLength: number,
  v: Vec3,
  secondLength: number,
  sineSquare: number,
): number {
  const cosine = dot(u, v);
  const across = cross(u, v);
  const wayAcross = cross(way, v);
  const wayFirst = dot(way, u);
  const waySecond = dot(way, v);
  /** The inner integral at the point s along the first edge. */
  const inner = (s: number): number => {
    const foot = waySecond + s * cosine;
    const h = length(addScaled(wayAcross, across, s));
    return once(secondLength - foot, h) - once(-foot, h);
  };
  const nearest = -dot(wayAcross, across) / sineSquare;
  const cuts = [nearest, -wayFirst, secondLength * cosine - wayFirst]
    .filter((s) => s > 1e-9 * firstLength && s < (1 - 1e-9) * firstLength)
    .sort((one, other) => one - other);
  let sum = 0;
  let from = 0;
  for (const to of [...cuts, firstLength]) {
    if (to > from) sum += graded(inner, from, to);
    from = to;
  }
  return sum;
}

/** A Gauss rule with its points drawn towards both ends by t^4 (35 - 84 t + 70 t^2 - 20 t^3), which tames logarithms there. */
function graded(f: (s: number) => number, from: number, to: number): number {
  const size = to - from;
  let sum = 0;
  for (let i = 0; i < RULE.points.length; i += 1) {
    const t = (1 + RULE.points[i]!) / 2;
    const other = 1 - t;
    const cube = t * t * t;
    const place = t < 0.5 ? reach(t) * size + from : to - reach(other) * size;
    sum += RULE.weights[i]! * 70 * cube * other * other * other * f(place);
  }
  return sum * size;
}

function reach(t: number): number {
  const square = t * t;
  return square * square * (35 + t * (-84 + t * (70 - 20 * t)));
}
