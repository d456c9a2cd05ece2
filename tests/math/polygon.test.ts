import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { lambertVector } from "../../src/math/lambert-polygon.js";
import { areaVector, clipByPlane, cornerMean, polygonArea } from "../../src/math/polygon.js";
import { polygonSolidAngle, triangleSolidAngle } from "../../src/math/solid-angle.js";
import { add } from "../../src/math/vector.js";
import { direction, even, place } from "../helpers/light-shapes.js";

const square: readonly Vec3[] = [
  [-1, -1, 0],
  [1, -1, 0],
  [1, 1, 0],
  [-1, 1, 0],
];

describe("polygons", () => {
  test("area and area vector of known polygons", () => {
    expect(areaVector(square)).toEqual([0, 0, 4]);
    expect(
      polygonArea([
        [0, 0, 5],
        [3, 0, 5],
        [0, 4, 5],
      ]),
    ).toBe(6);
    expect(polygonArea([])).toBe(0);
    expect(cornerMean(square)).toEqual([0, 0, 0]);
    expect(cornerMean([])).toBeUndefined();
  });

  test("the parts on both sides of a plane have the whole area", () => {
    fc.assert(
      fc.property(direction, even(-1.5, 1.5), (n, offset) => {
        const one = clipByPlane(square, n, offset);
        const other = clipByPlane(square, [-n[0], -n[1], -n[2]], -offset);
        expect(add(areaVector(one), areaVector(other))[2]).toBeCloseTo(4, 9);
        for (const p of one) expect(n[0] * p[0] + n[1] * p[1] + n[2] * p[2]).toBeGreaterThan(offset - 1e-9);
      }),
    );
  });

  test("a plane that misses leaves all or nothing", () => {
    expect(clipByPlane(square, [0, 0, 1], -1)).toBe(square);
    expect(clipByPlane(square, [0, 0, 1], 1)).toEqual([]);
    expect(clipByPlane(square, [1, 0, 0], 1)).toEqual([]);
    expect(clipByPlane(square, [1, 0, 0], -1)).toBe(square);
  });
});

describe("solid angle", () => {
  test("an octant is an eighth of the sphere", () => {
    expect(triangleSolidAngle(1, 0, 0, 0, 1, 0, 0, 0, 1)).toBeCloseTo(Math.PI / 2, 14);
    expect(triangleSolidAngle(0, 2, 0, 3, 0, 0, 0, 0, 1)).toBeCloseTo(-Math.PI / 2, 14);
  });

  test("the faces of a cube fill the sphere from any point inside", () => {
    fc.assert(
      fc.property(even(-0.9, 0.9), even(-0.9, 0.9), even(-0.9, 0.9), (x, y, z) => {
        const faces: readonly (readonly Vec3[])[] = [
          square.map(([a, b]): Vec3 => [a, b, -1]),
          square.map(([a, b]): Vec3 => [b, a, 1]),
          square.map(([a, b]): Vec3 => [-1, a, b]),
          square.map(([a, b]): Vec3 => [1, b, a]),
          square.map(([a, b]): Vec3 => [b, -1, a]),
          square.map(([a, b]): Vec3 => [a, 1, b]),
        ];
        const sum = faces.reduce((total, face) => total + polygonSolidAngle(face, [x, y, z]), 0);
        expect(Math.abs(sum)).toBeCloseTo(4 * Math.PI, 10);
      }),
    );
  });

  test("a small square far away is its area over the square of the distance, to ten digits", () => {
    const small = square.map(([a, b]): Vec3 => [a / 1000, b / 1000, 100]);
    // 4 atan(xy / (d sqrt(d^2 + x^2 + y^2))), x = y = 0.001, d = 100
    const expected = 4 * Math.atan(1e-6 / (100 * Math.sqrt(1e4 + 2e-6)));
    expect(polygonSolidAngle(small, [0, 0, 0]) / expected).toBeCloseTo(1, 10);
  });
});

describe("Lambert's sum", () => {
  // Element facing a parallel square of side 2 at distance 1, on its axis: 4 t atan t, t = 1 / sqrt 2.
  test("the middle of a square", () => {
    const t = Math.SQRT1_2;
    expect(lambertVector(square, [0, 0, 1])[2]).toBeCloseTo(4 * t * Math.atan(t), 14);
    expect(lambertVector(square, [0, 0, -1])[2]).toBeCloseTo(4 * t * Math.atan(t), 14);
  });

  test("a polygon is the sum of its parts", () => {
    fc.assert(
      fc.property(place, direction, even(-1, 1), (p, n, offset) => {
        fc.pre(Math.abs(p[2]) > 1e-3);
        const one = lambertVector(clipByPlane(square, n, offset), p);
        const other = lambertVector(clipByPlane(square, [-n[0], -n[1], -n[2]], -offset), p);
        const whole = lambertVector(square, p);
        for (const axis of [0, 1, 2] as const) expect(one[axis] + other[axis]).toBeCloseTo(whole[axis], 9);
      }),
    );
    expect(lambertVector([], [0, 0, 0])).toEqual([0, 0, 0]);
  });
});
