import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import type { Beam } from "../../src/physics/beam.js";
import { beamOpening } from "../../src/physics/beam-opening.js";
import { discReading, domeReading } from "../../src/physics/illuminance.js";
import { emptyVector } from "../../src/physics/light-vector.js";
import { openingReading } from "../../src/physics/opening-reading.js";
import type { DiscSource, PolygonSource } from "../../src/physics/source-shape.js";
import { sourceShape } from "../../src/scene/lamp/optics.js";
import type { Source } from "../../src/scene/types.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";
import { randomDirection, randomFrom } from "../helpers/random.js";
import { beamSpread } from "../helpers/sampler.js";
import { sourceOf } from "../helpers/sources.js";

const degrees = Math.PI / 180;

/** A lamp at the origin that shines along +y behind a grid of a full angle in degrees. */
function lamp(shape: Source["shape"], angle: number): Source {
  return sourceOf(shape, [0, 0, 0], [0, 1, 0], { kind: "grid", cutoff: angle * degrees });
}

function flat(source: Source): DiscSource | PolygonSource {
  const shape = sourceShape(source);
  if (shape.kind !== "disc" && shape.kind !== "polygon") throw new Error("flat shapes only");
  return shape;
}

const gridded = (source: Source, cutoff: number) => beamOpening(flat(source), { kind: "grid", cutoff });

/** The middles of equal cells over the opening, as far as the cone reaches: written from the definitions in the guide. */
function bruteForce(source: Source, at: Vec3, facing: Vec3, dome: boolean, steps = 800): number {
  const { shape, beam, across, along } = source;
  if (beam.kind !== "grid" || (shape.kind !== "disc" && shape.kind !== "rectangle"))
    throw new Error("a grid");
  const halfWidth = shape.kind === "disc" ? shape.radius : shape.width / 2;
  const halfHeight = shape.kind === "disc" ? shape.radius : shape.height / 2;
  const reach = at[1] * Math.tan(beam.cutoff / 2);
  const x0 = at[0] * across[0] + at[1] * across[1] + at[2] * across[2];
  const y0 = at[0] * along[0] + at[1] * along[1] + at[2] * along[2];
  const left = Math.max(-halfWidth, x0 - reach);
  const dx = (Math.min(halfWidth, x0 + reach) - left) / steps;
  const low = Math.max(-halfHeight, y0 - reach);
  const dy = (Math.min(halfHeight, y0 + reach) - low) / steps;
  if (!(dx > 0) || !(dy > 0)) return 0;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const x = left + (i + 0.5) * dx;
    for (let j = 0; j < steps; j++) {
      const y = low + (j + 0.5) * dy;
      if (shape.kind === "disc" && x * x + y * y > shape.radius * shape.radius) continue;
      const ray: Vec3 = [
        x * across[0] + y * along[0] - at[0],
        x * across[1] + y * along[1] - at[1],
        x * across[2] + y * along[2] - at[2],
      ];
      const d = Math.hypot(...ray);
      const off = Math.hypot(ray[0], ray[2]) / at[1];
      const luminance = Math.max(0, 1 - off / Math.tan(beam.cutoff / 2));
      const facingCosine = (ray[0] * facing[0] + ray[1] * facing[1] + ray[2] * facing[2]) / d;
      const response = dome ? (1 + facingCosine) / 2 : Math.max(0, facingCosine);
      sum += (luminance * response * (at[1] / d)) / (d * d);
    }
  }
  return sum * dx * dy;
}

const strip: Source["shape"] = { kind: "rectangle", width: 0.3, height: 1.4 };

describe("light through a grid against half a million cells and more of the lit part", () => {
  test("a strip behind a narrow grid, from 0.3 to 8 m: within 0.01 %", () => {
    for (const away of [0.3, 1, 3, 8]) {
      const source = lamp(strip, 10);
      const found = openingReading(gridded(source, 10 * degrees), 0, away, 0, 0, -1, 0, false);
      expect(found / bruteForce(source, [0, away, 0], [0, -1, 0], false)).toBeCloseTo(1, 4);
    }
  });

  test("the same through the lamp's reading, on the axis and beside it", () => {
    for (const [x, away] of [
      [0, 0.3],
      [0, 1],
      [0.15, 1],
      [0.2, 2],
    ] as const) {
      const source = lamp(strip, 10);
      const energy = source.area * beamSpread(source);
      const expected = bruteForce(source, [x, away, 0.1], [0, -1, 0], false) / energy;
      expect(directPerLumenSecond(source, [x, away, 0.1], [0, -1, 0], "disc") / expected).toBeCloseTo(1, 4);
    }
  });

  test("discs and rectangles, any grid, any way the receptor looks: within 0.003 % of the reading on the axis", () => {
    const random = randomFrom(17);
    for (let turn = 0; turn < 24; turn++) {
      const shape: Source["shape"] =
        turn % 2 === 0
          ? { kind: "disc", radius: 0.05 + 0.95 * random() }
          : { kind: "rectangle", width: 0.1 + 1.9 * random(), height: 0.1 + 1.9 * random() };
      const angle = 2 + 168 * random();
      const source = lamp(shape, angle);
      const opening = gridded(source, angle * degrees);
      const away = 0.3 + 4 * random() * random();
      const wide = away * Math.tan((angle / 2) * degrees) + 0.5;
      const at: Vec3 = [wide * (random() - 0.5), away, wide * (random() - 0.5)];
      const facing = turn % 3 === 0 ? ([0, -1, 0] as const) : randomDirection(random);
      const dome = turn % 4 < 2;
      const found = openingReading(opening, ...at, ...facing, dome);
      const axis = openingReading(opening, 0, away, 0, 0, -1, 0, false);
      // A circle's rim on square cells, and the receptor's horizon, leave the sum of cells its own error.
      expect(Math.abs(found - bruteForce(source, at, facing, dome))).toBeLessThan(3e-5 * axis);
    }
  });

  test("an opening wider than the cone: the closed form of a round cone, at every distance and place", () => {
    const c = 15 * degrees;
    const t = Math.tan(c);
    // 2 pi times the sum over the tangent x of (1 - x / t) x / (1 + x^2)^2.
    const expected = 2 * Math.PI * ((t * t) / (2 + 2 * t * t) - (c - t / (1 + t * t)) / (2 * t));
    for (const shape of [
      { kind: "disc", radius: 1 },
      { kind: "rectangle", width: 2, height: 1.8 },
    ] as const) {
      const opening = gridded(lamp(shape, 30), 2 * c);
      for (const [x, away] of [
        [0, 0.3],
        [0, 2],
        [0.3, 1],
        [0, 1e-7],
      ] as const) {
        expect(openingReading(opening, x, away, 0, 0, -1, 0, false) / expected).toBeCloseTo(1, 10);
      }
    }
  });

  test("none outside the cone, behind the opening and in its plane", () => {
    for (const shape of [strip, { kind: "disc", radius: 0.4 }] as const) {
      const opening = gridded(lamp(shape, 20), 20 * degrees);
      for (const dome of [false, true]) {
        expect(openingReading(opening, 1.2, 1, 0, 0, -1, 0, dome)).toBe(0);
        expect(openingReading(opening, 0, -1, 0, 0, 1, 0, dome)).toBe(0);
        expect(openingReading(opening, 0.1, 0, 0.1, 0, -1, 0, dome)).toBe(0);
      }
    }
  });
});

/**
 * The same for a power n of the cosine: 80 x 80 cells, in each a Gauss rule of three points to a side (nodes
 * sqrt(3/5), weights 5/9 and 8/9: Abramowitz and Stegun, table 25.4), over the disc in polar coordinates.
 */
function cellsOfPower(shape: Source["shape"], n: number, at: Vec3, facing: Vec3, dome: boolean): number {
  const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)].map((x) => (x + 1) / 2);
  const weights = [5 / 18, 8 / 18, 5 / 18];
  const cells = 80;
  let sum = 0;
  const add = (x: number, z: number, area: number): void => {
    const [dx, dy, dz] = [x - at[0], -at[1], z - at[2]];
    const d = Math.hypot(dx, dy, dz);
    const cosine = at[1] / d;
    const towards = (dx * facing[0] + dy * facing[1] + dz * facing[2]) / d;
    sum += (area * cosine ** n * (dome ? (1 + towards) / 2 : towards)) / (d * d);
  };
  for (let i = 0; i < cells * 3; i++) {
    for (let j = 0; j < cells * 3; j++) {
      const u = (Math.floor(i / 3) + (nodes[i % 3] as number)) / cells;
      const v = (Math.floor(j / 3) + (nodes[j % 3] as number)) / cells;
      const w = ((weights[i % 3] as number) * (weights[j % 3] as number)) / (cells * cells);
      if (shape.kind === "disc") {
        const turn = 2 * Math.PI * v;
        const r = shape.radius * u;
        add(r * Math.cos(turn), r * Math.sin(turn), w * 2 * Math.PI * r * shape.radius);
      } else if (shape.kind === "rectangle") {
        add((u - 0.5) * shape.width, (v - 0.5) * shape.height, w * shape.width * shape.height);
      }
    }
  }
  return sum;
}

describe("a power of the cosine", () => {
  // Any tilt that keeps the whole opening above the receptor's horizon; the cells know no horizon.
  test("near and far, on the axis and off it: within 0.001 % of the reading on the axis by sums over cells", () => {
    const random = randomFrom(23);
    for (const n of [0.1, 0.7, 1, 1.5, 2, 4, 10, 40, 200]) {
      for (let turn = 0; turn < 6; turn++) {
        const shape: Source["shape"] =
          turn % 2 === 0
            ? { kind: "disc", radius: 0.1 + 0.9 * random() }
            : { kind: "rectangle", width: 0.2 + 1.8 * random(), height: 0.2 + 1.8 * random() };
        const source = sourceOf(shape, [0, 0, 0], [0, 1, 0], { kind: "cosine-power", exponent: n });
        const away = 0.3 + 4 * random() * random();
        const at: Vec3 = [away * (random() - 0.5), away, away * (random() - 0.5)];
        const facing: Vec3 = turn < 2 ? [0.06, -Math.sqrt(1 - 0.0036), 0] : [0, -1, 0];
        const dome = turn >= 4;
        const opening = beamOpening(flat(source), { kind: "cosine-power", n });
        const found = openingReading(opening, ...at, ...facing, dome);
        const axis = openingReading(opening, 0, away, 0, 0, -1, 0, false);
        const cells = cellsOfPower(shape, n, at, facing, dome);
        expect(Math.abs(found - cells)).toBeLessThan(1e-5 * axis);
      }
    }
  });

  test("the first power is Lambert's law, for every way the receptor looks", () => {
    const random = randomFrom(29);
    for (const shape of [strip, { kind: "disc", radius: 0.7 }] as const) {
      const source = sourceOf(shape, [0, 0, 0], [0, 1, 0]);
      for (const beam of [{ kind: "lambert" }, { kind: "cosine-power", n: 1 }] as const satisfies Beam[]) {
        const opening = beamOpening(flat(source), beam);
        for (let turn = 0; turn < 40; turn++) {
          const away = 0.1 + 2 * random();
          const at: Vec3 = [2 * away * (random() - 0.5), away, 2 * away * (random() - 0.5)];
          const facing = randomDirection(random);
          const axis = discReading(flat(source), 0, away, 0, 0, -1, 0, emptyVector());
          for (const dome of [false, true]) {
            const exact = (dome ? domeReading : discReading)(flat(source), ...at, ...facing, emptyVector());
            expect(Math.abs(openingReading(opening, ...at, ...facing, dome) - exact)).toBeLessThan(
              1e-8 * axis,
            );
          }
        }
      }
    }
  });

  // A flat receptor on the axis that sees the disc under the half angle a: 2 pi times the integral of sin cos^n, that is
  // 2 pi (1 - cos^(n + 1) a) / (n + 1).
  test("on the axis of a disc: the closed form, from a hand's breadth to a long way off", () => {
    for (const n of [0.5, 2, 4, 12.5, 40, 200]) {
      for (const away of [0.05, 0.3, 1, 2, 8]) {
        const source = sourceOf({ kind: "disc", radius: 1 }, [0, 0, 0], [0, 1, 0]);
        const opening = beamOpening(flat(source), { kind: "cosine-power", n });
        const cosine = away / Math.sqrt(1 + away * away);
        const expected = (2 * Math.PI * (1 - cosine ** (n + 1))) / (n + 1);
        expect(openingReading(opening, 0, away, 0, 0, -1, 0, false) / expected).toBeCloseTo(1, 9);
      }
    }
  });

  // What a plane through the receptor parts, it parts without loss.
  test("the two sides of a plane through the receptor add up to the whole", () => {
    const random = randomFrom(31);
    for (const beam of [
      { kind: "cosine-power", n: 4 },
      { kind: "grid", cutoff: 60 * degrees },
    ] as const satisfies Beam[]) {
      for (const shape of [strip, { kind: "disc", radius: 0.7 }] as const) {
        const opening = beamOpening(flat(sourceOf(shape, [0, 0, 0], [0, 1, 0])), beam);
        for (let turn = 0; turn < 20; turn++) {
          const at: Vec3 = [random() - 0.5, 0.4 + random(), random() - 0.5];
          const plane: Vec3 = [random() - 0.5, 0.6 * (random() - 0.5), random() - 0.5];
          const other: Vec3 = [-plane[0], -plane[1], -plane[2]];
          const whole = openingReading(opening, ...at, 0, -1, 0, false);
          const one = openingReading(opening, ...at, 0, -1, 0, false, plane);
          const two = openingReading(opening, ...at, 0, -1, 0, false, other);
          expect(Math.abs(one + two - whole)).toBeLessThan(2e-5 * whole + 1e-12);
        }
      }
    }
  });
});
