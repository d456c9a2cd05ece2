import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cross, dot, length, normalise } from "../../../src/math/vector.js";
import {
  bodyOutline,
  fromAbove,
  fromRight,
  openingOutline,
  type Sheet,
} from "../../../src/report/figures/outlines.js";
import type { Body } from "../../../src/scene/types.js";
import { direction } from "../../helpers/light-shapes.js";

const widthAlong = (places: readonly (readonly [number, number])[], x: number, y: number): number => {
  const along = places.map(([a, b]) => a * x + b * y);
  return Math.max(...along) - Math.min(...along);
};

describe("the outline of a body seen from far away", () => {
  test("of an ellipsoid: in every direction as wide as its axes make it", () => {
    fc.assert(
      fc.property(direction, direction, (a, sight) => {
        const u = normalise(cross(a, [0.3, -0.5, 0.81])) ?? [1, 0, 0];
        const w = cross(a, u);
        const axes = [
          a.map((part) => 0.3 * part),
          u.map((part) => 0.11 * part),
          w.map((part) => 0.06 * part),
        ] as unknown as Extract<Body, { kind: "ellipsoid" }>["axes"];
        const right = normalise(cross(sight, [0.2, 0.9, -0.3])) ?? [1, 0, 0];
        const sheet: Sheet = { zero: [0, 0, 0], right, up: cross(sight, right) };
        const body: Body = { kind: "ellipsoid", name: "x", centre: [0, 0, 0], axes, reflectance: 0 };
        const outline = bodyOutline(sheet, body);
        for (const corner of [0, 5, 13, 20]) {
          const turn = (2 * Math.PI * corner) / 48;
          const [x, y] = [Math.cos(turn), Math.sin(turn)];
          const way = right.map((part, i) => part * x + (sheet.up[i] as number) * y) as never;
          // Along w an ellipsoid reaches the root of the sum of (axis . w)^2 to either side.
          const reach = Math.sqrt(axes.reduce((sum, axis) => sum + dot(axis, way) * dot(axis, way), 0));
          expect(widthAlong(outline, x, y)).toBeCloseTo(2 * reach, 12);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("of a capsule: as long as it lies in sight, and as thick as it is", () => {
    const tube: Body = {
      kind: "capsule",
      name: "x",
      from: [0, 0, 1],
      to: [0.3, 0.4, 1],
      radius: 0.1,
      reflectance: 0,
    };
    const above = bodyOutline(fromAbove, tube);
    expect(widthAlong(above, 0.6, 0.8)).toBeCloseTo(0.7, 9);
    expect(widthAlong(above, -0.8, 0.6)).toBeCloseTo(0.2, 9);
    expect(widthAlong(bodyOutline(fromRight, tube), 1, 0)).toBeCloseTo(0.6, 9);
  });

  test("of an opening: its corners where they hang; a disc is foreshortened by the cosine", () => {
    const tilt = Math.PI / 3;
    const lamp = {
      centre: [1, 2, 3],
      across: [1, 0, 0],
      along: [0, Math.sin(tilt), Math.cos(tilt)],
    } as const;
    const box = openingOutline(fromAbove, { ...lamp, shape: { kind: "rectangle", width: 0.6, height: 0.9 } });
    expect(widthAlong(box, 1, 0)).toBeCloseTo(0.6, 12);
    expect(widthAlong(box, 0, 1)).toBeCloseTo(0.9 * Math.sin(tilt), 12);
    const dish = openingOutline(fromRight, { ...lamp, shape: { kind: "disc", radius: 0.5 } });
    expect(widthAlong(dish, 0, 1)).toBeCloseTo(2 * 0.5 * Math.cos(tilt), 12);
    expect(length(lamp.along)).toBeCloseTo(1, 12);
  });
});
