import fc from "fast-check";
import { expect, test } from "vitest";
import { cross, dot } from "../../src/math/vector.js";
import { rectangleCorners, rolledFrame, uprightFrame } from "../../src/scene/frame.js";
import { randomDirection, randomFrom } from "../helpers/random.js";

const anyAxis = fc.nat(1_000_000).map((seed) => randomDirection(randomFrom(seed)));

test("an upright frame has a level width, runs right for one who looks at its front, and its height points up", () => {
  expect(uprightFrame([0, -1, 0])).toEqual({
    across: [1, 0, 0],
    along: [expect.closeTo(0), expect.closeTo(0), 1],
  });
  expect(uprightFrame([1, 0, 0]).across.map((x) => x + 0)).toEqual([0, 1, 0]);
  fc.assert(
    fc.property(anyAxis, (axis) => {
      const { across, along } = uprightFrame(axis);
      expect(across[2]).toBe(0);
      expect(along[2]).toBeGreaterThanOrEqual(0);
      expect(dot(cross(across, along), axis)).toBeCloseTo(1, 12);
    }),
  );
});

test("a rolled frame keeps its axis and turns its width towards its height", () => {
  fc.assert(
    fc.property(anyAxis, fc.double({ min: -3, max: 3, noNaN: true }), (axis, angle) => {
      const upright = uprightFrame(axis);
      const { across, along } = rolledFrame(upright, angle);
      expect(dot(cross(across, along), axis)).toBeCloseTo(1, 12);
      expect(dot(across, upright.along)).toBeCloseTo(Math.sin(angle), 12);
    }),
  );
});

test("a rectangle's corners start at the lower left of one who looks at its front", () => {
  const corners = rectangleCorners([0, 2, 1], uprightFrame([0, -1, 0]), 2, 1);
  expect(corners).toEqual([
    [-1, 2, 0.5],
    [1, 2, 0.5],
    [1, 2, 1.5],
    [-1, 2, 1.5],
  ]);
});
