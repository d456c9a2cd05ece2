import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { type DataTexture, FloatType } from "three";
import { IESLoader } from "three/examples/jsm/loaders/IESLoader.js";
import { describe, expect, test } from "vitest";
import { beamAngle } from "../../src/photometry/beam-angle.js";
import { candelaAt, meanCandela } from "../../src/photometry/candela.js";
import { candelaTowards } from "../../src/photometry/direction.js";
import { lumensByZones, totalLumens, zonalLumens } from "../../src/photometry/flux.js";
import type { Photometry } from "../../src/photometry/photometry.js";
import { readLm63 } from "../../src/photometry/read-lm63.js";
import { mustBreak } from "../helpers/must-break.js";
import { REFERENCE } from "../helpers/reference-rows.js";
import { angles, type Sample, sampleFile } from "./sample.js";

const RADIANS = Math.PI / 180;

function table(sample: Sample): Photometry {
  const { photometry } = readLm63(sampleFile(sample));
  if (photometry === null) throw new Error("sample is wrong");
  return photometry;
}

/** An uneven but smooth beam around the axis. */
const uneven = (v: number, h: number): number =>
  1000 * Math.max(0, Math.cos(v * RADIANS)) * (1 + 0.3 * Math.cos(h * RADIANS) * Math.sin(v * RADIANS));

describe("luminous flux", () => {
  const matt = (lumens: (sample: Photometry) => number) => () => {
    const found = lumens(table({ vertical: angles(0, 90, 1) }));
    expect(Math.abs(found / (1000 * Math.PI) - 1)).toBeLessThan(1e-4);
  };

  test("a matt source gives pi times its axial intensity, whichever way it is added up", () => {
    matt(totalLumens)();
    matt((each) => lumensByZones(each, 1))();
    matt((each) => zonalLumens(each, 0, 37) + zonalLumens(each, 37, 180))();
    mustBreak(matt((each) => lumensByZones(each, 1) * 1.001));
  });

  test("the same in type B, whole and mirrored", () => {
    const candela = (v: number, h: number) => 1000 * Math.cos(v * RADIANS) * Math.cos(h * RADIANS);
    const whole = table({ type: 2, vertical: angles(-90, 90, 2), horizontal: angles(-90, 90, 2), candela });
    const half = table({ type: 2, vertical: angles(-90, 90, 2), horizontal: angles(0, 90, 2), candela });
    expect(totalLumens(whole) / (1000 * Math.PI)).toBeCloseTo(1, 3);
    expect(totalLumens(half)).toBeCloseTo(totalLumens(whole), 6);
  });

  test("an even ball of light gives 4 pi", () => {
    const ball = table({ vertical: [0, 60, 180], candela: () => 10 });
    expect(totalLumens(ball)).toBeCloseTo(40 * Math.PI, 9);
    expect(lumensByZones(ball, 7)).toBeCloseTo(40 * Math.PI, 9);
  });

  test("angles that lie as close as numbers can give numbers", () => {
    const close = table({ vertical: [0, 5e-324, 90], candela: () => 10 });
    expect(totalLumens(close)).toBeCloseTo(20 * Math.PI, 9);
    expect(zonalLumens(close, 0, 5e-324)).toBe(0);
    expect(candelaAt(close, 5e-324, 0)).toBe(10);
    expect(beamAngle(close, 0.5)).toBe(180);
    expect(totalLumens(table({ horizontal: [0, 5e-324], candela: () => 10 }))).toBeCloseTo(20 * Math.PI, 9);
  });

  test("zones add up, and none is below zero", () => {
    const sample = table({ vertical: angles(0, 180, 15), horizontal: angles(0, 360, 30), candela: uneven });
    const edge = fc.double({ min: 0, max: 180, noNaN: true });
    fc.assert(
      fc.property(edge, edge, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const parts =
          zonalLumens(sample, 0, low) + zonalLumens(sample, low, high) + zonalLumens(sample, high, 180);
        expect(parts).toBeCloseTo(totalLumens(sample), 8);
        expect(zonalLumens(sample, low, high)).toBeGreaterThanOrEqual(0);
        expect(zonalLumens(sample, high, low)).toBeCloseTo(0, 12);
      }),
    );
  });

  test("a quarter, a half, the whole and an open circle of one beam hold the same light", () => {
    const candela = (v: number, h: number) =>
      500 * Math.cos(v * RADIANS) * (1 + 0.4 * Math.cos(2 * h * RADIANS));
    const vertical = angles(0, 90, 5);
    const spans = [
      angles(0, 90, 15),
      angles(0, 180, 15),
      angles(90, 270, 15),
      angles(0, 360, 15),
      angles(0, 345, 15),
    ];
    const tables = spans.map((horizontal) => table({ vertical, horizontal, candela }));
    for (const each of tables) {
      expect(totalLumens(each)).toBeCloseTo(totalLumens(tables[0]!), 8);
      for (const h of [0, 22, 90, 133, 180, 201, 271, 352, 360, -40]) {
        expect(candelaAt(each, 33, h)).toBeCloseTo(candelaAt(tables[3]!, 33, h), 9);
      }
    }
  });
});

describe("intensity", () => {
  test("the table's own values at its angles, between neighbours in between, nothing outside", () => {
    const sample = table({ vertical: angles(0, 90, 10), horizontal: angles(0, 360, 30), candela: uneven });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 12 }), (i, j) => {
        expect(candelaAt(sample, 10 * i, 30 * j)).toBeCloseTo(uneven(10 * i, 30 * j), 9);
      }),
    );
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ noNaN: true, min: -720, max: 720 }),
        (v, h) => {
          const around = candelaAt(sample, v, h);
          expect(around).toBeCloseTo(candelaAt(sample, v, h + 360), 6);
          expect(around).toBeGreaterThanOrEqual(0);
          expect(around).toBeLessThanOrEqual(1300);
        },
      ),
    );
    expect(candelaAt(sample, 90.001, 0)).toBe(0);
    expect(candelaAt(sample, -1, 0)).toBe(0);
    expect(candelaAt(sample, Number.NaN, 0)).toBe(0);
    expect(candelaAt(sample, 10, Number.NaN)).toBe(0);
    expect(meanCandela(sample, 40)).toBeCloseTo(1000 * Math.cos(40 * RADIANS), 6);
  });

  test("by direction: the axis, the plane of 0 degrees, and type B lean the way they say", () => {
    const c = table({
      vertical: angles(0, 180, 10),
      horizontal: angles(0, 360, 10),
      candela: (v, h) => v + h / 1000,
    });
    expect(candelaTowards(c, 1, 0, 0)).toBeCloseTo(0, 12);
    expect(candelaTowards(c, 0, 1, 0)).toBeCloseTo(90, 9);
    expect(candelaTowards(c, 0, 0, 5)).toBeCloseTo(90.09, 9);
    expect(candelaTowards(c, -2, 0, 0)).toBeCloseTo(180, 9);
    expect(candelaTowards(c, 0, 0, 0)).toBe(0);
    const b = table({
      type: 2,
      vertical: angles(-90, 90, 10),
      horizontal: angles(-90, 90, 10),
      candela: (v, h) => 1000 + v + h / 1000,
    });
    expect(candelaTowards(b, 1, 0, 0)).toBeCloseTo(1000, 9);
    expect(candelaTowards(b, 1, 0, 1)).toBeCloseTo(1045, 9);
    expect(candelaTowards(b, 1, -1, 0)).toBeCloseTo(999.955, 9);
    expect(candelaTowards(b, -1, 0, 1)).toBe(0);
  });

  test("beam angle: where a matt source has half its axial light, and the edge of a table", () => {
    const matt = table({ vertical: angles(0, 90, 1) });
    expect(beamAngle(matt, 0.5)).toBeCloseTo(120, 1);
    expect(beamAngle(table({ vertical: [0, 30], candela: () => 5 }), 0.5)).toBe(60);
    expect(beamAngle(table({ candela: () => 0 }), 0.5)).toBeUndefined();
    const lopsided = table({
      vertical: angles(0, 90, 10),
      horizontal: [0, 180],
      candela: (v, h) => (v <= (h === 0 ? 20 : 50) ? 100 : 0),
    });
    expect(beamAngle(lopsided, 0.5, 0)).toBe(80);
    expect(beamAngle(lopsided, 0.5, 180)).toBe(80);
  });

  test.each(["A1", "A2"])("%s against another program's reader", (name) => {
    const text = readFileSync(join(REFERENCE, "ies", `${name}.ies`), "utf8");
    const { photometry } = readLm63(text);
    const loader = Object.assign(new IESLoader(), { type: FloatType });
    const texture = loader.parse(text) as unknown as DataTexture;
    const { data, height } = texture.image as unknown as { data: Float32Array; height: number };
    // That program scales to the greatest value, samples 180 vertical angles from 0 to 180 degrees and 360 horizontal
    // ones, in single precision, and goes on in a straight line past the last vertical angle.
    const greatest = Math.max(...photometry!.candela.flat());
    let compared = 0;
    for (let h = 0; h < height; h += 7) {
      for (let i = 0; i < 180; i += 1) {
        const v = (i * 180) / 179;
        if (v > 90) continue;
        expect(Math.abs(data[h * 180 + i]! - candelaAt(photometry!, v, h) / greatest)).toBeLessThan(1e-6);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(80);
  });
});
