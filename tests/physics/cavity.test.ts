import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bounceFromFloor, bounceFromPanel } from "../../src/physics/bounce.js";
import { type CubeFaces, cubeIlluminance, cubeIlluminanceConverged } from "../../src/physics/cavity-cube.js";
import { plateRadiosity } from "../../src/physics/cavity-plates.js";
import { sphereGain, sphereMultiplier, sphereWallIlluminance } from "../../src/physics/cavity-sphere.js";
import { type RadiosityPatch, solveRadiosity } from "../../src/physics/radiosity.js";
import { mustBreak } from "../helpers/must-break.js";

const reflectance = fc.double({ min: 0, max: 0.99, noNaN: true });

/** Factors of a closed room of patches that all see all others by their areas (the inside of a sphere). */
function sphereRoom(patches: readonly RadiosityPatch[]): (i: number, j: number) => number {
  const whole = patches.reduce((sum, patch) => sum + patch.area, 0);
  return (_i, j) => patches[j]!.area / whole;
}

const sphereOfPatches = fc.array(
  fc.record({
    area: fc.double({ min: 0.1, max: 3, noNaN: true }),
    exitance: fc.double({ min: 0, max: 100, noNaN: true }),
    reflectance,
  }),
  { minLength: 2, maxLength: 8 },
);

describe("solver for light between patches", () => {
  test("agrees with the closed form of a sphere, whose walls all get the same", () => {
    fc.assert(
      fc.property(sphereOfPatches, (patches) => {
        const found = solveRadiosity(patches, sphereRoom(patches));
        const whole = patches.reduce((sum, { area }) => sum + area, 0);
        const given = patches.reduce((sum, { area, exitance }) => sum + area * exitance, 0);
        const mean = patches.reduce((sum, each) => sum + (each.area * each.reflectance) / whole, 0);
        const arriving = given / whole / (1 - mean);
        patches.forEach((patch, i) => {
          const expected = patch.exitance + patch.reflectance * arriving;
          expect(Math.abs(found!.radiosity[i]! - expected)).toBeLessThanOrEqual(1e-9 * (expected + arriving));
        });
      }),
    );
  });

  test("furnace: patches that emit what they lack all leave 1", () => {
    fc.assert(
      fc.property(sphereOfPatches, (rough) => {
        const patches = rough.map((patch) => ({ ...patch, exitance: 1 - patch.reflectance }));
        for (const each of solveRadiosity(patches, sphereRoom(patches))!.radiosity) {
          expect(each).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  test("a closed room that keeps nothing has no answer, a dark one has none to give", () => {
    const mirror = [0, 1, 2].map(() => ({ area: 1, exitance: 1, reflectance: 1 }));
    expect(solveRadiosity(mirror, sphereRoom(mirror))).toBeUndefined();
    const dark = [0, 1].map(() => ({ area: 1, exitance: 0, reflectance: 0.5 }));
    expect(solveRadiosity(dark, sphereRoom(dark))?.radiosity).toEqual([0, 0]);
  });
});

describe("cube", () => {
  const energy = (cube: (exitance: number, rho: number) => CubeFaces | undefined) => () => {
    for (const rho of [0, 0.18, 0.5, 0.8, 0.95]) {
      const { emitter, opposite, side } = cube(100, rho)!;
      expect((1 - rho) * (emitter + opposite + 4 * side)).toBeCloseTo(100, 7);
    }
  };

  test("all light that is given is taken up", () => {
    energy((exitance, rho) => cubeIlluminance(exitance, rho, 3))();
    energy(cubeIlluminanceConverged)();
    mustBreak(energy((exitance, rho) => cubeIlluminance(exitance * (1 + rho / 1000), rho, 3)));
  });

  test("without reflection only the factors are left (four digits in print: 0.1998, 0.2000)", () => {
    const { emitter, opposite, side } = cubeIlluminance(1, 0, 2)!;
    expect(emitter).toBe(0);
    expect(opposite).toBeCloseTo(0.1998, 4);
    expect(side).toBeCloseTo(0.2, 4);
  });

  test("a white cube that keeps nothing has no answer, and a nearly white one has", () => {
    expect(cubeIlluminanceConverged(100, 1)).toBeUndefined();
    expect(cubeIlluminance(100, 0.9999, 2)?.side).toBeGreaterThan(1e5);
  });
});

describe("closed forms", () => {
  test("plates and spheres are the sums of their bounces", () => {
    fc.assert(
      fc.property(reflectance, reflectance, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, factor) => {
        let first = 0;
        let second = 0;
        let bounce = 50;
        for (let i = 0; i < 4000; i += 1) {
          first += bounce;
          second += bounce * factor * b;
          bounce *= factor * b * factor * a;
        }
        const found = plateRadiosity(50, a, b, factor)!;
        expect(found.first / first).toBeCloseTo(1, 9);
        expect(found.second - second).toBeCloseTo(0, 7);
      }),
      { numRuns: 30 },
    );
    expect(sphereGain(0.5)).toBe(2);
    expect(sphereGain(1)).toBeUndefined();
    expect(sphereMultiplier(0.9, 0)).toBeCloseTo(9, 12);
    expect(sphereMultiplier(1, 0)).toBeUndefined();
    expect(sphereWallIlluminance(1000, 1, 1)).toBeUndefined();
    expect(plateRadiosity(1, 1, 1, 1)).toBeUndefined();
  });

  test("a panel that grows without end is a floor that is faced", () => {
    expect(bounceFromPanel(1000, 0.8, 1e5, 1e5, 1)).toBeCloseTo(bounceFromFloor(1000, 0.8, 0), 3);
    expect(bounceFromFloor(1000, 0.8, Math.PI)).toBeCloseTo(0, 9);
  });
});
