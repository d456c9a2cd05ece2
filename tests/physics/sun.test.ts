import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dayOfYear, daysInMonth, daysSinceJ2000 } from "../../src/core/utc.js";
import { relativeAirMass } from "../../src/physics/air-mass.js";
import { footcandlesFromLux, luxFromFootcandles } from "../../src/physics/footcandle.js";
import { groundShadowLength } from "../../src/physics/ground-shadow.js";
import {
  curvedAirSun,
  directHorizontalSun,
  directNormalSun,
  extraterrestrialIlluminance,
} from "../../src/physics/sun-illuminance.js";
import { sunDistance, sunPosition } from "../../src/physics/sun-position.js";
import { sunAngularDiameter } from "../../src/physics/sun-size.js";

const DEGREES = 180 / Math.PI;

describe("instants", () => {
  test("agree with the calendar of the language", () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date("1600-01-01"), max: new Date("2400-01-01"), noInvalidDate: true }),
        (date) => {
          const days = daysSinceJ2000(date.toISOString())!;
          const expected = (date.getTime() - Date.UTC(2000, 0, 1, 12)) / 86_400_000;
          expect(Math.abs(days - expected)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  test("with an offset, without seconds, at midnight written as 24:00", () => {
    const noon = daysSinceJ2000("2026-06-21T12:00:00Z");
    expect(daysSinceJ2000("2026-06-21T14:00+02:00")).toBe(noon);
    expect(daysSinceJ2000("2026-06-21T06:30:00-05:30")).toBe(noon);
    expect(daysSinceJ2000("2026-06-21T24:00Z")).toBe(daysSinceJ2000("2026-06-22T00:00Z"));
  });

  test.each([
    "",
    "2026-06-21",
    "2026-06-21T12:00:00",
    "2026-02-29T12:00Z",
    "2026-13-01T12:00Z",
    "2026-00-10T12:00Z",
    "2026-06-21T25:00Z",
    "2026-06-21T12:60Z",
    "2026-06-21T23:59:60Z",
    "2026-06-21T12:00+25:00",
    "21.06.2026 12:00",
    "now",
  ])("%j is no instant", (text) => {
    expect(daysSinceJ2000(text)).toBeUndefined();
  });

  test("days of the year and of the months", () => {
    expect(dayOfYear(2026, 1, 1)).toBe(1);
    expect(dayOfYear(2026, 12, 31)).toBe(365);
    expect(dayOfYear(2028, 12, 31)).toBe(366);
    expect(dayOfYear(2026, 6, 21)).toBe(172);
    expect(dayOfYear(2026, 6, 31)).toBeUndefined();
    expect(daysInMonth(2100, 2)).toBe(28);
    expect(daysInMonth(2000, 2)).toBe(29);
    expect(daysInMonth(2026, 13)).toBe(0);
  });
});

describe("the sun's place", () => {
  test("at the solstices it stands 23.44 degrees off the equator (obliquity, IAU)", () => {
    // Culmination at longitude 0 is within a few minutes of noon; the altitude there is 90 - latitude + declination.
    let highest = 0;
    for (let minute = -20; minute <= 20; minute += 1) {
      const days = daysSinceJ2000("2026-06-21T12:00:00Z")! + minute / 1440;
      highest = Math.max(highest, sunPosition(days, 50, 0).altitude * DEGREES);
    }
    expect(highest).toBeCloseTo(90 - 50 + 23.436, 2);
  });

  test("in the morning it is in the east, at noon in the south, in the evening in the west", () => {
    const at = (hour: string) =>
      sunPosition(daysSinceJ2000(`2026-03-20T${hour}:00Z`)!, 48, 0).azimuth * DEGREES;
    expect(at("06:30")).toBeCloseTo(95, -1);
    expect(at("12:07")).toBeCloseTo(180, 0);
    expect(at("17:45")).toBeCloseTo(266, -1);
  });

  test("refraction lifts it, by about half a degree at the horizon and hardly high up", () => {
    let greatest = 0;
    for (let minute = 0; minute < 1440; minute += 5) {
      const { altitude, apparentAltitude } = sunPosition(9000 + minute / 1440, 50, 10);
      if (altitude < 0) continue;
      const lift = (apparentAltitude - altitude) * DEGREES;
      expect(lift).toBeGreaterThan(0);
      // Saemundsson, Sky and Telescope 72 (1986) 70: 1.02 minutes of arc times a cotangent, from memory.
      if (altitude * DEGREES > 45) expect(lift).toBeLessThan(1.03 / 60);
      greatest = Math.max(greatest, lift);
    }
    expect(greatest).toBeGreaterThan(0.35);
    expect(greatest).toBeLessThan(0.5);
  });

  test("it is nearest in January and farthest in July, at a (1 -+ e) with e = 0.0167086", () => {
    // The moon and the planets move the earth by up to about 1e-4 au from that ellipse.
    const day = (date: string) => daysSinceJ2000(`${date}T12:00Z`)!;
    expect(Math.abs(sunDistance(day("2026-01-03")) - 0.9832914)).toBeLessThan(1e-4);
    expect(Math.abs(sunDistance(day("2026-07-06")) - 1.0167086)).toBeLessThan(1e-4);
    expect(sunAngularDiameter(sunDistance(day("2026-01-03")))! * DEGREES).toBeCloseTo(0.542, 3);
    expect(sunAngularDiameter(0.001)).toBeUndefined();
    expect(sunAngularDiameter(0)).toBeUndefined();
  });
});

describe("sunlight", () => {
  test("published: 8821 fc on level ground at 73.44 degrees, summer solstice at 40 degrees north", () => {
    // A worked value of the IES handbook's formula as printed in 2003; the altitude is rounded there (0.05 %).
    const lux = directHorizontalSun(172, 73.44 / DEGREES, 0.21);
    expect(Math.abs(footcandlesFromLux(lux) / 8821 - 1)).toBeLessThan(1e-3);
  });

  test("twice the air is the square of the loss", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 366 }),
        (c, day) => {
          const outside = extraterrestrialIlluminance(day);
          const one = directNormalSun(day, Math.PI / 2, c) / outside;
          expect(directNormalSun(day, Math.PI / 6, c) / outside).toBeCloseTo(one * one, 12);
        },
      ),
    );
  });

  test("air that curves with the earth: 38 times the air at the horizon, never more than flat air, none below", () => {
    // Kasten and Young, Appl. Opt. 28 (1989) 4735, table: 38.09 at the horizon (from memory); 5.58 at 10 degrees.
    expect(Math.abs((relativeAirMass(0) ?? 0) / 38.09 - 1)).toBeLessThan(0.005);
    expect(relativeAirMass(10 / DEGREES)).toBeCloseTo(5.58, 1);
    expect(relativeAirMass(Math.PI / 2)).toBeCloseTo(1, 3);
    expect(relativeAirMass(-1e-6)).toBeUndefined();
    for (let altitude = 1; altitude < 80; altitude += 1) {
      expect(relativeAirMass(altitude / DEGREES)).toBeLessThan(1 / Math.sin(altitude / DEGREES));
    }
  });

  test("a sun at 3 degrees is a stop brighter than through flat air, one at 30 as bright", () => {
    const over = (altitude: number) =>
      Math.log2(curvedAirSun(100, altitude / DEGREES, 0.21) / directNormalSun(100, altitude / DEGREES, 0.21));
    // c (1 / sin h - m) / ln 2 with m = 15.17 from rays through the standard atmosphere of ISO 2533.
    expect(over(3)).toBeCloseTo((0.21 * (1 / Math.sin(3 / DEGREES) - 15.17)) / Math.LN2, 1);
    expect(over(3)).toBeGreaterThan(1.1);
    expect(Math.abs(over(30))).toBeLessThan(0.005);
    expect(curvedAirSun(100, -0.01, 0.21)).toBe(0);
    expect(curvedAirSun(100, 0, 0.21)).toBeGreaterThan(0);
  });

  test("no sun, no light; shadows end where they should", () => {
    expect(directNormalSun(100, 0, 0.2)).toBe(0);
    expect(directHorizontalSun(100, -0.3, 0.2)).toBe(0);
    expect(groundShadowLength(2, 0)).toBeUndefined();
    expect(groundShadowLength(2, -1)).toBeUndefined();
    expect(groundShadowLength(2, Math.PI / 2)).toBe(0);
    expect(groundShadowLength(2, Math.PI / 4)).toBeCloseTo(2, 12);
    expect(luxFromFootcandles(footcandlesFromLux(123))).toBeCloseTo(123, 12);
  });
});
