import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { polygonArea } from "../../src/math/polygon.js";
import { formFactor, formFactorByContour } from "../../src/physics/form-factor.js";
import { formFactorByPoints } from "../../src/physics/form-factor-points.js";
import { viewFactorAtAngle } from "../../src/physics/view-factor-angle.js";
import { viewFactorCoaxialDiscs } from "../../src/physics/view-factor-discs.js";
import { viewFactorOffsetParallel, viewFactorParallel } from "../../src/physics/view-factor-parallel.js";
import {
  viewFactorOffsetPerpendicular,
  viewFactorPerpendicular,
} from "../../src/physics/view-factor-perpendicular.js";
import { viewFactorStrips, viewFactorWedge } from "../../src/physics/view-factor-strips.js";
import { mustBreak } from "../helpers/must-break.js";

type Factor = (from: readonly Vec3[], to: readonly Vec3[]) => number;

/** A rectangle in the plane z = 0, front up. */
function floorPiece(x1: number, x2: number, y1: number, y2: number): readonly Vec3[] {
  return [
    [x1, y1, 0],
    [x2, y1, 0],
    [x2, y2, 0],
    [x1, y2, 0],
  ];
}

/** A rectangle in a plane through the line x = 0, z = 0, at an angle from the floor, front towards the floor. */
function leaf(angle: number, along1: number, along2: number, away1: number, away2: number): readonly Vec3[] {
  const at = (away: number, along: number): Vec3 => [away * Math.cos(angle), along, away * Math.sin(angle)];
  return [at(away1, along1), at(away1, along2), at(away2, along2), at(away2, along1)];
}

/** The six inner faces of a box. */
function room(w: number, d: number, h: number): readonly (readonly Vec3[])[] {
  const p = (x: number, y: number, z: number): Vec3 => [x * w, y * d, z * h];
  return [
    [p(0, 0, 0), p(1, 0, 0), p(1, 1, 0), p(0, 1, 0)],
    [p(0, 0, 1), p(0, 1, 1), p(1, 1, 1), p(1, 0, 1)],
    [p(0, 0, 0), p(0, 0, 1), p(1, 0, 1), p(1, 0, 0)],
    [p(0, 1, 0), p(1, 1, 0), p(1, 1, 1), p(0, 1, 1)],
    [p(0, 0, 0), p(0, 1, 0), p(0, 1, 1), p(0, 0, 1)],
    [p(1, 0, 0), p(1, 0, 1), p(1, 1, 1), p(1, 1, 0)],
  ];
}

const size = fc.double({ min: 0.2, max: 3, noNaN: true });
const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate);

/** Two triangles anywhere about a gap between them, which may cut each other's planes. */
const trianglePair = fc
  .tuple(fc.tuple(point, point, point), fc.tuple(point, point, point))
  .map(([one, other]): readonly [readonly Vec3[], readonly Vec3[]] => [
    one,
    other.map(([x, y, z]): Vec3 => [x, y, z + 2.5]),
  ])
  .filter(([one, other]) => polygonArea(one) > 0.05 && polygonArea(other) > 0.05);

describe("published values", () => {
  // Worked values printed in the documentation of a general engineering equation program, after Siegel and Howell,
  // Thermal Radiation Heat Transfer, 4th ed.; Chapman (1987); Howell's catalogue. Four digits each; the lettered
  // layouts were found by trying those that give the printed digits.
  test.each([
    ["parallel 1 x 1.5 at 0.5", viewFactorParallel(1, 1.5, 0.5), 0.4756],
    ["square faces of a cube", viewFactorParallel(1, 1, 1), 0.1998],
    ["perpendicular, edge 0.5, 1 x 1", viewFactorPerpendicular(0.5, 1, 1), 0.1493],
    [
      "0.1 x 0.1 over each other at 0.05",
      viewFactorOffsetParallel(
        { x1: 0.1, x2: 0.2, y1: 0.1, y2: 0.2 },
        { x1: 0.1, x2: 0.2, y1: 0.1, y2: 0.2 },
        0.05,
      ),
      0.4153,
    ],
    [
      "1 x 1 and 1 x 1 at 45 degrees, the second 1 to 2 from the line",
      formFactor(floorPiece(0, 1, 0, 1), leaf(Math.PI / 4, 0, 1, 1, 2)),
      0.0728,
    ],
    [
      "perpendicular, gap 0.2",
      formFactor(floorPiece(0, 0.5, 0, 0.5), leaf(Math.PI / 2, 0, 0.5, 0.2, 0.5)),
      0.07235,
    ],
    [
      "perpendicular, both away from the line",
      formFactor(floorPiece(0.1, 0.6, 0, 0.5), leaf(Math.PI / 2, 0, 0.5, 0.2, 0.5)),
      0.07182,
    ],
    [
      "the same at 45 degrees",
      formFactor(floorPiece(0.1, 0.6, 0, 0.5), leaf(Math.PI / 4, 0, 0.5, 0.2, 0.5)),
      0.2276,
    ],
    [
      "perpendicular with a common point",
      formFactor(floorPiece(0, 0.1, 0, 0.2), leaf(Math.PI / 2, 0.2, 0.5, 0, 0.5)),
      0.0605,
    ],
    [
      "perpendicular, no common point",
      formFactor(floorPiece(0.1, 0.3, 0, 0.5), leaf(Math.PI / 2, 0.55, 1.05, 0.5, 1)),
      0.01626,
    ],
  ])("%s", (_name, found, printed) => {
    expect(Math.abs(found - printed)).toBeLessThan(5.1e-5);
  });
});

describe("closed forms against the general routine", () => {
  test("parallel, shifted", () => {
    fc.assert(
      fc.property(size, size, size, size, size, coordinate, coordinate, (a, b, c, d, gap, x, y) => {
        const closed = viewFactorOffsetParallel(
          { x1: 0, x2: a, y1: 0, y2: b },
          { x1: x, x2: x + c, y1: y, y2: y + d },
          gap,
        );
        const above: readonly Vec3[] = floorPiece(x, x + c, y, y + d)
          .map(([px, py]): Vec3 => [px, py, gap])
          .reverse();
        expect(formFactor(floorPiece(0, a, 0, b), above) / closed).toBeCloseTo(1, 10);
      }),
    );
  });

  test("perpendicular, shifted, with the catalogue's common-edge form as a special case", () => {
    fc.assert(
      fc.property(size, size, size, size, coordinate, size, size, (w, c, u, v, shift, start, start2) => {
        const closed = viewFactorOffsetPerpendicular(
          { along1: 0, along2: c, away1: start, away2: start + w },
          { along1: shift, along2: shift + u, away1: start2, away2: start2 + v },
        );
        const wall = leaf(Math.PI / 2, shift, shift + u, start2, start2 + v);
        expect(formFactor(floorPiece(start, start + w, 0, c), wall)).toBeCloseTo(closed, 11);
        const edge = viewFactorOffsetPerpendicular(
          { along1: 0, along2: c, away1: 0, away2: w },
          { along1: 0, along2: c, away1: 0, away2: v },
        );
        expect(edge / viewFactorPerpendicular(c, w, v)).toBeCloseTo(1, 9);
      }),
    );
  });

  test("a right angle is one of the angles, and an endless hinge is the crossed strings", () => {
    expect(viewFactorAtAngle(1.3, 0.7, 2.1, Math.PI / 2)).toBeCloseTo(
      viewFactorPerpendicular(1.3, 0.7, 2.1),
      12,
    );
    for (const degrees of [20, 60, 90, 135, 170]) {
      const angle = (degrees * Math.PI) / 180;
      expect(viewFactorAtAngle(4000, 1, 1.5, angle)).toBeCloseTo(viewFactorWedge(1, 1.5, angle), 3);
    }
    expect(viewFactorParallel(4000, 1, 0.6)).toBeCloseTo(viewFactorStrips(1, 0.6), 3);
  });

  test("coaxial discs are the limit of polygons with many corners", () => {
    const ring = (radius: number, z: number, up: boolean): readonly Vec3[] => {
      const corners = Array.from({ length: 96 }, (_, i): Vec3 => {
        const turn = ((up ? 1 : -1) * 2 * Math.PI * i) / 96;
        return [radius * Math.cos(turn), radius * Math.sin(turn), z];
      });
      return corners;
    };
    const found = formFactor(ring(0.5, 0, true), ring(1, 1.2, false));
    expect(found / viewFactorCoaxialDiscs(0.5, 1, 1.2)).toBeCloseTo(1, 2);
  });
});

describe("laws of form factors", () => {
  const reciprocity = (factor: Factor) => () => {
    fc.assert(
      fc.property(trianglePair, ([one, other]) => {
        const there = polygonArea(one) * factor(one, other);
        const back = polygonArea(other) * factor(other, one);
        expect(Math.abs(there - back)).toBeLessThanOrEqual(1e-10 * Math.max(there, back) + 1e-14);
      }),
    );
  };

  test("reciprocity: area times factor is the same both ways", () => {
    reciprocity(formFactor)();
    reciprocity(formFactorByContour)();
    mustBreak(reciprocity((from, to) => formFactor(from, to) * (1 + 1e-6 * polygonArea(from))));
  });

  const closedRoom = (factor: Factor) => () => {
    fc.assert(
      fc.property(size, size, size, (w, d, h) => {
        const faces = room(w, d, h);
        for (const from of faces) {
          let sum = 0;
          for (const to of faces) if (to !== from) sum += factor(from, to);
          expect(Math.abs(sum - 1)).toBeLessThan(1e-10);
        }
      }),
      { numRuns: 25 },
    );
  };

  test("what leaves a face of a closed room arrives at its other faces", () => {
    closedRoom(formFactor)();
    mustBreak(closedRoom((from, to) => formFactor(from, to) * (1 + 1e-9)));
  });

  test("a closed tetrahedron, whose faces meet at odd angles", () => {
    const a: Vec3 = [0, 0, 0];
    const b: Vec3 = [1.3, 0.1, 0];
    const c: Vec3 = [0.2, 0.9, 0.1];
    const d: Vec3 = [0.4, 0.3, 1.1];
    const faces: readonly (readonly Vec3[])[] = [
      [a, b, c],
      [a, d, b],
      [b, d, c],
      [a, c, d],
    ];
    for (const from of faces) {
      let sum = 0;
      for (const to of faces) if (to !== from) sum += formFactor(from, to);
      expect(sum).toBeCloseTo(1, 10);
    }
  });

  test("a polygon cut in two receives the same, and the mean over the pieces sends the same", () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (w, h, cut) => {
        const wall = leaf(1.1, 0, w, 0, h);
        const whole = floorPiece(0, 1, 0, 1);
        const left = floorPiece(0, cut, 0, 1);
        const right = floorPiece(cut, 1, 0, 1);
        const sent = cut * formFactor(left, wall) + (1 - cut) * formFactor(right, wall);
        expect(sent).toBeCloseTo(formFactor(whole, wall), 10);
        const received = formFactor(wall, left) + formFactor(wall, right);
        expect(received).toBeCloseTo(formFactor(wall, whole), 10);
      }),
    );
  });

  test("panels that nearly touch, and a strip a hundredth as wide as long", () => {
    const floor = floorPiece(0, 1, 0, 1);
    for (const gap of [0.1, 0.01, 0.001, 1e-5]) {
      const wall = leaf(1.1, gap, 1 + gap, gap, 1 + gap);
      expect(Math.abs(formFactor(floor, wall) - formFactor(wall, floor))).toBeLessThan(1e-12);
    }
    const strip = leaf(1.1, 0, 0.01, 0, 0.73);
    const parts = formFactor(strip, floorPiece(0, 0.1, 0, 1)) + formFactor(strip, floorPiece(0.1, 1, 0, 1));
    expect(Math.abs(parts - formFactor(strip, floor))).toBeLessThan(1e-11);
  });

  test("size does not matter, only shape", () => {
    fc.assert(
      fc.property(trianglePair, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), ([one, other], scale) => {
        const grow = (corners: readonly Vec3[]) =>
          corners.map(([x, y, z]): Vec3 => [x * scale, y * scale, z * scale]);
        expect(formFactor(grow(one), grow(other))).toBeCloseTo(formFactor(one, other), 11);
      }),
    );
  });

  test("the contour and Lambert's points agree, two independent ways", () => {
    const one: readonly Vec3[] = [
      [0, 0, 0],
      [1, 0.1, 0],
      [0.3, 0.9, 0],
    ];
    const other: readonly Vec3[] = [
      [0.2, 0.1, 0.5],
      [0.4, 1.2, 0.9],
      [1.3, 0.8, 0.7],
    ];
    expect(formFactorByContour(one, other)).toBeCloseTo(formFactorByPoints(one, other, 32), 12);
  });

  test("backs and edges send nothing; what sinks below the plane does not count", () => {
    const up = floorPiece(0, 1, 0, 1);
    const under: readonly Vec3[] = up.map(([x, y]): Vec3 => [x, y, -1]);
    expect(formFactor(up, under)).toBe(0);
    expect(formFactor(up, [...under].reverse())).toBe(0);
    expect(formFactor(up, [])).toBe(0);
    expect(
      formFactor(up, [
        [0, 0, 1],
        [1, 1, 1],
        [2, 2, 1],
      ]),
    ).toBe(0);
    const through = leaf(Math.PI / 2, 0, 1, -1, 1);
    const above = leaf(Math.PI / 2, 0, 1, 0, 1);
    expect(formFactor(up, through)).toBeCloseTo(formFactor(up, above), 12);
  });

  test("far patches keep their digits, in the closed form too", () => {
    expect(viewFactorParallel(1e-4, 1e-4, 1) / (1e-8 / Math.PI)).toBeCloseTo(1, 7);
    expect(viewFactorParallel(0.0999999, 0.06, 1) / viewFactorParallel(0.1000001, 0.06, 1)).toBeCloseTo(1, 5);
    const far: readonly Vec3[] = floorPiece(0, 1, 0, 1)
      .map(([x, y]): Vec3 => [x, y, 1000])
      .reverse();
    const found = formFactor(floorPiece(0, 1, 0, 1), far);
    expect(found / (1 / (Math.PI * 1e6))).toBeCloseTo(1, 5);
    expect(found / formFactor(far, floorPiece(0, 1, 0, 1))).toBeCloseTo(1, 9);
  });
});
