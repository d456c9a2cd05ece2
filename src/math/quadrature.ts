/** Points and weights of a quadrature rule on -1 to 1. */
export interface QuadratureRule {
  readonly points: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Gauss and Legendre's rule with n points (1 to 128), exact for polynomials up to degree 2n - 1. The points are
 * found by Newton's method from Tricomi's first guess.
 */
export function gaussLegendre(n: number): QuadratureRule {
  const points: number[] = new Array(n).fill(0);
  const weights: number[] = new Array(n).fill(0);
  for (let i = 0; i < Math.ceil(n / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let turn = 0; turn < 8; turn++) {
      let before = 1;
      let now = x;
      for (let k = 2; k <= n; k++) {
        const next = ((2 * k - 1) * x * now - (k - 1) * before) / k;
        before = now;
        now = next;
      }
      slope = (n * (x * now - before)) / (x * x - 1);
      x -= now / slope;
    }
    const weight = 2 / ((1 - x * x) * slope * slope);
    points[i] = -x;
    points[n - 1 - i] = x;
    weights[i] = weight;
    weights[n - 1 - i] = weight;
  }
  return { points, weights };
}

/** The integral of a smooth function from a to b by a rule. */
export function integrate(rule: QuadratureRule, f: (x: number) => number, a: number, b: number): number {
  const middle = (a + b) / 2;
  const half = (b - a) / 2;
  let sum = 0;
  for (let i = 0; i < rule.points.length; i++) {
    sum += (rule.weights[i] ?? 0) * f(middle + half * (rule.points[i] ?? 0));
  }
  return sum * half;
}
