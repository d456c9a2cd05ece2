import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { densityFromReflectance, reflectanceFromDensity } from "../../src/physics/density.js";
import {
  capacitorEnergy,
  circuitCapacity,
  flashAveragePower,
  totalCurrent,
} from "../../src/physics/electric-load.js";
import { brewsterAngle, fresnelReflectance, type Polarisation } from "../../src/physics/fresnel.js";
import { lightnessFromReflectance, reflectanceFromLightness } from "../../src/physics/lightness.js";
import { mustBreak } from "../helpers/must-break.js";

const index = fc.double({ min: 1.05, max: 2.5, noNaN: true });
const angle = fc.double({ min: 0, max: 1.55, noNaN: true });
const polarisation = fc.constantFrom<Polarisation>("s", "p", "u");

describe("mirroring", () => {
  type Mirror = (n: number, incidence: number, polarisation: Polarisation) => number;
  const sameBothWays = (mirror: Mirror) => () => {
    fc.assert(
      fc.property(index, angle, polarisation, (n, incidence, state) => {
        const inside = Math.asin(Math.sin(incidence) / n);
        expect(mirror(n, incidence, state)).toBeCloseTo(mirror(1 / n, inside, state), 9);
      }),
    );
  };

  test("light on its way out is mirrored as light on its way in", () => {
    sameBothWays(fresnelReflectance)();
    // A rational approximation in wide use for pictures, which knows no direction of travel.
    const approximate: Mirror = (n, incidence) => {
      const r = ((n - 1) / (n + 1)) * ((n - 1) / (n + 1));
      const c = 1 - Math.cos(incidence);
      return r + (1 - r) * c * c * c * c * c;
    };
    mustBreak(sameBothWays(approximate));
  });

  test("no p-polarised light at Brewster's angle; all of it at grazing and beyond the critical angle", () => {
    fc.assert(
      fc.property(index, polarisation, (n, state) => {
        expect(fresnelReflectance(n, brewsterAngle(n), "p")).toBeCloseTo(0, 12);
        expect(fresnelReflectance(n, Math.PI / 2, state)).toBeCloseTo(1, 9);
        expect(fresnelReflectance(1 / n, Math.asin(1 / n) + 1e-6, state)).toBe(1);
      }),
    );
  });

  test("a share between 0 and 1, unpolarised in the middle of the two", () => {
    fc.assert(
      fc.property(index, angle, (n, incidence) => {
        const s = fresnelReflectance(n, incidence, "s");
        const p = fresnelReflectance(n, incidence, "p");
        expect(p).toBeLessThanOrEqual(s + 1e-15);
        expect(fresnelReflectance(n, incidence, "u")).toBeCloseTo((s + p) / 2, 14);
        expect(s).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe("scales of reflectance", () => {
  test("there and back", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (lightness) => {
        expect(lightnessFromReflectance(reflectanceFromLightness(lightness))).toBeCloseTo(lightness, 9);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 4, noNaN: true }), (density) => {
        expect(densityFromReflectance(reflectanceFromDensity(density))).toBeCloseTo(density, 11);
      }),
    );
    expect(densityFromReflectance(0)).toBeUndefined();
  });

  test("the two branches of lightness meet at 8, in value and slope", () => {
    const step = 1e-7;
    const below = reflectanceFromLightness(8) - reflectanceFromLightness(8 - step);
    const above = reflectanceFromLightness(8 + step) - reflectanceFromLightness(8);
    expect(above / below).toBeCloseTo(1, 5);
    expect(reflectanceFromLightness(100)).toBe(1);
  });
});

describe("electrical load", () => {
  test("the current of appliances at the capacity of a circuit is its rating", () => {
    expect(totalCurrent([circuitCapacity(230, 16, 1)], 230, 1)).toBeCloseTo(16, 12);
    expect(totalCurrent([], 230, 1)).toBe(0);
    expect(flashAveragePower(capacitorEnergy(2e-3, 1000), 2, 0.5)).toBe(1000);
  });
});
