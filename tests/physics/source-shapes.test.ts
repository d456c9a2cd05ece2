import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { normalise } from "../../src/math/vector.js";
import { angularWidths } from "../../src/physics/angular-size.js";
import { edgeFullWidth, edgeWidthBetween } from "../../src/physics/edge-share.js";
import {
  clippedLightVector,
  discReading,
  domeReading,
  lightVector,
  solidAngle,
} from "../../src/physics/illuminance.js";
import { emptyVector } from "../../src/physics/light-vector.js";
import { polygonIlluminance } from "../../src/physics/polygon-illuminance.js";
import { stripIlluminance } from "../../src/physics/simple-illuminance.js";
import { samples } from "../../src/physics/source-samples.js";
import {
  emittingArea,
  polygonSource,
  rectangleSource,
  type SourceShape,
  sourceCentre,
} from "../../src/physics/source-shape.js";
import { even } from "../helpers/light-shapes.js";

const up: Vec3 = [0, 0, 1];
const reading = (s: SourceShape, p: Vec3, n: Vec3 = up): number => discReading(s, ...p, ...n, emptyVector());

describe("shapes", () => {
  test("a rectangle faces where across x up points, corners counter-clockwise from its front", () => {
    const box = rectangleSource([1, 2, 3], [1, 0, 0], [0, 0, 1], 2, 4);
    expect(box.normal).toEqual([0, -1, 0]);
    expect(emittingArea(box)).toBe(8);
    expect(sourceCentre(box)).toEqual([1, 2, 3]);
    expect(polygonSource(box.corners)?.normal).toEqual([0, -1, 0]);
  });

  test("areas of round bodies", () => {
    expect(emittingArea({ kind: "sphere", centre: [0, 0, 0], radius: 2 })).toBeCloseTo(16 * Math.PI, 12);
    expect(emittingArea({ kind: "capsule", from: [0, 0, 0], to: [0, 0, 3], radius: 2 })).toBeCloseTo(
      28 * Math.PI,
      12,
    );
    expect(emittingArea({ kind: "disc", centre: [0, 0, 0], normal: up, radius: 2 })).toBeCloseTo(
      4 * Math.PI,
      12,
    );
  });

  test("points over a source stand for its whole area, about its centre", () => {
    const disc = { kind: "disc", centre: [1, 2, 3], normal: [0, 0.6, 0.8], radius: 0.4 } as const;
    const box = rectangleSource([1, 2, 3], [1, 0, 0], [0, 0, 1], 2, 4);
    for (const source of [disc, box]) {
      let area = 0;
      const sum = [0, 0, 0];
      for (const point of samples(source, 9)) {
        area += point.area;
        for (const axis of [0, 1, 2] as const) sum[axis] = (sum[axis] ?? 0) + point.area * point.at[axis];
      }
      expect(area).toBeCloseTo(emittingArea(source), 12);
      for (const axis of [0, 1, 2] as const)
        expect((sum[axis] ?? 0) / area).toBeCloseTo([1, 2, 3][axis] ?? 0, 10);
    }
  });
});

describe("limits between shapes", () => {
  test("a capsule without length is a sphere", () => {
    const ball: SourceShape = { kind: "sphere", centre: [0.2, 0.1, 1], radius: 0.3 };
    for (const length of [0, 1e-14, 1e-9]) {
      const tube: SourceShape = {
        kind: "capsule",
        from: [0.2, 0.1, 1],
        to: [0.2 + length, 0.1, 1],
        radius: 0.3,
      };
      for (const n of [up, [1, 0, 0], [-0.8, 0, 0.6]] as const) {
        expect(reading(tube, [0, 0, 0], n)).toBeCloseTo(reading(ball, [0, 0, 0], n), 8);
      }
      expect(solidAngle(tube, 0, 0, 0)).toBeCloseTo(solidAngle(ball, 0, 0, 0), 8);
    }
  });

  test("a thin tube with bright ends cut off is a narrow strip", () => {
    // The handbook strip has no ends, so the tube's ends are taken away as a share that vanishes with its girth.
    const strip = stripIlluminance(1, 2e-4, 1.2, 1);
    const tube: SourceShape = { kind: "capsule", from: [-0.6, 0, 1], to: [0.6, 0, 1], radius: 1e-4 };
    expect(reading(tube, [0, 0, 0]) / strip).toBeCloseTo(1, 3);
  });

  test("side and end of a capsule meet where the point passes the tube's prolonged wall", () => {
    const tube: SourceShape = { kind: "capsule", from: [0, 0, 0], to: [1, 0, 0], radius: 0.2 };
    const at = (z: number): Vec3 => [1.8, 0, z];
    const n = normalise([-1, 0, 0.2]) ?? up;
    for (const gap of [1e-6, 1e-9, 1e-12]) {
      const inside = at(0.2 - gap);
      const outside = at(0.2 + gap);
      expect(solidAngle(tube, ...outside)).toBeCloseTo(solidAngle(tube, ...inside), gap < 1e-8 ? 5 : 2);
      expect(reading(tube, outside, n)).toBeCloseTo(reading(tube, inside, n), gap < 1e-8 ? 5 : 2);
    }
  });

  test("a disc right in front of the receptor fills its view: pi", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 1e-6], normal: [0, 0, -1], radius: 1 };
    expect(reading(disc, [0, 0, 0])).toBeCloseTo(Math.PI, 10);
    expect(domeReading(disc, 0, 0, 0, ...up, emptyVector())).toBeCloseTo((2 * Math.PI + Math.PI) / 2, 5);
  });

  test("exactly over the rim the solid angle has no step", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 0], normal: up, radius: 0.7 };
    const over = solidAngle(disc, 0.7, 0, 0.4);
    for (const gap of [1e-15, 1e-13, 1e-12, 1e-10, 1e-8]) {
      expect(solidAngle(disc, 0.7 - gap, 0, 0.4)).toBeCloseTo(over, 7);
      expect(solidAngle(disc, 0.7 + gap, 0, 0.4)).toBeCloseTo(over, 7);
    }
  });

  test("the far series and the near form of the disc's solid angle meet", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 0], normal: up, radius: 1 };
    for (const cosine of [1, 0.7, 0.2, 0.01]) {
      const side = Math.sqrt(1 - cosine * cosine);
      const at = (d: number): number => solidAngle(disc, d * side, 0, d * cosine) * d * d;
      expect(at(4 + 1e-9) / at(4 - 1e-9)).toBeCloseTo(1, 9);
    }
  });
});

describe("no light", () => {
  test("behind a flat source and inside a body", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 1], normal: up, radius: 1 };
    const box = rectangleSource([0, 0, 1], [1, 0, 0], [0, 1, 0], 1, 1);
    const ball: SourceShape = { kind: "sphere", centre: [0, 0, 0.1], radius: 0.5 };
    const tube: SourceShape = { kind: "capsule", from: [-1, 0, 0], to: [1, 0, 0], radius: 0.5 };
    for (const source of [disc, box, ball, tube]) {
      expect(reading(source, [0, 0, 0])).toBe(0);
      expect(domeReading(source, 0, 0, 0, ...up, emptyVector())).toBe(0);
      expect(solidAngle(source, 0, 0, 0)).toBe(0);
      expect(angularWidths(source, [0, 0, 0])).toBeUndefined();
    }
  });

  test("a receiver without a direction, or a polygon without corners", () => {
    const triangle: readonly Vec3[] = [
      [0, 0, 1],
      [1, 0, 1],
      [0, 1, 1],
    ];
    expect(polygonIlluminance(1, triangle, [0, 0, 0], [0, 0, 0])).toBeUndefined();
    expect(polygonIlluminance(1, [], [0, 0, 0], up)).toBe(0);
    expect(reading({ kind: "polygon", corners: [], normal: up }, [0, 0, 1])).toBe(0);
  });
});

describe("numbers stay numbers", () => {
  test("on the rim of a disc, less than any number in front of it", () => {
    const disc: SourceShape = { kind: "disc", centre: [0, 0, 0], normal: [-1, 0, 0], radius: 1 };
    expect(reading(disc, [-5e-324, 0, 1], [0, -1, 0])).toBe(0);
  });

  const wild = fc.oneof(
    fc.constantFrom(0, -0, 1, -1, 0.5, 1e-300, 5e-324, 1e-9, 1e6),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    even(-2, 2),
  );
  const point: fc.Arbitrary<Vec3> = fc.tuple(wild, wild, wild);
  const unit: fc.Arbitrary<Vec3> = point.map((v) => normalise(v) ?? up);
  const size = fc.oneof(fc.constantFrom(1e-9, 1, 1e3), even(0.001, 3));
  const any: fc.Arbitrary<SourceShape> = fc.oneof(
    fc
      .tuple(point, unit, size)
      .map(([centre, normal, radius]): SourceShape => ({ kind: "disc", centre, normal, radius })),
    fc.tuple(point, size).map(([centre, radius]): SourceShape => ({ kind: "sphere", centre, radius })),
    fc
      .tuple(point, point, size)
      .map(([from, to, radius]): SourceShape => ({ kind: "capsule", from, to, radius })),
    fc
      .tuple(fc.array(point, { maxLength: 5 }), unit)
      .map(([corners, normal]): SourceShape => ({ kind: "polygon", corners, normal })),
  );

  test("for any place and source, also on rims, in planes and inside", () => {
    fc.assert(
      fc.property(any, point, unit, (s, p, n) => {
        for (const value of [
          reading(s, p, n),
          domeReading(s, ...p, ...n, emptyVector()),
          solidAngle(s, ...p),
        ]) {
          expect(Number.isFinite(value)).toBe(true);
          expect(value).toBeGreaterThanOrEqual(0);
          if (s.kind !== "polygon") expect(value).toBeLessThan(4 * Math.PI + 1e-9);
        }
        for (const v of [
          lightVector(s, ...p, emptyVector()),
          clippedLightVector(s, ...p, ...n, emptyVector()),
        ]) {
          expect([v.x, v.y, v.z].every(Number.isFinite)).toBe(true);
        }
        const widths = angularWidths(s, p);
        if (widths) expect(Object.values(widths).every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  test("for any edge", () => {
    fc.assert(
      fc.property(
        any,
        point,
        unit,
        point,
        unit,
        (source, edgePoint, edgeDirection, surfacePoint, surfaceNormal) => {
          const edge = { source, edgePoint, edgeDirection, surfacePoint, surfaceNormal };
          for (const width of [edgeFullWidth(edge), edgeWidthBetween(edge)]) {
            if (width !== undefined) expect(Number.isFinite(width) && width >= 0).toBe(true);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});
