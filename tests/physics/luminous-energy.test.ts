import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { gaussLegendre, integrate } from "../../src/math/quadrature.js";
import { radians } from "../../src/math/rotation.js";
import { beamEnergyShare, beamShare, type RoundBeam } from "../../src/physics/beam.js";
import { beamReading } from "../../src/physics/beam-reading.js";
import {
  axialExposurePerEnergy,
  energyBehindBeam,
  energyFromAxialIntensity,
  energyFromGuideNumber,
  energyFromReading,
  energyFromWattSeconds,
} from "../../src/physics/calibration.js";
import { flashFNumber } from "../../src/physics/exposure.js";
import { guideNumberFNumber } from "../../src/physics/guide-number.js";
import { discReading } from "../../src/physics/illuminance.js";
import { emptyVector } from "../../src/physics/light-vector.js";
import { axialIntensityPerEnergy, luminancePerEnergy } from "../../src/physics/luminous-energy.js";
import {
  emittingArea,
  polygonSource,
  rectangleSource,
  type SourceShape,
} from "../../src/physics/source-shape.js";
import { cosinePowerFlux, lambertianFlux } from "../../src/physics/zonal-flux.js";
import { even, source } from "../helpers/light-shapes.js";
import { mustBreak } from "../helpers/must-break.js";

const beam: fc.Arbitrary<RoundBeam> = fc.oneof(
  fc.constant<RoundBeam>({ kind: "lambert" }),
  even(0.5, 30).map((n): RoundBeam => ({ kind: "cosine-power", n })),
  even(4, 120).map((deg): RoundBeam => ({ kind: "grid", cutoff: radians(deg) })),
);
const disc: SourceShape & { kind: "disc" } = {
  kind: "disc",
  centre: [0, 0, 0],
  normal: [0, 0, 1],
  radius: 0.3,
};

describe("beams", () => {
  const keepsEnergy = (share: typeof beamEnergyShare) => () => {
    const rule = gaussLegendre(96);
    fc.assert(
      fc.property(beam, (b) => {
        const end = b.kind === "grid" ? b.cutoff / 2 : Math.PI / 2;
        // The whole intensity over the half sphere, against pi times the axial one.
        const flux = integrate(
          rule,
          (t) => 2 * Math.PI * beamShare(b, Math.cos(t)) * Math.cos(t) * Math.sin(t),
          0,
          end,
        );
        // Below the power 1 the intensity is steep at the horizon, where points are few.
        const slack = b.kind === "cosine-power" && b.n < 2 ? 1e-4 : 1e-9;
        expect(Math.abs(flux / Math.PI / share(b) - 1)).toBeLessThan(slack);
      }),
    );
  };
  test("the energy of a beam is its intensity over all directions", () => {
    keepsEnergy(beamEnergyShare)();
    mustBreak(keepsEnergy((b) => (b.kind === "grid" ? Math.sin(b.cutoff / 2) ** 2 : beamEnergyShare(b))));
    mustBreak(keepsEnergy((b) => (b.kind === "cosine-power" ? 1 / b.n : beamEnergyShare(b))));
    expect(beamEnergyShare({ kind: "cosine-power", n: 1 })).toBe(1);
    expect(lambertianFlux(1000) * beamEnergyShare({ kind: "cosine-power", n: 4 })).toBeCloseTo(
      cosinePowerFlux(1000, 4),
      9,
    );
  });

  test("narrow grids keep their digits: the series meets the closed form", () => {
    const share = (c: number): number => beamEnergyShare({ kind: "grid", cutoff: 2 * c });
    expect(share(0.0199999) / share(0.0200001)).toBeCloseTo(1, 4);
    expect(share(0.019999999999) / share(0.020000000001)).toBeCloseTo(1, 9);
    expect(share(1e-6) / (1e-12 / 3)).toBeCloseTo(1, 10);
  });

  test("a grid is dark from half its full angle on", () => {
    const grid: RoundBeam = { kind: "grid", cutoff: radians(40) };
    expect(beamShare(grid, 1)).toBe(1);
    expect(beamShare(grid, Math.cos(radians(20.001)))).toBe(0);
    expect(beamShare(grid, Math.cos(radians(19.9)))).toBeGreaterThan(0);
    expect(beamShare(grid, Math.cos(Math.atan(Math.tan(radians(20)) / 2)))).toBeCloseTo(0.5, 12);
    expect(beamShare(grid, -0.5)).toBe(0);
  });

  test("a reading through a beam is off by no more than it says", () => {
    const square = rectangleSource([0, 0, 0], [1, 0, 0], [0, 1, 0], 0.5, 0.8);
    fc.assert(
      fc.property(
        fc.constantFrom(disc, square),
        beam,
        even(-1, 1),
        even(-1, 1),
        even(0.4, 3),
        fc.constantFrom("disc" as const, "dome" as const),
        (s, b, x, y, z, receptor) => {
          const p: Vec3 = [x, y, z];
          const n: Vec3 = [0, 0.6, -0.8];
          const found = beamReading(s, b, p, n, receptor);
          const fine = beamReading(s, b, p, n, receptor, 64);
          expect(Math.abs(found.value - fine.value)).toBeLessThanOrEqual(2 * found.error + fine.error + 1e-6);
        },
      ),
      { numRuns: 150 },
    );
  });

  test("a Lambertian beam is the exact reading, a distant lamp the intensity over distance squared", () => {
    const p: Vec3 = [0.4, -0.2, 1.1];
    const n: Vec3 = [0, 0, -1];
    expect(beamReading(disc, { kind: "lambert" }, p, n, "disc")).toEqual({
      value: discReading(disc, ...p, ...n, emptyVector()),
      error: 0,
    });
    const grid: RoundBeam = { kind: "grid", cutoff: radians(60) };
    const t = radians(12);
    const far: Vec3 = [300 * Math.sin(t), 0, 300 * Math.cos(t)];
    const expected = (emittingArea(disc) * Math.cos(t) * beamShare(grid, Math.cos(t)) * Math.cos(t)) / 90_000;
    expect(beamReading(disc, grid, far, n, "disc").value / expected).toBeCloseTo(1, 4);
  });

  test("far away the reading is the intensity over distance squared, for flat receptor and dome, and says so", () => {
    fc.assert(
      fc.property(
        beam,
        even(0, 60),
        even(-80, 80),
        fc.constantFrom("disc" as const, "dome" as const),
        (b, off, aside, receptor) => {
          const t = radians(off);
          const a = radians(aside);
          const d = 400;
          const p: Vec3 = [d * Math.sin(t), 0, d * Math.cos(t)];
          // The receptor is turned away from the lamp by `aside`.
          const n: Vec3 = [-Math.sin(t + a), 0, -Math.cos(t + a)];
          const response = receptor === "disc" ? Math.cos(a) : (1 + Math.cos(a)) / 2;
          const expected =
            (emittingArea(disc) * Math.cos(t) * beamShare(b, Math.cos(t)) * response) / (d * d);
          const found = beamReading(disc, b, p, n, receptor);
          const axis = (emittingArea(disc) * response) / (d * d);
          // The edge of a narrow grid moves by the lamp's own width, 0.04 degrees from here.
          expect(Math.abs(found.value - expected)).toBeLessThan(0.02 * axis);
          expect(found.error).toBeLessThan(1e-3 * axis);
        },
      ),
    );
  });
});

describe("luminance and intensity per lumen-second", () => {
  test("known shapes", () => {
    expect(luminancePerEnergy(disc)).toBeCloseTo(1 / (Math.PI * Math.PI * 0.09), 12);
    expect(axialIntensityPerEnergy(disc)).toBeCloseTo(1 / Math.PI, 14);
    expect(axialIntensityPerEnergy(disc, { kind: "cosine-power", n: 3 })).toBeCloseTo(2 / Math.PI, 14);
    const ball: SourceShape = { kind: "sphere", centre: [0, 0, 0], radius: 0.04 };
    expect(axialIntensityPerEnergy(ball)).toBeCloseTo(1 / (4 * Math.PI), 14);
    const flat = polygonSource([
      [0, 0, 0],
      [1, 0, 0],
      [2, 0, 0],
    ]);
    expect(flat).toBeUndefined();
    expect(luminancePerEnergy({ kind: "polygon", corners: [], normal: [0, 0, 1] })).toBeUndefined();
  });

  test("far away on the axis, exposure is intensity over distance squared, for every shape", () => {
    fc.assert(
      fc.property(source, (s) => {
        const d = 1000;
        const exposure = (axialExposurePerEnergy(s, d) ?? 0) * d * d;
        expect(exposure / axialIntensityPerEnergy(s)).toBeCloseTo(1, 4);
      }),
    );
    for (const b of [
      { kind: "cosine-power", n: 5 },
      { kind: "grid", cutoff: radians(50) },
    ] as const) {
      const exposure = (axialExposurePerEnergy(disc, 3000, b) ?? 0) * 9e6;
      expect(exposure / axialIntensityPerEnergy(disc, b)).toBeCloseTo(1, 3);
      expect((luminancePerEnergy(disc, b) ?? 0) * emittingArea(disc)).toBeCloseTo(
        axialIntensityPerEnergy(disc, b),
        12,
      );
    }
  });
});

describe("calibration", () => {
  const roundTrip = (energy: typeof energyFromReading) => () => {
    fc.assert(
      fc.property(
        source,
        even(1.4, 32),
        even(1, 8),
        even(25, 800),
        even(240, 400),
        (s, fNumber, distance, iso, c) => {
          const q = energy(s, { fNumber, iso, distance, c }) ?? Number.NaN;
          const exposure = q * (axialExposurePerEnergy(s, distance) ?? Number.NaN);
          expect(flashFNumber(exposure, iso, c) / fNumber).toBeCloseTo(1, 10);
        },
      ),
    );
  };
  test("a lamp calibrated by a reading gives that reading again", () => {
    roundTrip(energyFromReading)();
    mustBreak(
      roundTrip((s, r) =>
        energyFromAxialIntensity(s, (r.fNumber * r.fNumber * r.c * r.distance * r.distance) / r.iso),
      ),
    );
  });

  test("by hand: a disc of 0.3 m radius read f/8 at 2 m, ISO 100, C 250", () => {
    // H = 64 x 250 / 100 = 160 lx s; E / (L t) = pi R^2 / (R^2 + d^2); L t = Q / (pi pi R^2)
    const q = energyFromReading(disc, { fNumber: 8, iso: 100, distance: 2, c: 250 });
    expect(q).toBeCloseTo(160 * Math.PI * (0.09 + 4), 9);
  });

  test("a guide number is kept far away, and overrates a large lamp nearby", () => {
    const q = energyFromGuideNumber(disc, 40, 250);
    expect(q).toBeCloseTo(4000 * Math.PI, 9);
    const shown = (d: number): number => flashFNumber(q * (axialExposurePerEnergy(disc, d) ?? 0), 100, 250);
    expect(shown(100) / guideNumberFNumber(40, 100, 100)).toBeCloseTo(1, 5);
    expect(shown(0.5)).toBeLessThan(guideNumberFNumber(40, 100, 0.5) * 0.9);
  });

  test("through a beam: the same axis, less energy", () => {
    const grid: RoundBeam = { kind: "grid", cutoff: radians(40) };
    expect(energyFromAxialIntensity(disc, 500, grid)).toBeCloseTo(
      energyBehindBeam(energyFromAxialIntensity(disc, 500), grid),
      9,
    );
    const read = { fNumber: 8, iso: 100, distance: 4, c: 250 };
    const q = energyFromReading(disc, read, grid) ?? Number.NaN;
    expect(flashFNumber(q * (axialExposurePerEnergy(disc, 4, grid) ?? 0), 100, 250)).toBeCloseTo(8, 9);
    expect(energyFromWattSeconds(500, 40, 0.5)).toBe(10_000);
  });

  test("no light, no calibration", () => {
    const ball: SourceShape = { kind: "sphere", centre: [0, 0, 0], radius: 0.5 };
    expect(energyFromReading(ball, { fNumber: 8, iso: 100, distance: 0.4, c: 250 })).toBeUndefined();
  });
});
