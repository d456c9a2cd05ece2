import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { exp2 } from "../../src/core/exp2.js";
import { cel, ellipticE, ellipticK, ellipticPi } from "../../src/math/elliptic.js";
import { power } from "../../src/math/power.js";
import { gaussLegendre, integrate } from "../../src/math/quadrature.js";
import { findRoot } from "../../src/math/roots.js";
import { even } from "../helpers/light-shapes.js";

describe("complete elliptic integrals", () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, tables 17.1 and 17.2.
  test("K and E of the handbook", () => {
    expect(ellipticK(0)).toBeCloseTo(Math.PI / 2, 15);
    expect(ellipticK(0.5)).toBeCloseTo(1.854074677301372, 14);
    expect(ellipticE(0.5)).toBeCloseTo(1.350643881047675, 14);
    expect(ellipticK(0.99)).toBeCloseTo(3.695637362989874, 13);
    expect(ellipticE(0.99)).toBeCloseTo(1.015993545025224, 13);
  });

  test("Legendre's relation binds K and E of both moduli", () => {
    fc.assert(
      fc.property(even(0.001, 0.999), (m) => {
        const left =
          ellipticE(m) * ellipticK(1 - m) + ellipticE(1 - m) * ellipticK(m) - ellipticK(m) * ellipticK(1 - m);
        expect(left).toBeCloseTo(Math.PI / 2, 12);
      }),
    );
  });

  test("the third kind is its integral", () => {
    const rule = gaussLegendre(64);
    for (const [n, m] of [
      [0.3, 0.5],
      [-2, 0.2],
      [0.9, 0.9],
    ] as const) {
      const direct = integrate(
        rule,
        (t) => {
          const s = Math.sin(t) * Math.sin(t);
          return 1 / ((1 - n * s) * Math.sqrt(1 - m * s));
        },
        0,
        Math.PI / 2,
      );
      expect(ellipticPi(n, m) / direct).toBeCloseTo(1, 12);
    }
    expect(ellipticPi(0, 0.4)).toBeCloseTo(ellipticK(0.4), 14);
  });

  test("outside its range the general integral is 0, never a number that is none", () => {
    expect(cel(0, 1, 1, 1)).toBe(0);
    expect(cel(0.5, 0, 1, 1)).toBe(0);
    expect(cel(Number.NaN, 1, 1, 1)).toBe(0);
  });
});

describe("quadrature", () => {
  test("n points are exact to degree 2n - 1 and no further", () => {
    for (const n of [1, 2, 3, 5, 8, 16]) {
      const rule = gaussLegendre(n);
      const monomial = (degree: number): number =>
        integrate(rule, (x) => Array.from({ length: degree }).reduce<number>((p) => p * x, 1), 0, 2);
      const exact = (degree: number): number => exp2(degree + 1) / (degree + 1);
      expect(monomial(2 * n - 1) / exact(2 * n - 1)).toBeCloseTo(1, 12);
      if (n < 8) expect(Math.abs(monomial(2 * n) / exact(2 * n) - 1)).toBeGreaterThan(1e-9);
    }
  });

  // Abramowitz and Stegun, table 25.4.
  test("points and weights of the handbook", () => {
    const rule = gaussLegendre(5);
    expect(rule.points[4]).toBeCloseTo(0.906179845938664, 15);
    expect(rule.points[3]).toBeCloseTo(0.538469310105683, 15);
    expect(rule.points[2]).toBeCloseTo(0, 15);
    expect(rule.weights[4]).toBeCloseTo(0.236926885056189, 15);
    expect(rule.weights[2]).toBeCloseTo(0.568888888888889, 15);
    const many = gaussLegendre(128);
    expect(many.weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(2, 13);
  });
});

describe("roots", () => {
  test("finds the change of sign of smooth, steep and flat functions", () => {
    fc.assert(
      fc.property(even(-5, 5), fc.constantFrom(1, 3, 9), (x0, degree) => {
        const f = (x: number): number => {
          let p = 1;
          for (let i = 0; i < degree; i++) p *= x - x0;
          return p;
        };
        const root = findRoot(f, -6, 7) ?? Number.NaN;
        expect(Math.abs(root - x0)).toBeLessThan(degree === 1 ? 1e-12 : 1e-3);
      }),
    );
    expect(findRoot((x) => Math.exp(x) - 2, 0, 1)).toBeCloseTo(Math.LN2, 14);
    expect(findRoot((x) => (x < 0.3 ? -1 : 1), 0, 1)).toBeCloseTo(0.3, 12);
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
  });

  test("says so where there is no change of sign", () => {
    expect(findRoot((x) => x * x + 1, -1, 1)).toBeUndefined();
    expect(findRoot(() => Number.NaN, -1, 1)).toBeUndefined();
  });
});

describe("powers", () => {
  test("whole powers of two are exact, the others to the last digits", () => {
    for (let n = -60; n <= 60; n++) {
      expect(exp2(n) * exp2(-n)).toBe(1);
      expect(Math.log2(exp2(n))).toBe(n);
    }
    expect(exp2(0.5)).toBeCloseTo(Math.SQRT2, 15);
    expect(exp2(1100)).toBe(Number.POSITIVE_INFINITY);
    expect(power(9, 0.5)).toBeCloseTo(3, 14);
    expect(power(0, 2)).toBe(0);
    expect(power(0, 0)).toBe(1);
    expect(power(-1, 0.5)).toBe(0);
  });
});
