import { describe, expect, test } from "vitest";
import { daysOfDayAndTime, daysSinceJ2000 } from "../../src/core/utc.js";
import { overcastLuminance, overcastOnPlane } from "../../src/physics/overcast-sky.js";
import { overcastThroughWindow } from "../../src/physics/overcast-window.js";
import { clearSkyIlluminance, overcastSkyIlluminance } from "../../src/physics/sky-illuminance.js";
import { sunColour } from "../../src/physics/sun-colour.js";
import { directHorizontalSun, EXTINCTION_CLEAR } from "../../src/physics/sun-illuminance.js";

/** Light of a sky on a plane by a plain sum over the hemisphere, for a luminance of 1 at the zenith. */
function bySum(tilt: number, steps: number): number {
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const elevation = ((i + 0.5) / steps) * (Math.PI / 2);
    for (let j = 0; j < 4 * steps; j += 1) {
      const azimuth = ((j + 0.5) / (4 * steps)) * 2 * Math.PI;
      const cosine =
        Math.cos(tilt) * Math.sin(elevation) + Math.sin(tilt) * Math.cos(elevation) * Math.cos(azimuth);
      if (cosine > 0) sum += overcastLuminance(elevation) * cosine * Math.cos(elevation);
    }
  }
  return (sum * (Math.PI / 2 / steps) * (2 * Math.PI)) / (4 * steps);
}

describe("overcast sky", () => {
  test("three times as bright overhead as at the horizon (CIE)", () => {
    expect(overcastLuminance(Math.PI / 2) / overcastLuminance(0)).toBeCloseTo(3, 12);
  });

  test("an upright plane gets 0.396 of level ground (handbooks of daylight: vertical sky component 39.6 %)", () => {
    expect(overcastOnPlane(Math.PI / 2, 0)).toBeCloseTo(0.396, 3);
    expect(overcastOnPlane(0, 0)).toBeCloseTo(1, 12);
    expect(overcastOnPlane(Math.PI, 0)).toBeCloseTo(0, 12);
  });

  test.each([0, 0.4, 1, Math.PI / 2, 2, 2.8])(
    "the closed form at a tilt of %d is the sum over the sky",
    (tilt) => {
      const level = (7 * Math.PI) / 9;
      expect(overcastOnPlane(tilt, 0)).toBeCloseTo(bySum(tilt, 400) / level, 4);
    },
  );

  test("what looks down gets the ground's share, an upright plane half of it", () => {
    expect(overcastOnPlane(Math.PI, 0.2)).toBeCloseTo(0.2, 12);
    expect(overcastOnPlane(Math.PI / 2, 0.2) - overcastOnPlane(Math.PI / 2, 0)).toBeCloseTo(0.1, 12);
  });
});

describe("through a window", () => {
  /** The same by a plain sum over parts of the window, for level ground of 1. */
  function summed(width: number, height: number, distance: number, ground: number): number {
    const parts = 400;
    let sum = 0;
    for (let i = 0; i < parts; i += 1) {
      const x = ((i + 0.5) / parts - 0.5) * width;
      for (let j = 0; j < parts; j += 1) {
        const z = ((j + 0.5) / parts - 0.5) * height;
        const far = distance * distance + x * x + z * z;
        const seen =
          z > 0 ? (9 / (7 * Math.PI)) * overcastLuminance(Math.asin(z / Math.sqrt(far))) : ground / Math.PI;
        sum += (seen * distance * distance) / (far * far);
      }
    }
    return (sum * width * height) / parts / parts;
  }

  test.each([
    [0.9, 1.2, 1.6, 0.2],
    [2.4, 0.7, 0.5, 0.4],
    [0.5, 2.5, 3, 0],
  ])("of %d x %d m at %d m the closed form is the sum over the window", (width, height, distance, ground) => {
    const found = overcastThroughWindow({ width, height, distance, ground });
    expect(found / summed(width, height, distance, ground)).toBeCloseTo(1, 4);
  });

  test("without end it is an upright plane in the open", () => {
    const open = overcastThroughWindow({ width: 1e5, height: 1e5, distance: 1, ground: 0.2 });
    expect(open).toBeCloseTo(overcastOnPlane(Math.PI / 2, 0.2), 4);
  });

  test("an overcast sky gives 300 lx at sunrise and 10.8 klx with the sun at 30 degrees (IES RP-21)", () => {
    expect(overcastSkyIlluminance(Math.PI / 6)).toBeCloseTo(10_800, 6);
    expect(overcastSkyIlluminance(1e-9)).toBeCloseTo(300, 3);
    expect(overcastSkyIlluminance(0)).toBe(0);
  });
});

describe("clear sky", () => {
  test("the sky gives a fifth to a tenth of all light under a high sun (from memory, to half a stop)", () => {
    for (const degrees of [35, 60, 80]) {
      const altitude = (degrees * Math.PI) / 180;
      const sky = clearSkyIlluminance(altitude);
      const share = sky / (sky + directHorizontalSun(93, altitude, EXTINCTION_CLEAR));
      expect(share).toBeGreaterThan(0.1 / Math.SQRT2);
      expect(share).toBeLessThan(0.2 * Math.SQRT2);
    }
    expect(clearSkyIlluminance(-0.1)).toBe(0);
  });
});

describe("colour of the sun", () => {
  test("warms as it sinks, between 2500 and 5500 K, and has none below the horizon", () => {
    let before = 0;
    for (let elevation = 0; elevation <= 90; elevation += 1) {
      const kelvin = sunColour(elevation) ?? 0;
      expect(kelvin).toBeGreaterThan(before);
      before = kelvin;
    }
    expect(sunColour(10)).toBeCloseTo(3500, 9);
    expect(sunColour(30)).toBeCloseTo(4500, 9);
    expect(sunColour(-1)).toBeUndefined();
  });
});

describe("a day and a time of day", () => {
  test("with UTC or an offset it is an instant", () => {
    expect(daysOfDayAndTime("2026-06-21", "10:00 UTC")).toBe(daysSinceJ2000("2026-06-21T10:00Z"));
    expect(daysOfDayAndTime("2026-06-21", "9:05 +02:00")).toBe(daysSinceJ2000("2026-06-21T09:05+02:00"));
  });

  test.each([
    ["2026-06-21", "10:00"],
    ["2026-02-30", "10:00 UTC"],
    ["21 June", "10:00 UTC"],
    ["2026-06-21", "25:00 UTC"],
    ["2026-06-21", "noon"],
  ])("%s at %s is none", (day, time) => {
    expect(daysOfDayAndTime(day, time)).toBeUndefined();
  });
});
