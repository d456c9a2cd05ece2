import { describe, expect, test } from "vitest";
import { apart, apartWork, type Convex } from "../../src/math/convex.js";

const body = (points: readonly (readonly number[])[], axes: readonly number[] = []): Convex => {
  const all = new Float64Array(9);
  all.set(axes);
  const middle = [0, 1, 2].map((k) => points.reduce((sum, p) => sum + (p[k] as number), 0) / points.length);
  return { points: Float64Array.from(points.flat()), axes: all, middle: Float64Array.from(middle) };
};

const ball = (at: readonly number[], r: number): Convex => body([at], [r, 0, 0, 0, r, 0, 0, 0, r]);
const far = Number.POSITIVE_INFINITY;
const work = apartWork();

describe("how far two convex bodies are apart at the least", () => {
  test("two balls: the way between the middles less both radii", () => {
    // From the middles on the first direction is the right one.
    expect(apart(ball([0, 0, 0], 1), null, ball([3, 4, 0], 1.5), far, work)).toBeCloseTo(2.5, 12);
    expect(apart(ball([0, 0, 0], 1), null, ball([3, 4, 0], 4.1), far, work)).toBe(0);
  });

  test("a disc and a ball past its rim, a square and a ball over its face", () => {
    const disc = body([[0, 0, 0]], [2, 0, 0, 0, 2, 0]);
    // The nearest place of the disc to (5, 0, 4) is (2, 0, 0), 5 m away.
    const found = apart(disc, null, ball([5, 0, 4], 1), far, work);
    expect(found).toBeGreaterThan(3.5);
    expect(found).toBeLessThanOrEqual(4 + 1e-12);
    const square = body([
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [0, 10, 0],
    ]);
    const over = apart(square, null, ball([1, 2, 3], 1), far, work);
    expect(over).toBeGreaterThan(1.5);
    expect(over).toBeLessThanOrEqual(2 + 1e-12);
  });

  test("the hull of two holds what lies between them", () => {
    const [left, right] = [ball([-5, 0, 0], 0.5), ball([5, 0, 0], 1)];
    const between = ball([0, 1.1, 0], 0.2);
    expect(apart(left, null, between, 0, work)).toBeGreaterThan(0);
    expect(apart(right, null, between, 0, work)).toBeGreaterThan(0);
    // In the middle the hull is 0.75 m thick from its axis, and a hair more by its slope.
    expect(apart(left, right, between, 0, work)).toBeGreaterThan(0);
    expect(apart(left, right, ball([0, 0.9, 0], 0.2), 0, work)).toBe(0);
  });

  test("never more than between any two of their places, and found for most that are clear of each other", () => {
    let seed = 5;
    const next = (): number => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    const some = (): Convex => {
      const at = [6 * next(), 6 * next(), 6 * next()];
      const points = Array.from({ length: 1 + Math.floor(4 * next()) }, () =>
        at.map((part) => part + 2 * next() - 1),
      );
      const r = next();
      return body(points, next() < 0.5 ? [] : [r, 0, 0, 0, 0.5 * r, 0, 0, 0, 0.2 * r]);
    };
    /** Places all over a body: mixtures of its points, with places of the ellipsoid round them. */
    const places = ({ points, axes }: Convex): number[][] =>
      Array.from({ length: 60 }, () => {
        const count = points.length / 3;
        const weights = Array.from({ length: count }, () => next() ** 3);
        const whole = weights.reduce((sum, weight) => sum + weight, 0);
        const way = [next() - 0.5, next() - 0.5, next() - 0.5];
        const size = Math.hypot(...way);
        return [0, 1, 2].map((k) => {
          const on = weights.reduce((sum, w, i) => sum + (w / whole) * (points[3 * i + k] as number), 0);
          return on + way.reduce((sum, part, i) => sum + (part / size) * (axes[3 * i + k] as number), 0);
        });
      });
    let clear = 0;
    let found = 0;
    for (let i = 0; i < 400; i++) {
      const [a, b] = [some(), some()];
      const gap = apart(a, null, b, far, work);
      const [inA, inB] = [places(a), places(b)];
      const least = Math.min(
        ...inA.flatMap((p) => inB.map((q) => Math.hypot(...p.map((part, k) => part - (q[k] as number))))),
      );
      expect(gap).toBeLessThanOrEqual(least + 1e-9);
      if (least > 0.5) clear++;
      if (least > 0.5 && gap > 0) found++;
    }
    expect(clear).toBeGreaterThan(100);
    expect(found).toBeGreaterThan(0.95 * clear);
  });
});
