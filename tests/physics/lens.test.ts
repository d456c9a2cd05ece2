import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  blurDisc,
  depthOfField,
  farLimit,
  hyperfocalDistance,
  nearLimit,
} from "../../src/physics/depth-of-field.js";
import {
  angleOfView,
  backdropWidth,
  distanceForFrame,
  fieldAtDistance,
} from "../../src/physics/field-of-view.js";
import { closeFocusLoss, magnification } from "../../src/physics/magnification.js";
import { circleOfConfusion, cropFactor, diagonal } from "../../src/physics/sensor-format.js";
import { mustBreak } from "../helpers/must-break.js";

type Limit = (focal: number, fNumber: number, circle: number, subject: number) => number | undefined;

const focal = fc.double({ min: 14, max: 300, noNaN: true });
const fNumber = fc.double({ min: 1, max: 32, noNaN: true });
const circle = fc.double({ min: 0.005, max: 0.05, noNaN: true });
const times = fc.double({ min: 1.5, max: 500, noNaN: true });

describe("depth of field", () => {
  const ordered = (near: Limit, far: Limit) => () => {
    fc.assert(
      fc.property(focal, fNumber, circle, times, (f, n, c, k) => {
        const s = f * k;
        const close = near(f, n, c, s)!;
        expect(close).toBeGreaterThan(f);
        expect(close).toBeLessThan(s);
        const distant = far(f, n, c, s);
        if (distant === undefined) expect(s).toBeGreaterThanOrEqual(hyperfocalDistance(f, n, c));
        else expect(distant).toBeGreaterThan(s);
      }),
    );
  };

  test("near limit, subject, far limit come in this order", () => {
    ordered(nearLimit, farLimit)();
    mustBreak(ordered(farLimit, nearLimit));
  });

  const blurIsCircle = (near: Limit, far: Limit) => () => {
    fc.assert(
      fc.property(focal, fNumber, circle, times, (f, n, c, k) => {
        const s = f * k;
        for (const limit of [near, far]) {
          const at = limit(f, n, c, s);
          if (at !== undefined) expect(blurDisc(f, n, s, at)! / c).toBeCloseTo(1, 7);
        }
      }),
    );
  };

  test("a point at either limit blurs to the circle of confusion", () => {
    blurIsCircle(nearLimit, farLimit)();
    // The common short form with s / (1 +- N c s / f f) leaves out the focal length.
    const short =
      (sign: number): Limit =>
      (f, n, c, s) =>
        s / (1 + (sign * n * c * s) / (f * f));
    mustBreak(blurIsCircle(short(1), short(1)));
  });

  test("focus at the hyperfocal distance is sharp from half of it to infinity", () => {
    const h = hyperfocalDistance(50, 8, 0.03);
    expect(nearLimit(50, 8, 0.03, h)).toBeCloseTo(h / 2, 8);
    expect(farLimit(50, 8, 0.03, h)).toBeUndefined();
    expect(depthOfField(50, 8, 0.03, h)).toBeUndefined();
  });

  test("a subject within the focal length has no image", () => {
    for (const subject of [10, 50]) {
      expect(nearLimit(50, 8, 0.03, subject)).toBeUndefined();
      expect(farLimit(50, 8, 0.03, subject)).toBeUndefined();
      expect(magnification(50, subject)).toBeUndefined();
      expect(fieldAtDistance(36, 50, subject)).toBeUndefined();
      expect(blurDisc(50, 8, subject, 100)).toBeUndefined();
    }
    expect(blurDisc(50, 8, 100, 0)).toBeUndefined();
  });
});

describe("field of view", () => {
  test("the distance for a frame takes in that frame", () => {
    fc.assert(
      fc.property(focal, fc.double({ min: 5, max: 60, noNaN: true }), times, (f, sensor, k) => {
        expect(
          fieldAtDistance(sensor, f, distanceForFrame(sensor, f, sensor * k))! / (sensor * k),
        ).toBeCloseTo(1, 9);
      }),
    );
  });

  test("far away the field is the angle of view's", () => {
    const far = 1e9;
    expect(fieldAtDistance(36, 50, far)! / (2 * far * Math.tan(angleOfView(36, 50) / 2))).toBeCloseTo(1, 6);
  });

  test("life size costs two stops, and light through the square of the extension", () => {
    expect(closeFocusLoss(1)).toBe(2);
    fc.assert(
      fc.property(focal, times, (f, k) => {
        const s = f * k;
        const image = (f * s) / (s - f);
        expect(closeFocusLoss(magnification(f, s)!)).toBeCloseTo(2 * Math.log2(image / f), 10);
      }),
    );
  });

  test("the frame of 36 x 24 mm is its own measure", () => {
    expect(cropFactor(36, 24)).toBe(1);
    expect(diagonal(3, 4)).toBe(5);
    expect(circleOfConfusion(36, 24, 1500) * 1500).toBeCloseTo(diagonal(36, 24), 12);
    expect(backdropWidth(800, 2000, 2000)).toBe(800);
  });
});
