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
    const front = angularWidths(tube, [2.5, 0, 0]);
    expect(front?.least).toBeCloseTo(2 * Math.asin(0.05 / 2), 12);
    expect(front?.greatest).toBeCloseTo(2 * Math.asin(0.05 / 2), 12);
    expect(angularWidths(tube, [0.3, 0, 0.01])).toBeUndefined();
    // Just beside the end's prolonged wall: from the outer rim of the near end to that of the far one.
    const near = Math.atan2(0.051, 0.1) + Math.asin(0.05 / Math.hypot(0.051, 0.1));
    const far = Math.atan2(0.051, 1.1) - Math.asin(0.05 / Math.hypot(0.051, 1.1));
    expect(angularWidths(tube, [0.6, 0, 0.051])?.greatest).toBeCloseTo(near - far, 12);
    expect(angularWidths(tube, [-0.6, 0, 0.051])?.greatest).toBeCloseTo(near - far, 12);
    // Inside the prolonged wall the near end hides all the rest.
    for (const x of [0.6, -0.6]) {
      const end = 2 * Math.asin(0.05 / Math.hypot(0.1, 0.03));
      expect(angularWidths(tube, [x, 0, 0.03])?.greatest).toBeCloseTo(end, 12);
    }
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

describe("the outline of a capsule", () => {
  test("has the sight lines that graze the tube at both its ends, and only points where sight lines graze", () => {
    const tube: SourceShape = { kind: "capsule", from: [-0.5, 0.1, 0], to: [0.6, 0, 0.2], radius: 0.1 };
    fc.assert(
      fc.property(place, (eye) => {
        const corners = sourceOutline(tube, eye, 40);
        fc.pre(corners.length > 0);
        for (const corner of corners)
          expect(clearance(tube.from, tube.to, eye, corner)).toBeCloseTo(tube.radius, 8);
        // Twice as many corners begin and end each round end at the same places.
        const more = sourceOutline(tube, eye, 80);
        for (const [few, many] of [
          [0, 0],
          [19, 39],
          [20, 40],
          [39, 79],
        ] as const) {
          const a = corners[few] ?? eye;
          const b = more[many] ?? eye;
          if (corners.length === 40 && more.length === 80 && seenFromSide(tube.from, tube.to, eye, 0.1)) {
            expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeLessThan(1e-9);
          }
        }
      }),
    );
  });
});

/** The least distance between a line of sight and the axis of a tube, found by golden section along the axis. */
function clearance(from: Vec3, to: Vec3, eye: Vec3, corner: Vec3): number {
  const way = [corner[0] - eye[0], corner[1] - eye[1], corner[2] - eye[2]] as const;
  const size = Math.hypot(...way);
  const gap = (t: number): number => {
    const x = from[0] + (to[0] - from[0]) * t - eye[0];
    const y = from[1] + (to[1] - from[1]) * t - eye[1];
    const z = from[2] + (to[2] - from[2]) * t - eye[2];
    const along = (x * way[0] + y * way[1] + z * way[2]) / size;
    return Math.sqrt(Math.max(0, x * x + y * y + z * z - along * along));
  };
  let low = 0;
  let high = 1;
  for (let i = 0; i < 80; i++) {
    const a = low + (high - low) * 0.382;
    const b = low + (high - low) * 0.618;
    if (gap(a) < gap(b)) high = b;
    else low = a;
  }
  return gap((low + high) / 2);
}

function seenFromSide(from: Vec3, to: Vec3, eye: Vec3, radius: number): boolean {
  const axis: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const a: Vec3 = [from[0] - eye[0], from[1] - eye[1], from[2] - eye[2]];
  const size = Math.hypot(...axis);
  const along = (a[0] * axis[0] + a[1] * axis[1] + a[2] * axis[2]) / size;
  return Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2] - along * along) > radius + 1e-6;
}
