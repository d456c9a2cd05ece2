import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { gaussLegendre } from "../../src/math/quadrature.js";
import type { Source } from "../../src/scene/types.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";
import { mustBreak } from "../helpers/must-break.js";
import { randomDirection, randomFrom } from "../helpers/random.js";
import { beams, shapes, sourceOf } from "../helpers/sources.js";

/** A reading per lumen-second. */
type Reading = (source: Source, at: Vec3, facing: Vec3, receptor: "disc" | "dome") => number;

const flatShapes = shapes.slice(0, 2);
const anyShape = fc.constantFrom(...shapes);
const anyDirection = fc.nat(1_000_000).map((seed) => randomDirection(randomFrom(seed)));
const along = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
const minus = (a: Vec3): Vec3 => [-a[0], -a[1], -a[2]];

describe("far away, twice the distance is a quarter of the light", () => {
  const law = (read: Reading): void => {
    fc.assert(
      fc.property(
        anyShape,
        anyDirection,
        fc.double({ min: 60, max: 2000, noNaN: true }),
        (shape, way, far) => {
          const source = sourceOf(shape);
          const one = read(source, along(way, far), minus(way), "disc");
          const two = read(source, along(way, 2 * far), minus(way), "disc");
          expect(Math.abs(4 * two - one)).toBeLessThanOrEqual(1e-3 * one);
        },
      ),
    );
  };
  test("holds", () => law(directPerLumenSecond));
  test("breaks for a law of one over the distance", () =>
    mustBreak(() => law((s, at, f, r) => directPerLumenSecond(s, at, f, r) * Math.hypot(...at))));
});

describe("all the light of a lamp arrives on a closed sphere round it", () => {
  /** The exposure of discs that look inwards, summed over a sphere: a product rule of Gauss and equal steps. */
  const caught = (read: Reading, source: Source, radius: number): number => {
    const rule = gaussLegendre(40);
    const turns = 80;
    let sum = 0;
    for (let i = 0; i < rule.points.length; i++) {
      const z = rule.points[i] ?? 0;
      const r = Math.sqrt(1 - z * z);
      for (let j = 0; j < turns; j++) {
        const turn = ((j + 0.5) * 2 * Math.PI) / turns;
        // The lamp's axis is the sphere's axis, so that no step falls across the edge of its light.
        const way: Vec3 = [r * Math.cos(turn), z, r * Math.sin(turn)];
        sum +=
          ((rule.weights[i] ?? 0) * read(source, along(way, radius), minus(way), "disc") * 2 * Math.PI) /
          turns;
      }
    }
    return sum * radius * radius;
  };
  const law = (read: Reading): void => {
    for (const shape of shapes) {
      for (const radius of [1.5, 4]) {
        expect(Math.abs(caught(read, sourceOf(shape), radius) - 1), shape.kind).toBeLessThan(0.002);
      }
    }
    for (const shape of flatShapes) {
      for (const beam of beams.slice(1)) {
        const source = sourceOf(shape, [0, 0, 0], [0, 1, 0], beam);
        expect(Math.abs(caught(read, source, 4) - 1), `${shape.kind} ${beam.kind}`).toBeLessThan(0.005);
      }
    }
  };
  test("holds", () => law(directPerLumenSecond));
  test("breaks for a lamp that gives one per cent more", () =>
    mustBreak(() => law((s, at, f, r) => 1.01 * directPerLumenSecond(s, at, f, r))));
  test("breaks for a point source with the intensity on the axis everywhere", () =>
    mustBreak(() =>
      law((s, at) => s.area / (Math.PI * s.area * (at[0] * at[0] + at[1] * at[1] + at[2] * at[2]))),
    ));
});

describe("a dome reads the mean of two domes turned away from each other, twice the same for all ways of turning", () => {
  // (1 + cos) / 2 + (1 - cos) / 2 = 1: the two together give the scalar illuminance, which no turning changes.
  const law = (read: Reading): void => {
    fc.assert(
      fc.property(anyShape, anyDirection, anyDirection, anyDirection, (shape, way, a, b) => {
        const source = sourceOf(shape);
        const at = along(way, 1.4);
        const both = (n: Vec3): number => read(source, at, n, "dome") + read(source, at, minus(n), "dome");
        expect(Math.abs(both(a) - both(b))).toBeLessThanOrEqual(1e-10 * both(a) + 1e-15);
      }),
    );
  };
  test("holds", () => law(directPerLumenSecond));
  test("breaks for a disc in place of the dome", () =>
    mustBreak(() => law((s, at, f) => directPerLumenSecond(s, at, f, "disc"))));
});

describe("two discs back to back: their difference is one component of a vector", () => {
  // The net flux through a surface is linear in its normal, wherever the horizon cuts the source.
  const law = (read: Reading): void => {
    fc.assert(
      fc.property(anyShape, anyDirection, anyDirection, (shape, way, n) => {
        const source = sourceOf(shape);
        const at = along(way, 0.9);
        const net = (m: Vec3): number => read(source, at, m, "disc") - read(source, at, minus(m), "disc");
        const sum = n[0] * net([1, 0, 0]) + n[1] * net([0, 1, 0]) + n[2] * net([0, 0, 1]);
        expect(Math.abs(net(n) - sum)).toBeLessThanOrEqual(1e-10);
      }),
    );
  };
  test("holds", () => law(directPerLumenSecond));
  test("breaks without the horizon", () =>
    mustBreak(() =>
      law((s, at, f) =>
        Math.abs(
          directPerLumenSecond(s, at, f, "disc") - 0.5 * directPerLumenSecond(s, at, minus(f), "disc"),
        ),
      ),
    ));
});
