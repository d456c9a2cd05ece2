import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { shadowOn } from "../../../src/report/thrown/cone.js";
import type { PolygonOccluder } from "../../../src/transport/hiding/occluder.js";

/** An upright sheet in the plane x = 0.5, from y = -0.5 to 3.5 m and from the floor to 2.4 m. */
const corners: readonly Vec3[] = [
  [0.5, -0.5, 0],
  [0.5, 3.5, 0],
  [0.5, 3.5, 2.4],
  [0.5, -0.5, 2.4],
];
const sheet: PolygonOccluder = {
  kind: "polygon",
  corners,
  normal: [1, 0, 0],
  offset: 0.5,
  edges: [],
  shell: false,
  centre: [0.5, 1.5, 1.2],
  bound: 2.4,
  index: 0,
};
const floor: readonly Vec3[] = [
  [-10, -10, 0],
  [10, -10, 0],
  [10, 10, 0],
  [-10, 10, 0],
];
const ground = {
  polygon: { name: "floor" },
  normal: [0, 0, 1],
  offset: 0,
  u: [1, 0, 0],
  v: [0, 1, 0],
} as never;

const areaOf = (ring: readonly Vec3[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length] as Vec3;
      return sum + x * ny - nx * y;
    }, 0),
  ) / 2;

describe("a wide sheet close beside a light", () => {
  test("throws its whole shadow: what lies behind it between the rays over its edges", () => {
    const ring = shadowOn(sheet, [0, 0, 1.2], ground, floor);
    // Things end a thousandth of a millimetre above the floor. Behind x = 0.5 a ray to (x, y) on the floor meets the sheet where y 0.5 / x lies between -0.5 and 3.5: y from -x to
    // 7 x, cut at 10 m: (50 - 0.125) + 3.5 ((10 / 7)^2 - 0.25) + 10 (10 - 10 / 7).
    const wide = 50 - 0.125 + 3.5 * ((10 / 7) * (10 / 7) - 0.25) + 10 * (10 - 10 / 7);
    expect(areaOf(ring)).toBeCloseTo(wide, 5);
  });
});
