import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { degrees, radians, rotateAbout } from "../../src/math/rotation.js";
import {
  add,
  addScaled,
  angleBetween,
  between,
  cross,
  distance,
  dot,
  frameAround,
  length,
  normalise,
  scale,
  subtract,
} from "../../src/math/vector.js";
import { direction, even, place } from "../helpers/light-shapes.js";

function expectNear(a: Vec3, b: Vec3): void {
  for (const axis of [0, 1, 2] as const) expect(a[axis]).toBeCloseTo(b[axis], 9);
}

describe("vectors", () => {
  test("sums, differences and products of known vectors", () => {
    expect(add([1, 2, 3], [4, 5, 6])).toEqual([5, 7, 9]);
    expect(subtract([1, 2, 3], [4, 5, 7])).toEqual([-3, -3, -4]);
    expect(scale([1, -2, 3], 2)).toEqual([2, -4, 6]);
    expect(addScaled([1, 1, 1], [1, 2, 3], 2)).toEqual([3, 5, 7]);
    expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
    expect(length([3, 4, 12])).toBe(13);
    expect(distance([1, 1, 1], [1, 4, 5])).toBe(5);
    expect(between([0, 0, 0], [2, 4, 6], 0.25)).toEqual([0.5, 1, 1.5]);
  });

  test("a vector without a length has no direction", () => {
    expect(normalise([0, 0, 0])).toBeUndefined();
    expect(normalise([Number.MAX_VALUE, Number.MAX_VALUE, 0])).toBeUndefined();
    expect(normalise([0, 0, 5])).toEqual([0, 0, 1]);
  });

  test("the vector product is square to both, and its length is that of the sine", () => {
    fc.assert(
      fc.property(place, place, (a, b) => {
        const c = cross(a, b);
        expect(dot(c, a)).toBeCloseTo(0, 9);
        expect(dot(c, b)).toBeCloseTo(0, 9);
        expect(dot(c, c) + dot(a, b) * dot(a, b)).toBeCloseTo(dot(a, a) * dot(b, b), 6);
      }),
    );
  });

  test("small and nearly opposite angles keep their digits", () => {
    expect(angleBetween([1, 0, 0], [1, 1e-9, 0])).toBeCloseTo(1e-9, 20);
    expect(Math.PI - angleBetween([1, 0, 0], [-1, 1e-9, 0])).toBeCloseTo(1e-9, 15);
  });

  test("a frame about any direction is right-handed and of unit vectors", () => {
    fc.assert(
      fc.property(direction, (n) => {
        const [u, v] = frameAround(n);
        expect(length(u)).toBeCloseTo(1, 12);
        expect(dot(u, n)).toBeCloseTo(0, 12);
        expectNear(cross(u, v), n);
      }),
    );
    expectNear(cross(...frameAround([0, 0, 1])), [0, 0, 1]);
    expectNear(cross(...frameAround([0, 0, -1])), [0, 0, -1]);
  });
});

describe("rotation", () => {
  test("a quarter turn about z takes x to y", () => {
    expectNear(rotateAbout([1, 0, 0], [0, 0, 1], Math.PI / 2), [0, 1, 0]);
  });

  test("keeps lengths and angles, and turns back", () => {
    fc.assert(
      fc.property(place, place, direction, even(-360, 360), (a, b, axis, deg) => {
        const turn = (v: Vec3): Vec3 => rotateAbout(v, axis, radians(deg));
        expect(dot(turn(a), turn(b))).toBeCloseTo(dot(a, b), 8);
        expectNear(rotateAbout(turn(a), axis, -radians(deg)), a);
        expectNear(turn(axis), axis);
      }),
    );
    expect(degrees(radians(123))).toBeCloseTo(123, 12);
  });
});
