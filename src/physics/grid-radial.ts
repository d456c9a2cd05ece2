/**
 * Sums along a ray in the plane of an opening behind a grid, from the foot of the receptor's perpendicular outwards.
 * Lengths are in heights of the receptor above that plane, so x is the tangent of the angle off the axis; `reach` is
 * the tangent at which the grid ends. With the luminance 1 - x / reach the light of a ray is an elementary integral.
 */

/** Sums of k terms of a binomial series are exact to 1e-12 below this x squared. */
const SMALL = 0.01;

/** Integral of x^2 / (1 + x^2)^2 from 0, over x^3. */
function second(x: number): number {
  const q = x * x;
  if (q < SMALL) {
    return 1 / 3 - q * (2 / 5 - q * (3 / 7 - q * (4 / 9 - q * (5 / 11 - (q * 6) / 13))));
  }
  return (Math.atan(x) - x / (1 + q)) / (2 * x * q);
}

/** Integral of x^3 / (1 + x^2)^2 from 0, over x^4. */
function third(x: number): number {
  const q = x * x;
  if (q < SMALL) {
    return 1 / 4 - q * (2 / 6 - q * (3 / 8 - q * (4 / 10 - q * (5 / 12 - (q * 6) / 14))));
  }
  return (Math.log1p(q) - q / (1 + q)) / (2 * q * q);
}

/** Integral of x^2 / (1 + x^2)^(3/2) from 0, over x^3. */
function secondOfDome(x: number): number {
  const q = x * x;
  if (q < SMALL) {
    return 1 / 3 - q * (3 / 2 / 5 - q * (15 / 8 / 7 - q * (35 / 16 / 9 - (q * 315) / 128 / 11)));
  }
  return (Math.asinh(x) - x / Math.sqrt(1 + q)) / (x * q);
}

/** What does not depend on the ray's direction in the plane, over x squared: a flat receptor that faces the plane. */
export function levelPart(x: number, reach: number): number {
  return 1 / (2 * (1 + x * x)) - (x * second(x)) / reach;
}

/** What a flat receptor gets by its tilt along the ray, over x cubed. */
export function tiltedPart(x: number, reach: number): number {
  return second(x) - (x * third(x)) / reach;
}

/** What a receptor gets that takes light from everywhere alike, over x squared. */
export function evenPart(x: number, reach: number): number {
  const root = Math.sqrt(1 + x * x);
  return 1 / (root * (1 + root)) - (x * secondOfDome(x)) / reach;
}
