import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { carried, cornersOf, overlapOf, reachAlong, roundOf } from "../../../src/report/geometry/overlap.js";
import { boxesOf } from "../../../src/scene/boxes.js";
import type { Body } from "../../../src/scene/types.js";
import { sceneOf } from "../../helpers/worked.js";

const ball = (centre: Vec3, radius: number) =>
  roundOf({ kind: "sphere", name: "ball", centre, radius, reflectance: 0 });
const post = (from: Vec3, to: Vec3, radius: number) =>
  roundOf({ kind: "capsule", name: "post", from, to, radius, reflectance: 0 });
const egg = (centre: Vec3, a: number, b: number, c: number): Body => ({
  kind: "ellipsoid",
  name: "egg",
  centre,
  axes: [
    [a, 0, 0],
    [0, b, 0],
    [0, 0, c],
  ],
  reflectance: 0,
});
const scene = sceneOf(`
set {
  box crate { size: 60 x 40 x 80 cm, at: (0 m, 0 m, 0 m) }
  flat board { size: 2 x 2 m, at: (0 m, 3 m, 0 m) }
}
subject { at: (0 m, -3 m, 0 m) }
light key { shape: disc(20 cm), output: 900 lm s, distance: 2 m, bearing: left(0 deg), height: 2 m }`);
const crate = cornersOf("crate", boxesOf(scene.polygons)[0]?.sides ?? []);
const board = cornersOf(
  "board",
  scene.polygons.filter(({ name }) => name === "board"),
);

describe("how far convex things overlap", () => {
  test("balls by the sum of their radii less the way between their middles", () => {
    const b = ball([0.3, 0.4, 0], 0.35);
    expect(overlapOf(ball([0, 0, 0], 0.4), b, 0)).toBeCloseTo(0.75 - 0.5, 9);
    expect(overlapOf(ball([0, 0, 0], 0.1), b, 0)).toBe(0);
  });

  test("crossing posts by the sum of their radii less the way between their axes", () => {
    const a = post([-1, 0, 0], [1, 0, 0], 0.1);
    expect(overlapOf(a, post([0, -1, 0.15], [0, 1, 0.15], 0.08), 0)).toBeCloseTo(0.03, 6);
    expect(overlapOf(a, post([0, -1, 0.19], [0, 1, 0.19], 0.08), 0)).toBe(0);
  });

  test("a ball in a box by its nearest side, a ball past an edge by the way to the edge", () => {
    expect(overlapOf(ball([0, 0.1, 0.4], 0.05), crate, 0)).toBeCloseTo(0.1 + 0.05, 9);
    // The edge runs through (0.3, 0.2): 5 cm to the right and 12 cm behind it the ball's middle is 13 cm off.
    expect(overlapOf(ball([0.35, 0.32, 0.4], 0.14), crate, 0)).toBeCloseTo(0.01, 6);
    expect(overlapOf(ball([0.35, 0.32, 0.4], 0.129), crate, 0)).toBe(0);
  });

  test("a sheet through an oval by its half axis less how far from the middle it goes through", () => {
    // The board's plane lies 5 cm behind the middle of an oval of 20 cm half depth.
    expect(overlapOf(roundOf(egg([0, 2.95, 1], 0.5, 0.2, 0.5)), board, 0)).toBeCloseTo(0.15, 6);
    expect(overlapOf(roundOf(egg([0, 2.79, 1], 0.5, 0.2, 0.5)), board, 0)).toBe(0);
  });

  test("things that touch do not", () => {
    expect(overlapOf(ball([0, 0, 0.8 + 0.3], 0.3), crate, 1e-9)).toBe(0);
    expect(overlapOf(ball([0, 3 - 0.3, 1], 0.3), board, 1e-9)).toBe(0);
  });

  test("carried by what they share along any way they are apart, and by less than the overlap never", () => {
    const part = fc.double({ min: -0.25, max: 0.25, noNaN: true });
    const size = fc.double({ min: 0.05, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(part, part, part),
        fc.tuple(size, size, size),
        fc.tuple(part, part, part),
        (at, axes, way) => {
          const long = Math.hypot(...way);
          fc.pre(long > 0.01);
          const out: Vec3 = [way[0] / long, way[1] / long, way[2] / long];
          const a = roundOf(egg([at[0], at[1], 0.4 + at[2]], ...axes));
          const deep = overlapOf(a, crate, 0);
          fc.pre(deep > 0);
          const shared = reachAlong(crate, out) + reachAlong(a, [-out[0], -out[1], -out[2]]);
          const by = (far: number): Vec3 => [out[0] * far, out[1] * far, out[2] * far];
          expect(shared).toBeGreaterThanOrEqual(deep - 1e-6);
          expect(overlapOf(carried(a, by(shared + 1e-6)), crate, 1e-4)).toBe(0);
          expect(overlapOf(carried(a, by(deep * 0.9)), crate, 0)).toBeGreaterThanOrEqual(deep * 0.1 - 1e-4);
        },
      ),
    );
  });
});
