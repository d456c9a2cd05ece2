import { expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { segmentsApart2 } from "../../src/math/segments.js";

/** The least over many pairs of places on both lines: never less than the truth, and near it. */
function searched(p: Vec3, q: Vec3, a: Vec3, b: Vec3): number {
  const steps = 200;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++)
    for (let k = 0; k <= steps; k++) {
      const d = [0, 1, 2].map((n) => {
        const j = n as 0 | 1 | 2;
        return p[j] + (i / steps) * (q[j] - p[j]) - a[j] - (k / steps) * (b[j] - a[j]);
      });
      least = Math.min(
        least,
        d.reduce((sum, x) => sum + x * x, 0),
      );
    }
  return least;
}

test("lines that cross, pass, stand beside each other, and points", () => {
  expect(segmentsApart2([-1, 0, 0], [1, 0, 0], [0, -1, 0], [0, 1, 0])).toBeCloseTo(0, 12);
  expect(segmentsApart2([-1, 0, 0], [1, 0, 0], [0, -1, 2], [0, 1, 2])).toBeCloseTo(4, 12);
  expect(segmentsApart2([0, 0, 0], [1, 0, 0], [0, 3, 0], [1, 3, 0])).toBeCloseTo(9, 12);
  expect(segmentsApart2([0, 0, 0], [1, 0, 0], [4, 4, 0], [9, 4, 0])).toBeCloseTo(25, 12);
  expect(segmentsApart2([2, 0, 0], [2, 0, 0], [0, 1, 0], [1, 1, 0])).toBeCloseTo(2, 12);
});

test("any two lines lie as far apart as a search finds", () => {
  let seed = 7;
  const next = (): number => {
    seed = (seed * 16807) % 2147483647;
    return (4 * seed) / 2147483647 - 2;
  };
  const point = (): Vec3 => [next(), next(), next()];
  for (let i = 0; i < 60; i++) {
    const [p, q, a, b] = [point(), point(), point(), point()];
    const found = segmentsApart2(p, q, a, b);
    const least = searched(p, q, a, b);
    expect(found).toBeLessThan(least + 1e-12);
    // A step of the search is 1/200 of lines up to 7 m long.
    expect(Math.sqrt(least) - Math.sqrt(found)).toBeLessThan(0.04);
  }
});
