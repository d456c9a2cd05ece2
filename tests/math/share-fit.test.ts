import { describe, expect, test } from "vitest";
import { fitShares, weightedMean } from "../../src/math/share-fit.js";

describe("factors from sums of shares", () => {
  test("one factor is the mean of its readings, weighed by one over the squares of their tolerances", () => {
    // (0 / 0.1^2 + 1 / 0.2^2) / (1 / 0.1^2 + 1 / 0.2^2) = 25 / 125.
    const { stops, halves, left } = fitShares([[1], [1]], [0, 1], [0.1, 0.2]);
    expect(stops[0]).toBeCloseTo(0.2, 3);
    expect(left).toEqual([expect.closeTo(-0.2, 3), expect.closeTo(0.8, 3)]);
    // 1 / sqrt(125) by propagation, and wider by sqrt((2^2 + 4^2) / 1), Birge's ratio: two readings, one number.
    expect(halves[0]).toBeCloseTo(Math.sqrt(20 / 125), 3);
  });

  test("readings that agree better than their tolerances do not make a factor surer than these say", () => {
    const { halves } = fitShares([[1], [1], [1], [1]], [0.5, 0.5, 0.5, 0.5], [0.1, 0.1, 0.1, 0.1]);
    expect(halves[0]).toBeCloseTo(0.1 / Math.sqrt(4), 4);
  });

  test("two that never shine together have each its own reading and tolerance", () => {
    const { stops, halves } = fitShares(
      [
        [4, 0],
        [0, 1],
      ],
      [3, -1],
      [0.1, 0.3],
    );
    // 4 x 2^1 = 2^3, 1 x 2^-1 = 2^-1.
    expect(stops).toEqual([expect.closeTo(1, 3), expect.closeTo(-1, 3)]);
    expect(halves).toEqual([expect.closeTo(0.1, 3), expect.closeTo(0.3, 3)]);
  });

  test("two that shine together are found from both readings", () => {
    // a + b = 3 and a + 3 b = 5: a = 2, b = 1.
    const { stops, left } = fitShares(
      [
        [1, 1],
        [1, 3],
      ],
      [Math.log2(3), Math.log2(5)],
      [0.05, 0.05],
    );
    expect(stops).toEqual([expect.closeTo(1, 3), expect.closeTo(0, 3)]);
    expect(Math.max(...left.map(Math.abs))).toBeLessThan(1e-3);
  });

  test("one that nothing tells stays where it is, and is told by nothing", () => {
    const { stops, halves } = fitShares([[1, 0]], [1.5], [0.1]);
    expect(stops).toEqual([expect.closeTo(1.5, 3), expect.closeTo(0, 3)]);
    expect(halves[1]).toBeGreaterThan(10);
  });

  test("the mean of unlike weights; 0 of none", () => {
    expect(weightedMean([1, 4], [2, 1])).toBe(2);
    expect(weightedMean([], [])).toBe(0);
  });
});
