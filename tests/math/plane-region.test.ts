import fc from "fast-check";
import { expect, test } from "vitest";
import { areaPoints, type PlaneRegion } from "../../src/math/plane-region.js";
import { gaussLegendre } from "../../src/math/quadrature.js";
import { even } from "../helpers/light-shapes.js";

const rule = gaussLegendre(40);

function area(region: PlaneRegion): number {
  return areaPoints(region, rule).reduce((sum, point) => sum + point.area, 0);
}

/** A square about the origin, turned, its lines of any length of normal. */
function square(half: number, turn: number, stretch = 1): PlaneRegion {
  const lines = [0, 1, 2, 3].map((k) => {
    const t = turn + (k * Math.PI) / 2;
    return { a: stretch * Math.cos(t), b: stretch * Math.sin(t), c: stretch * half };
  });
  return { lines, circles: [] };
}

test("areas of circle, square, segment and lens", () => {
  expect(area({ lines: [], circles: [{ x: 3, y: -2, r: 0.7 }] })).toBeCloseTo(Math.PI * 0.49, 12);
  fc.assert(
    fc.property(even(0, 6.28), even(0.1, 5), (turn, stretch) => {
      expect(area(square(0.5, turn, stretch))).toBeCloseTo(1, 10);
    }),
  );
  // Segment of a circle beyond a line at a distance d from its centre: r^2 acos(d/r) - d sqrt(r^2 - d^2).
  fc.assert(
    fc.property(even(-0.9, 0.9), even(0, 6.28), even(0.1, 5), (d, turn, stretch) => {
      const lines = [{ a: -stretch * Math.cos(turn), b: -stretch * Math.sin(turn), c: -stretch * d }];
      const expected = Math.acos(d) - d * Math.sqrt(1 - d * d);
      expect(area({ lines, circles: [{ x: 0, y: 0, r: 1 }] })).toBeCloseTo(expected, 7);
    }),
  );
  // Two unit circles at a distance d: 2 acos(d/2) - (d/2) sqrt(4 - d^2).
  fc.assert(
    fc.property(even(0.01, 1.95), even(0, 6.28), (d, turn) => {
      const circles = [
        { x: 1, y: 2, r: 1 },
        { x: 1 + d * Math.cos(turn), y: 2 + d * Math.sin(turn), r: 1 },
      ];
      const expected = 2 * Math.acos(d / 2) - (d / 2) * Math.sqrt(4 - d * d);
      expect(area({ lines: [], circles })).toBeCloseTo(expected, 7);
    }),
  );
});

test("a square with its corners cut by a circle", () => {
  // Four segments of the circle of radius r are cut off by the sides at 1/2.
  fc.assert(
    fc.property(even(0.505, 0.7), even(0, 6.28), (r, turn) => {
      const segment = r * r * Math.acos(0.5 / r) - 0.5 * Math.sqrt(r * r - 0.25);
      const region = { lines: square(0.5, turn, 2).lines, circles: [{ x: 0, y: 0, r }] };
      expect(area(region)).toBeCloseTo(Math.PI * r * r - 4 * segment, 7);
    }),
  );
});

test("every point lies inside; a region that is empty has none", () => {
  const region: PlaneRegion = { lines: square(0.5, 0.3, 3).lines, circles: [{ x: 0.4, y: 0.1, r: 0.5 }] };
  for (const { x, y } of areaPoints(region, rule)) {
    for (const { a, b, c } of region.lines) expect(a * x + b * y).toBeLessThan(c + 1e-12);
    expect(Math.hypot(x - 0.4, y - 0.1)).toBeLessThan(0.5 + 1e-12);
  }
  expect(areaPoints({ lines: [], circles: [] }, rule)).toEqual([]);
  const apart = [
    { x: 0, y: 0, r: 1 },
    { x: 3, y: 0, r: 1 },
  ];
  expect(areaPoints({ lines: [], circles: apart }, rule)).toEqual([]);
  expect(areaPoints({ lines: square(1, 0).lines, circles: [{ x: 5, y: 0, r: 1 }] }, rule)).toEqual([]);
});
