import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import {
  type AngularWidths,
  angleBetweenPoints,
  angularWidths,
  coneSolidAngle,
  equivalentCone,
  SUN_ANGULAR_DIAMETER_DEG,
  sphereWidth,
  timesSun,
  widthSquareOn,
  widthTurned,
} from "../../src/physics/angular-size.js";
import { solidAngle } from "../../src/physics/illuminance.js";
import { extentAlong } from "../../src/physics/source-extent.js";
import { sourceOutline } from "../../src/physics/source-outline.js";
import { lowestPoint, rectangleSource, type SourceShape } from "../../src/physics/source-shape.js";
import { sunAngularDiameter } from "../../src/physics/sun-size.js";
import { direction, even, place, source } from "../helpers/light-shapes.js";
import { mustBreak } from "../helpers/must-break.js";

const DEGREES = 180 / Math.PI;

describe("angular widths", () => {
  /** The widest angle between two corners of the outline. */
  const widest = (s: SourceShape, eye: Vec3): number => {
    const corners = sourceOutline(s, eye, 60);
    let most = 0;
    for (const a of corners) for (const b of corners) most = Math.max(most, angleBetweenPoints(a, b, eye));
    return most;
  };
  const bounded = (widths: typeof angularWidths) => () => {
    fc.assert(
      fc.property(source, place, (s, eye) => {
        const found = widths(s, eye);
        const omega = solidAngle(s, ...eye);
        expect(found === undefined).toBe(omega === 0);
        if (found === undefined) return;
        expect(found.least).toBeLessThanOrEqual(found.greatest + 1e-12);
        const most = Math.max(found.greatest, found.diagonal ?? 0);
        // No width exceeds the widest pair of the outline; a round outline of 60 corners misses 0.2 % of it at most,
        // and the mid-lines of a wide rectangle or disc from close by fall short of the widest pair.
        expect(most).toBeLessThan(widest(s, eye) * 1.002 + 1e-9);
        // A small source is about as large as the ellipse or rectangle of its widths.
        if (most < 0.05) {
          const share = omega / (found.least * found.greatest);
          expect(share).toBeGreaterThan(0.74);
          expect(share).toBeLessThan(1.02);
        }
      }),
      { numRuns: 300 },
    );
  };
  test("lie under the widest pair of the outline and fit the solid angle", () => {
    bounded(angularWidths)();
    const spoilt =
      (change: (w: AngularWidths) => AngularWidths): typeof angularWidths =>
      (s, eye) => {
        const found = angularWidths(s, eye);
        return found === undefined ? undefined : change(found);
      };
    mustBreak(bounded(spoilt((w) => ({ ...w, greatest: w.greatest * 1.1 }))));
    mustBreak(bounded(spoilt((w) => ({ ...w, least: w.least * 0.7 }))));
  });

  test("a tilted disc: the tilted diameter and the one across it", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 0], normal: [0, 0, 1], radius: 0.75 };
    const t = 60 / DEGREES;
    const seen = angularWidths(disc, [1.5 * Math.sin(t), 0, 1.5 * Math.cos(t)]);
    expect((seen?.least ?? 0) * DEGREES).toBeCloseTo(33.69006753, 8);
    expect(seen?.greatest).toBeCloseTo(2 * Math.atan(0.5), 12);
  });

  test("a rectangle from its axis: mid-lines and diagonal", () => {
    const seen = angularWidths(rectangleSource([0, 0, 0], [1, 0, 0], [0, 1, 0], 1.2, 0.8), [0, 0, 1.5]);
    expect((seen?.greatest ?? 0) * DEGREES).toBeCloseTo(43.60281897, 8);
    expect((seen?.least ?? 0) * DEGREES).toBeCloseTo(2 * Math.atan(0.8 / 3) * DEGREES, 8);
    expect((seen?.diagonal ?? 0) * DEGREES).toBeCloseTo(51.35092643, 8);
  });

  test("a tube from its side and from its end", () => {
    const tube: SourceShape = { kind: "capsule", from: [-0.5, 0, 0], to: [0.5, 0, 0], radius: 0.05 };
    const side = angularWidths(tube, [0, 0, 2]);
    expect(side?.least).toBeCloseTo(2 * Math.asin(0.05 / 2), 12);
    expect(side?.greatest).toBeCloseTo(2 * (Math.atan(0.25) + Math.asin(0.05 / Math.hypot(2, 0.5))), 12);
    const end = angularWidths(tube, [2.5, 0, 0]);
    expect(end?.least).toBeCloseTo(2 * Math.asin(0.05 / 2), 12);
    expect(end?.greatest).toBeCloseTo(2 * Math.asin(0.05 / 2), 12);
    expect(angularWidths(tube, [0.3, 0, 0.01])).toBeUndefined();
  });
});

describe("cones", () => {
  test("solid angle and equivalent cone undo each other", () => {
    fc.assert(
      fc.property(even(0, 2 * Math.PI), (angle) => {
        expect(equivalentCone(coneSolidAngle(angle))).toBeCloseTo(angle, 7);
      }),
    );
    expect(equivalentCone(1e-12)).toBeCloseTo(2 * Math.sqrt(1e-12 / Math.PI), 18);
    expect(equivalentCone(4 * Math.PI)).toBeCloseTo(2 * Math.PI, 12);
  });

  test("a sphere is its own equivalent cone", () => {
    const ball: SourceShape = { kind: "sphere", centre: [0, 0, 2], radius: 0.3 };
    expect(equivalentCone(solidAngle(ball, 0, 0, 0))).toBeCloseTo(sphereWidth(0.3, 2) ?? 0, 12);
    expect(sphereWidth(0.3, 0.3)).toBeUndefined();
  });

  test("the sun's size is the mean of the year's, to its last digit", () => {
    expect((sunAngularDiameter(1) ?? 0) * DEGREES).toBeCloseTo(SUN_ANGULAR_DIAMETER_DEG, 3);
    expect(timesSun(5.33)).toBeCloseTo(10, 12);
  });

  test("a turned length is square on without a turn and gone at a right angle", () => {
    expect(widthTurned(1.2, 1.5, 0)).toBeCloseTo(widthSquareOn(1.2, 1.5), 12);
    expect(widthTurned(1.2, 1.5, Math.PI / 2)).toBeCloseTo(0, 12);
  });
});

describe("extent of a source along a direction", () => {
  test("is what its lowest points to both sides leave between them", () => {
    fc.assert(
      fc.property(source, direction, (s, n) => {
        const back: Vec3 = [-n[0], -n[1], -n[2]];
        expect(extentAlong(s, n)).toBeCloseTo(-lowestPoint(s, n) - lowestPoint(s, back), 10);
      }),
    );
  });

  test("is reached by the outline as seen from far along a square direction", () => {
    const eye: Vec3 = [0, 0, 5000];
    fc.assert(
      fc.property(source, even(0, 6.28), (s, turn) => {
        const n: Vec3 = [Math.cos(turn), Math.sin(turn), 0];
        const places = sourceOutline(s, eye, 720).map((p) => p[0] * n[0] + p[1] * n[1]);
        fc.pre(places.length > 0);
        expect(Math.max(...places) - Math.min(...places)).toBeCloseTo(extentAlong(s, n), 3);
      }),
    );
  });
});
