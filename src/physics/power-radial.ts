import { power } from "../math/power.js";
import { gaussLegendre } from "../math/quadrature.js";

/**
 * Sums along a ray in the plane of an opening whose intensity goes with a power n of the cosine, from the foot of the
 * receptor's perpendicular outwards. Lengths are in heights of the receptor above that plane, so x is the tangent of
 * the angle off the axis; the luminance there is (1 + x^2)^(-(n - 1) / 2). n above 0.
 */

/** Points for the one integral that has no closed form, for powers that are not whole. */
const RULE = /* @__PURE__ */ gaussLegendre(24);

/** What does not depend on the ray's direction in the plane, over x squared: a flat receptor that faces the plane. */
export function powerLevel(x: number, n: number): number {
  const q = x * x;
  return q === 0 ? 0.5 : -Math.expm1((-(n + 1) / 2) * Math.log1p(q)) / ((n + 1) * q);
}

/** What a receptor gets that takes light from everywhere alike, over x squared. */
export function powerEven(x: number, n: number): number {
  const q = x * x;
  return q === 0 ? 0.5 : -Math.expm1((-n / 2) * Math.log1p(q)) / (n * q);
}

/**
 * What a flat receptor gets by its tilt along the ray, over x cubed: the integral of sin^2 cos^(n - 1) over the angle
 * off the axis, (K - cos^n sin) / (n + 1) with K that of cos^(n - 1).
 */
export function powerTilted(x: number, n: number): number {
  const q = x * x;
  const half = (n + 3) / 2;
  if (half * q < 0.1) {
    // The binomial series; ten terms are exact to rounding here.
    let sum = 0;
    let term = 1;
    for (let k = 0; k < 11; k++) {
      sum += term / (2 * k + 3);
      term *= (-q * (half + k)) / (k + 1);
    }
    return sum;
  }
  const cosine = 1 / Math.sqrt(1 + q);
  const sine = x * cosine;
  const { sum, last } = cosinePower(n - 1, cosine, sine);
  return (sum - last * cosine * sine) / ((n + 1) * q * x);
}

/** Integral of cos^m over the angle from 0, and cos^m itself: from a power below 2 upwards, m cos^m by parts. */
function cosinePower(
  m: number,
  cosine: number,
  sine: number,
): { readonly sum: number; readonly last: number } {
  if (m < 0) {
    // One step down: the power itself has no end at the horizon.
    const above = cosinePower(m + 2, cosine, sine);
    const last = above.last / (cosine * cosine);
    return { sum: ((m + 2) * above.sum - last * cosine * sine) / (m + 1), last };
  }
  let k = m - 2 * Math.floor(m / 2);
  let last = k === 0 ? 1 : k === 1 ? cosine : power(cosine, k);
  let sum = k === 0 ? Math.atan2(sine, cosine) : k === 1 ? sine : byRule(k, Math.atan2(sine, cosine));
  for (; k < m - 0.5; k += 2) {
    last *= cosine * cosine;
    sum = ((last / cosine) * sine + (k + 1) * sum) / (k + 2);
  }
  return { sum, last };
}

/** Integral of cos^k from 0 to an angle, k from 0 to 2: one step up, where the slope at the horizon is tame, and down. */
function byRule(k: number, angle: number): number {
  const m = k + 2;
  let sum = 0;
  for (let i = 0; i < RULE.points.length; i++) {
    sum += (RULE.weights[i] as number) * power(Math.cos((angle * (1 + (RULE.points[i] as number))) / 2), m);
  }
  const cosine = Math.cos(angle);
  return (m * ((sum * angle) / 2) - power(cosine, m - 1) * Math.sin(angle)) / (m - 1);
}
