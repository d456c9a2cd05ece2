import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fNumberOfThirds, splitFNumber, stopsFromFOne } from "../../src/physics/aperture-scale.js";
import * as exposure from "../../src/physics/exposure.js";
import {
  exposureValue,
  exposureValue100,
  exposureValueOfIlluminance,
  exposureValueOfLuminance,
  illuminanceAtExposureValue,
  luminanceAtExposureValue,
} from "../../src/physics/exposure-value.js";
import { depthFalloff, discFalloff, distanceForStops, pointFalloff } from "../../src/physics/falloff.js";
import {
  durationAbove,
  durationRatio,
  schwarzschildTime,
  shareInsideShutter,
} from "../../src/physics/flash-duration.js";
import { coneExposure, isotropicExposure } from "../../src/physics/flash-exposure.js";
import { floorShadowLength, shadowGrowth } from "../../src/physics/floor-shadow.js";
import {
  combinedGuideNumber,
  guideNumberAtPower,
  guideNumberDistance,
  guideNumberFNumber,
  guideNumberFromIntensity,
  intensityFromGuideNumber,
} from "../../src/physics/guide-number.js";
import { pointErrorOfDisc, pointErrorOfSquare } from "../../src/physics/point-error.js";
import { fillForRatio, keyToFill, litShadowStops, litToShadow } from "../../src/physics/ratio.js";
import {
  densityOfStops,
  factorOfStops,
  stopsBetween,
  stopsBetweenFNumbers,
  stopsOfDensity,
  stopsOfTransmittance,
  sumOfFNumbers,
} from "../../src/physics/stops.js";
import { even } from "../helpers/light-shapes.js";
import { mustBreak } from "../helpers/must-break.js";

const near = (a: number, b: number): void => {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(a), Math.abs(b)));
};
const fNumber = even(0.7, 90);
const iso = even(25, 6400);
const light = even(1, 100_000);
const c = even(240, 540);
const time = even(0.0002, 30);
const stops = even(-12, 12);

describe("exposure equations", () => {
  const closes = (n: typeof exposure.incidentFNumber) => () => {
    fc.assert(
      fc.property(light, iso, time, c, (e, s, t, k) => {
        const f = n(e, s, t, k);
        near(exposure.incidentTime(e, s, f, k) / t, 1);
        near(exposure.requiredIlluminance(f, t, s, k) / e, 1);
      }),
    );
  };
  test("each unknown of the incident-light equation gives the others back", () => {
    closes(exposure.incidentFNumber)();
    mustBreak(closes((e, s, t, k) => exposure.incidentFNumber(e, s, t, k) * 1.0000001));
  });

  const oneStop = (n: typeof exposure.flashFNumber) => () => {
    fc.assert(
      fc.property(light, iso, c, stops, (h, s, k, by) => {
        const factor = factorOfStops(by) ?? Number.NaN;
        near(stopsBetweenFNumbers(n(h, s, k), n(h * factor, s, k)), by);
        near(stopsBetweenFNumbers(n(h, s, k), n(h, s * factor, k)), by);
      }),
    );
  };
  test("a stop more of light or speed is a stop on the aperture", () => {
    oneStop(exposure.flashFNumber)();
    mustBreak(oneStop((h, s, k) => (h * s) / k));
  });

  test("both meters agree on the matt surface of the calibrated reflectance", () => {
    fc.assert(
      fc.property(light, iso, fNumber, c, even(10.6, 14), (e, s, f, cc, k) => {
        const luminance = (exposure.calibratedReflectance(k, cc) * e) / Math.PI;
        near(exposure.reflectedTime(luminance, s, f, k) / exposure.incidentTime(e, s, f, cc), 1);
        near(exposure.requiredLuminance(f, exposure.reflectedTime(luminance, s, f, k), s, k) / luminance, 1);
      }),
    );
  });

  const adds = (mixed: typeof exposure.mixedFNumber) => () => {
    fc.assert(
      fc.property(light, light, time, iso, c, (h, e, t, s, k) => {
        const both = sumOfFNumbers([exposure.flashFNumber(h, s, k), exposure.incidentFNumber(e, s, t, k)]);
        near(mixed(h, e, t, s, k) / both, 1);
        const share = exposure.ambientShare(h, e, t) ?? Number.NaN;
        near((share * (h + e * t)) / (e * t), 1);
      }),
    );
  };
  test("flash and steady light add as exposures", () => {
    adds(exposure.mixedFNumber)();
    mustBreak(adds((h, e, t, s, k) => exposure.flashFNumber(h, s, k) + exposure.incidentFNumber(e, s, t, k)));
    expect(exposure.ambientShare(0, 0, 1)).toBeUndefined();
  });

  test("exposure values and light undo each other", () => {
    fc.assert(
      fc.property(even(-6, 20), c, (ev, k) => {
        near(exposureValueOfIlluminance(illuminanceAtExposureValue(ev, k) ?? 0, k), ev);
        near(exposureValueOfLuminance(luminanceAtExposureValue(ev, k) ?? 0, k), ev);
      }),
    );
    fc.assert(
      fc.property(light, iso, fNumber, c, (e, s, f, k) => {
        near(exposureValue100(f, exposure.incidentTime(e, s, f, k), s), exposureValueOfIlluminance(e, k));
        near(exposureValue100(f, 1, 100), exposureValue(f, 1));
      }),
    );
    expect(illuminanceAtExposureValue(5000, 250)).toBeUndefined();
    expect(luminanceAtExposureValue(5000, 12.5)).toBeUndefined();
  });
});

describe("stops", () => {
  test("add where light multiplies", () => {
    fc.assert(
      fc.property(light, light, stops, (a, b, by) => {
        const between = stopsBetween(a, b) ?? Number.NaN;
        near((factorOfStops(between) ?? Number.NaN) * b, a);
        near(stopsBetween(a * (factorOfStops(by) ?? Number.NaN), b) ?? Number.NaN, between + by);
        near(densityOfStops(stopsOfDensity(Math.abs(by))), Math.abs(by));
      }),
    );
    expect(stopsBetween(0, 1)).toBeUndefined();
    expect(stopsBetween(1, -1)).toBeUndefined();
    expect(factorOfStops(2000)).toBeUndefined();
  });

  test("density and transmittance agree by ISO 5", () => {
    near(stopsOfDensity(0.3), stopsOfTransmittance(Math.exp(-0.3 * Math.LN10)));
  });

  // Engraved full stops are the exact ones to two digits; f/5.6 and f/22 are rounded down from 5.657 and 22.63.
  test("an f-number shown as full stop and tenths is within half a tenth of itself", () => {
    fc.assert(
      fc.property(even(0.5, 250), (f) => {
        const { base, tenths } = splitFNumber(f);
        expect(Number.isInteger(tenths) && tenths >= 0 && tenths <= 9).toBe(true);
        const whole = Math.round(stopsFromFOne(base));
        expect(Math.abs(stopsFromFOne(f) - whole - tenths / 10)).toBeLessThanOrEqual(0.05 + 1e-9);
        const exact = fNumberOfThirds(3 * whole) ?? Number.NaN;
        expect(Math.abs(base / exact - 1)).toBeLessThan(0.03);
      }),
    );
    expect(splitFNumber(8)).toEqual({ base: 8, tenths: 0 });
    expect(splitFNumber(Math.sqrt(128))).toEqual({ base: 11, tenths: 0 });
    expect(splitFNumber(8 * Math.exp(0.35 * Math.LN2))).toEqual({ base: 8, tenths: 7 });
    expect(splitFNumber(10.99)).toEqual({ base: 8, tenths: 9 });
    expect(splitFNumber(1)).toEqual({ base: 1, tenths: 0 });
    expect(splitFNumber(0.5)).toEqual({ base: 0.5, tenths: 0 });
    expect(splitFNumber(1024)).toEqual({ base: 1000, tenths: 0 });
    expect(fNumberOfThirds(1e6)).toBeUndefined();
  });
});

describe("fall-off", () => {
  const additive = (fall: typeof pointFalloff) => () => {
    fc.assert(
      fc.property(even(0.2, 5), even(0.2, 5), even(0.2, 5), (x, y, z) => {
        near(fall(x, y) + fall(y, z), fall(x, z));
      }),
    );
  };
  test("from place to place adds up, and undoes the distance for stops", () => {
    additive(pointFalloff)();
    additive((x, y) => discFalloff(0.7, x, y))();
    mustBreak(additive((x, y) => pointFalloff(x + 0.01 * y, y)));
    fc.assert(
      fc.property(even(0.2, 5), stops, (d, by) => {
        near(pointFalloff(distanceForStops(d, by) ?? Number.NaN, d), by);
        expect(depthFalloff(d, 0.5)).toBeLessThan(depthFalloff(d * 0.9, 0.5));
      }),
    );
    expect(distanceForStops(1, -5000)).toBeUndefined();
  });

  test("a large source falls off slower, and is overrated by the inverse square", () => {
    fc.assert(
      fc.property(even(0.05, 1), even(0.2, 3), even(0.1, 3), (r, d, more) => {
        expect(discFalloff(r, d, d + more)).toBeLessThan(pointFalloff(d, d + more));
        near(discFalloff(1e-9, d, d + more), pointFalloff(d, d + more));
      }),
    );
    fc.assert(
      fc.property(even(0.2, 50), (k) => {
        // A square lies between the discs inside and around it.
        expect(pointErrorOfSquare(k)).toBeGreaterThan(pointErrorOfDisc(k));
        expect(pointErrorOfSquare(k)).toBeLessThan(pointErrorOfDisc(k / Math.SQRT2));
      }),
    );
    // The closed form of an element facing a square, written as it stands, where it still has its digits.
    for (const k of [1, 4.9, 6, 20]) {
      const x = 1 / (2 * k);
      const t = x / Math.sqrt(1 + x * x);
      expect(pointErrorOfSquare(k)).toBeCloseTo((x * x) / (t * Math.atan(t)) - 1, 13);
    }
    // Far away the error of a square goes with 1 / (3 k^2).
    near(pointErrorOfSquare(1e6) * 3e12, 1);
    expect(pointErrorOfSquare(4.9)).toBeGreaterThan(pointErrorOfSquare(5.1));
  });
});

describe("guide numbers and flash", () => {
  test("distance, aperture and intensity undo each other", () => {
    fc.assert(
      fc.property(even(1, 100), iso, fNumber, c, (gn, s, f, k) => {
        near(guideNumberFNumber(gn, s, guideNumberDistance(gn, s, f)) / f, 1);
        near(guideNumberFromIntensity(intensityFromGuideNumber(gn, k), 100, k) / gn, 1);
        near(combinedGuideNumber([gn, gn, gn, gn]) / (2 * gn), 1);
        near(guideNumberAtPower(gn, 0.25) / (gn / 2), 1);
      }),
    );
  });

  test("a cone over all directions is a bare tube, half of it twice as bright", () => {
    near(coneExposure(500, 40, 1, 2 * Math.PI, 3), isotropicExposure(500, 40, 3));
    near(coneExposure(500, 40, 1, Math.PI, 3), 2 * isotropicExposure(500, 40, 3));
  });

  test("durations of an exponential flash", () => {
    near(durationAbove(0.001, 0.1) / durationAbove(0.001, 0.5), durationRatio());
    near(shareInsideShutter(0.001, 0.001), 0.5);
    // Nothing is left after the shutter that was not there before: shares of two times combine.
    fc.assert(
      fc.property(even(0.1, 3), even(0.1, 3), (a, b) => {
        near(
          1 - shareInsideShutter(1, a + b),
          (1 - shareInsideShutter(1, a)) * (1 - shareInsideShutter(1, b)),
        );
      }),
    );
    expect(schwarzschildTime(0.5, 1.3)).toBe(0.5);
    near(schwarzschildTime(10, 1) ?? 0, 10);
    expect(schwarzschildTime(1e300, 1e3)).toBeUndefined();
  });
});

describe("ratios", () => {
  test("the two conventions differ by 1, and the fill gives its ratio back", () => {
    fc.assert(
      fc.property(light, light, even(1.01, 50), (k, f, ratio) => {
        near((litToShadow(k, f) ?? 0) / (1 + (keyToFill(k, f) ?? 0)), 1);
        near((factorOfStops(litShadowStops(k, f) ?? 0) ?? 0) / (litToShadow(k, f) ?? 1), 1);
        near(litToShadow(k, fillForRatio(k, ratio) ?? Number.NaN) ?? 0, ratio);
      }),
    );
    expect(litToShadow(1, 0)).toBeUndefined();
    expect(keyToFill(1, 0)).toBeUndefined();
    expect(litShadowStops(1, 0)).toBeUndefined();
    expect(fillForRatio(1, 1)).toBeUndefined();
  });
});

describe("shadows on the floor", () => {
  test("the lamp, the top and the tip of the shadow lie on a line", () => {
    fc.assert(
      fc.property(even(0.1, 2), even(0.1, 4), even(2.1, 5), (height, away, lamp) => {
        const length = floorShadowLength(height, away, lamp) ?? Number.NaN;
        near(height / length, lamp / (away + length));
      }),
    );
    expect(floorShadowLength(2, 1, 2)).toBeUndefined();
    near(shadowGrowth(2, 1), 1.5);
  });
});
