import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Chromaticity, uvFromXy, xyFromUv } from "../../src/physics/chromaticity.js";
import { mixLights } from "../../src/physics/colour-mixture.js";
import { correlatedTemperature } from "../../src/physics/correlated-temperature.js";
import { FIRST_NM, X_BAR, Y_BAR, Z_BAR } from "../../src/physics/data/cie-1931-observer.js";
import { ISOTEMPERATURE_LINES } from "../../src/physics/data/robertson-isotemperature.js";
import { daylightChromaticity } from "../../src/physics/daylight-locus.js";
import { miredFromKelvin, miredShift, shiftedTemperature } from "../../src/physics/mired.js";
import { planckChromaticity, planckLocus, planckUv } from "../../src/physics/planck.js";
import { planckKang, planckKrystek } from "../../src/physics/planck-approximations.js";
import { temperatureHernandez, temperatureMcCamy } from "../../src/physics/temperature-approximations.js";
import { temperatureRobertson } from "../../src/physics/temperature-robertson.js";
import { mustBreak } from "../helpers/must-break.js";
import { parseCsv, REFERENCE } from "../helpers/reference-rows.js";

const kelvin = fc.double({ min: 1200, max: 20_000, noNaN: true });

/** The numbers of a table of the colour folder, without its head. */
function table(name: string): readonly (readonly number[])[] {
  const [, ...records] = parseCsv(readFileSync(join(REFERENCE, "colour", name), "utf8"));
  return records.map((record) => record.map(Number));
}

describe("tables", () => {
  test("the observer and the isotemperature lines are those of the transcribed files", () => {
    const observer = table("cie-1931-2deg-1nm.csv");
    expect(observer.length).toBe(471);
    expect(observer.map((row) => row[0])).toEqual(Y_BAR.map((_, i) => FIRST_NM + i));
    expect(observer.map((row) => row.slice(1))).toEqual(Y_BAR.map((y, i) => [X_BAR[i], y, Z_BAR[i]]));
    expect(table("robertson-1968-isotemperature.csv")).toEqual(ISOTEMPERATURE_LINES.map((line) => [...line]));
  });
});

describe("published values", () => {
  test("the black body at 5000 K: u 0.211424442, v 0.323115810 (Ohno's tables, Leukos 10 (2014) 47)", () => {
    expect(planckUv(5000).u).toBeCloseTo(0.211424442, 7);
    expect(planckUv(5000).v).toBeCloseTo(0.32311581, 7);
  });

  test("documentation of an open colour library", () => {
    expect(temperatureMcCamy({ x: 0.3127, y: 0.329 })).toBeCloseTo(6505.0805913, 6);
    expect(temperatureHernandez({ x: 0.3127, y: 0.329 })).toBeCloseTo(6500.7420431, 5);
    const ohno = correlatedTemperature(xyFromUv({ u: 0.1978, v: 0.3122 }))!;
    expect(Math.abs(ohno.kelvin - 6507.47)).toBeLessThan(0.1);
    expect(ohno.duv).toBeCloseTo(0.00322334, 6);
    expect(planckKang(6504.38938305)!.x).toBeCloseTo(0.313426, 6);
    expect(planckKang(6504.38938305)!.y).toBeCloseTo(0.3235959, 6);
    expect(daylightChromaticity(6504.38938305)!.x).toBeCloseTo(0.3127077, 6);
    expect(daylightChromaticity(6504.38938305)!.y).toBeCloseTo(0.3291128, 6);
    expect(temperatureRobertson(xyFromUv({ u: 0.21733111, v: 0.32842667 }))).toBeCloseTo(4500, 1);
  });

  test("illuminant A is a black body of 2848 K by the c2 of its day: x 0.44757, y 0.40745 (CIE 15)", () => {
    const { x, y } = planckChromaticity((2848 * 1.4388) / 1.435);
    expect(x).toBeCloseTo(0.44757, 4);
    expect(y).toBeCloseTo(0.40745, 4);
  });
});

describe("CIE D", () => {
  test("the polynomial and the spectrum of the vectors S0, S1, S2 agree within 2e-5 in x and 1.5e-4 in y", () => {
    const vectors = table("cie-d-series-vectors.csv");
    const at = (nm: number, column: number): number => {
      const i = Math.floor((nm - 300) / 5);
      const low = vectors[i]![column]!;
      const high = vectors[Math.min(i + 1, vectors.length - 1)]![column]!;
      return low + ((high - low) * ((nm - 300) % 5)) / 5;
    };
    for (const temperature of [4500, 5503.06, 6503.62, 8000]) {
      const { x, y } = daylightChromaticity(temperature)!;
      const below = 0.0241 + 0.2562 * x - 0.7341 * y;
      const m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / below;
      const m2 = (0.03 - 31.4424 * x + 30.0717 * y) / below;
      const sum = [0, 0, 0];
      for (let i = 0; i < Y_BAR.length; i += 1) {
        const nm = FIRST_NM + i;
        const power = at(nm, 1) + m1 * at(nm, 2) + m2 * at(nm, 3);
        [X_BAR, Y_BAR, Z_BAR].forEach((bar, k) => {
          sum[k]! += power * bar[i]!;
        });
      }
      const total = sum[0]! + sum[1]! + sum[2]!;
      expect(Math.abs(sum[0]! / total - x)).toBeLessThan(2e-5);
      expect(Math.abs(sum[1]! / total - y)).toBeLessThan(1.5e-4);
    }
  });

  test("only from 4000 K to 25000 K, and nearly steady where its two parts meet", () => {
    expect(daylightChromaticity(3999)).toBeUndefined();
    expect(daylightChromaticity(25_001)).toBeUndefined();
    expect(daylightChromaticity(7000)!.x).toBeCloseTo(daylightChromaticity(7000.001)!.x, 4);
  });
});

describe("correlated colour temperature", () => {
  const ownTemperature = (locus: (kelvin: number) => Chromaticity) => () => {
    fc.assert(
      fc.property(kelvin, (temperature) => {
        const found = correlatedTemperature(locus(temperature))!;
        expect(Math.abs(found.kelvin / temperature - 1)).toBeLessThan(1e-6);
        expect(Math.abs(found.duv)).toBeLessThan(1e-8);
      }),
    );
  };

  test("a black body has its own", () => {
    ownTemperature(planckChromaticity)();
    mustBreak(ownTemperature((temperature) => planckChromaticity(temperature * 1.00001)));
  });

  test("a step square off the locus changes the distance and not the temperature", () => {
    fc.assert(
      fc.property(kelvin, fc.double({ min: -0.02, max: 0.02, noNaN: true }), (temperature, step) => {
        const point = planckLocus(1e6 / temperature);
        const size = Math.sqrt(point.du * point.du + point.dv * point.dv);
        const colour = xyFromUv({
          u: point.u - (step * point.dv) / size,
          v: point.v + (step * point.du) / size,
        });
        const found = correlatedTemperature(colour)!;
        expect(Math.abs(found.kelvin / temperature - 1)).toBeLessThan(1e-5);
        expect(found.duv).toBeCloseTo(step, 7);
      }),
    );
  });

  test("greenish is above, pinkish below; far colours have none", () => {
    expect(correlatedTemperature({ x: 0.38, y: 0.42 })!.duv).toBeGreaterThan(0);
    expect(correlatedTemperature({ x: 0.36, y: 0.33 })!.duv).toBeLessThan(0);
    expect(correlatedTemperature({ x: 0.3, y: 0.6 })).toBeUndefined();
    expect(correlatedTemperature({ x: 0.7, y: 0.29 })).toBeUndefined();
    expect(correlatedTemperature({ x: 0.15, y: 0.06 })).toBeUndefined();
  });

  test("named approximations stay near the definition", () => {
    fc.assert(
      fc.property(fc.double({ min: 3500, max: 9000, noNaN: true }), (temperature) => {
        const colour = planckChromaticity(temperature);
        expect(Math.abs(temperatureMcCamy(colour)! / temperature - 1)).toBeLessThan(0.01);
        expect(Math.abs(temperatureHernandez(colour)! / temperature - 1)).toBeLessThan(0.01);
        expect(Math.abs(temperatureRobertson(colour)! / temperature - 1)).toBeLessThan(0.001);
        expect(planckKang(temperature)!.x).toBeCloseTo(colour.x, 3);
        expect(planckKrystek(temperature)!.u).toBeCloseTo(uvFromXy(colour).u, 3);
      }),
    );
    expect(planckKang(1000)).toBeUndefined();
    expect(planckKrystek(999)).toBeUndefined();
    expect(temperatureRobertson({ x: 0.7, y: 0.29 })).toBeUndefined();
    expect(temperatureMcCamy({ x: 0.3, y: 0.1858 })).toBeUndefined();
    expect(temperatureHernandez({ x: 0.3, y: 0.1735 })).toBeUndefined();
  });
});

describe("filters and mixtures", () => {
  const shiftsAdd = (shift: (from: number, to: number) => number) => () => {
    fc.assert(
      fc.property(kelvin, kelvin, kelvin, (a, b, c) => {
        expect(shift(a, b) + shift(b, c)).toBeCloseTo(shift(a, c), 8);
        expect(shiftedTemperature(a, shift(a, b))! / b).toBeCloseTo(1, 9);
      }),
    );
  };

  test("mired shifts of filters one behind the other add", () => {
    shiftsAdd(miredShift)();
    mustBreak(shiftsAdd((from, to) => (to - from) / 10));
    expect(miredFromKelvin(5000)).toBe(200);
    expect(shiftedTemperature(5000, -200)).toBeUndefined();
  });

  test("a mixture lies on the straight line between its lights, and order does not matter", () => {
    const amount = fc.double({ min: 0.1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(kelvin, kelvin, amount, amount, (a, b, m, n) => {
        const one = { colour: planckChromaticity(a), amount: m };
        const other = { colour: planckChromaticity(b), amount: n };
        const mix = mixLights([one, other])!;
        const cross =
          (other.colour.x - one.colour.x) * (mix.y - one.colour.y) -
          (other.colour.y - one.colour.y) * (mix.x - one.colour.x);
        expect(cross).toBeCloseTo(0, 12);
        expect(mixLights([other, one])!.x).toBeCloseTo(mix.x, 14);
        expect(mixLights([one, { ...one, amount: 3 }])!.y).toBeCloseTo(one.colour.y, 14);
      }),
    );
    expect(mixLights([])).toBeUndefined();
    expect(mixLights([{ colour: { x: 0.3, y: 0.3 }, amount: 0 }])).toBeUndefined();
  });

  test("the two diagrams turn into each other", () => {
    fc.assert(
      fc.property(kelvin, (temperature) => {
        const colour = planckChromaticity(temperature);
        expect(xyFromUv(uvFromXy(colour)).x).toBeCloseTo(colour.x, 13);
        expect(xyFromUv(uvFromXy(colour)).y).toBeCloseTo(colour.y, 13);
      }),
    );
  });
});
