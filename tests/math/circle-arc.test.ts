import fc from "fast-check";
import { expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import {
  arcPoint,
  arcVector,
  type CircleArc,
  clipArc,
  clippedRegionVector,
} from "../../src/math/circle-arc.js";
import { gaussLegendre, integrate } from "../../src/math/quadrature.js";
import { cross, dot, frameAround } from "../../src/math/vector.js";
import { direction, even } from "../helpers/light-shapes.js";

const arc: fc.Arbitrary<CircleArc> = fc
  .tuple(direction, even(0.05, 1.5), even(-7, 7), even(0.1, 6.28))
  .map(([d, half, from, turn]) => {
    const [u, v] = frameAround(d);
    return { d, u, v, along: Math.cos(half), out: Math.sin(half), from, to: from + turn };
  });

test("an arc's share is half the integral of direction x d(direction)", () => {
  const rule = gaussLegendre(48);
  fc.assert(
    fc.property(arc, (a) => {
      const share = arcVector(a);
      for (const axis of [0, 1, 2] as const) {
        const direct = integrate(
          rule,
          (t) => {
            const step: Vec3 = [
              a.out * (Math.cos(t) * a.v[0] - Math.sin(t) * a.u[0]),
              a.out * (Math.cos(t) * a.v[1] - Math.sin(t) * a.u[1]),
              a.out * (Math.cos(t) * a.v[2] - Math.sin(t) * a.u[2]),
            ];
            return cross(arcPoint(a, t), step)[axis] / 2;
          },
          a.from,
          a.to,
        );
        expect(share[axis]).toBeCloseTo(direct, 10);
      }
    }),
  );
});

test("clipping keeps just the stretches on the right side", () => {
  fc.assert(
    fc.property(arc, direction, (a, m) => {
      const kept = clipArc(a, m);
      for (let i = 0; i <= 200; i++) {
        const t = a.from + ((a.to - a.from) * i) / 200;
        const side = dot(m, arcPoint(a, t));
        const inside = kept.some((part) => part.from - 1e-12 <= t && t <= part.to + 1e-12);
        if (Math.abs(side) > 1e-9) expect(inside).toBe(side > 0);
      }
    }),
  );
});

test("half of a cap about the horizon's normal has half the vector along the horizon", () => {
  const cap: CircleArc = {
    d: [0, 0, 1],
    u: [1, 0, 0],
    v: [0, 1, 0],
    along: 0.8,
    out: 0.6,
    from: 0,
    to: 2 * Math.PI,
  };
  const [, , z] = clippedRegionVector([cap], [1, 0, 0]);
  expect(z).toBeCloseTo((Math.PI * 0.36) / 2, 14);
  expect(clippedRegionVector([cap], [0, 0, 1])[2]).toBeCloseTo(Math.PI * 0.36, 14);
  expect(clippedRegionVector([cap], [0, 0, -1])).toEqual([0, 0, 0]);
});
