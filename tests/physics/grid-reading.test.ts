import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { gridOpening, gridReading } from "../../src/physics/grid-reading.js";
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
      const found = gridReading(gridOpening(flat(source), 10 * degrees), 0, away, 0, 0, -1, 0, false);
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
      const opening = gridOpening(flat(source), angle * degrees);
      const away = 0.3 + 4 * random() * random();
      const wide = away * Math.tan((angle / 2) * degrees) + 0.5;
      const at: Vec3 = [wide * (random() - 0.5), away, wide * (random() - 0.5)];
      const facing = turn % 3 === 0 ? ([0, -1, 0] as const) : randomDirection(random);
      const dome = turn % 4 < 2;
      const found = gridReading(opening, ...at, ...facing, dome);
      const axis = gridReading(opening, 0, away, 0, 0, -1, 0, false);
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
      const opening = gridOpening(flat(lamp(shape, 30)), 2 * c);
      for (const [x, away] of [
        [0, 0.3],
        [0, 2],
        [0.3, 1],
        [0, 1e-7],
      ] as const) {
        expect(gridReading(opening, x, away, 0, 0, -1, 0, false) / expected).toBeCloseTo(1, 10);
      }
    }
  });

  test("none outside the cone, behind the opening and in its plane", () => {
    for (const shape of [strip, { kind: "disc", radius: 0.4 }] as const) {
      const opening = gridOpening(flat(lamp(shape, 20)), 20 * degrees);
      for (const dome of [false, true]) {
        expect(gridReading(opening, 1.2, 1, 0, 0, -1, 0, dome)).toBe(0);
        expect(gridReading(opening, 0, -1, 0, 0, 1, 0, dome)).toBe(0);
        expect(gridReading(opening, 0.1, 0, 0.1, 0, -1, 0, dome)).toBe(0);
      }
    }
  });
});
