import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nearestOnEllipsoid } from "../../src/math/nearest-on-ellipsoid.js";

type Three = readonly [number, number, number];

const half = fc.double({ min: 0.02, max: 3, noNaN: true });
const unit = fc.double({ min: -1, max: 1, noNaN: true });
const apart = (a: Three, b: Three): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe("the point of an ellipsoid that is nearest to one inside", () => {
  test("is as far off as a ball is deep there", () => {
    const near = nearestOnEllipsoid([0.3, 0.3, 0.3], [0.1, 0.2, 0.1]);
    expect(apart(near, [0.1, 0.2, 0.1])).toBeCloseTo(0.3 - Math.sqrt(0.06), 12);
  });

  test("is the end of the shortest axis, from the middle and from a place on that axis", () => {
    for (const z of [0, 0.02, -0.05]) {
      const [x, y, far] = nearestOnEllipsoid([0.3, 0.2, 0.1], [0, 0, z]);
      expect(Math.hypot(x, y)).toBeLessThan(1e-9);
      expect(Math.abs(far)).toBeCloseTo(0.1, 9);
    }
  });

  test("of a point on the long axis near its end is that end, further in it lies beside: the ends bend with b^2 / a", () => {
    // Of the ellipse with half axes 2 and 1 the end bends with radius 1/2, so up to 1/2 before it, it is the nearest.
    expect(nearestOnEllipsoid([2, 1, 1], [1.6, 0, 0])[0]).toBeCloseTo(2, 6);
    const [x, y, z] = nearestOnEllipsoid([2, 1, 1], [1.2, 0, 0]);
    // (x - 1.2)^2 + 1 - x^2 / 4 is least for x = 1.6.
    expect(x).toBeCloseTo(1.6, 6);
    expect(Math.hypot(y, z)).toBeCloseTo(0.6, 6);
  });

  test("lies on it, with the way out along its normal, and no point of it is nearer", () => {
    fc.assert(
      fc.property(
        fc.tuple(half, half, half),
        fc.tuple(unit, unit, unit),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.array(fc.tuple(unit, unit, unit), { minLength: 20, maxLength: 20 }),
        (axes, way, share, others) => {
          const size = Math.max(1e-6, Math.hypot(...way));
          const inside = axes.map((e, i) => (e * share * (way[i] as number)) / size) as unknown as Three;
          const near = nearestOnEllipsoid(axes, inside);
          const on = near.reduce(
            (sum, part, i) => sum + (part / (axes[i] as number)) * (part / (axes[i] as number)),
            0,
          );
          expect(on).toBeCloseTo(1, 6);
          const far = apart(near, inside);
          for (const other of others) {
            const long = Math.hypot(...other);
            const place = axes.map((e, i) => (e * (other[i] as number)) / long) as unknown as Three;
            if (Math.hypot(...other) > 1e-6) expect(far).toBeLessThanOrEqual(apart(place, inside) + 1e-7);
          }
        },
      ),
    );
  });
});
