import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { beamReading } from "../../src/physics/beam-reading.js";
import { luminancePerEnergy } from "../../src/physics/luminous-energy.js";
import { sourceBeam, sourceShape } from "../../src/scene/lamp/optics.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";
import { randomDirection, randomFrom } from "../helpers/random.js";
import { sampledReading } from "../helpers/sampler.js";
import { beams, shapes, sourceOf } from "../helpers/sources.js";

describe("direct light against random points of the source (within 4 standard errors)", () => {
  for (const shape of shapes) {
    for (const receptor of ["disc", "dome"] as const) {
      test(`${shape.kind}, ${receptor}`, () => {
        const random = randomFrom(7);
        for (let turn = 0; turn < 40; turn++) {
          const axis = randomDirection(random);
          const source = sourceOf(shape, [0.2, -0.1, 1.5], axis);
          const way = randomDirection(random);
          const away = 0.6 + 2 * random();
          const at: Vec3 = [0.2 + away * way[0], -0.1 + away * way[1], 1.5 + away * way[2]];
          const facing = randomDirection(random);
          const sampled = sampledReading(source, at, facing, receptor, 4000, random);
          const found = directPerLumenSecond(source, at, facing, receptor);
          expect(Math.abs(found - sampled.value)).toBeLessThanOrEqual(4 * sampled.error + 1e-12);
        }
      });
    }
  }

  for (const shape of shapes.slice(0, 2)) {
    for (const beam of beams.slice(1)) {
      test(`${shape.kind} with a beam, ${beam.kind}`, () => {
        const random = randomFrom(11);
        for (let turn = 0; turn < 40; turn++) {
          const source = sourceOf(shape, [0, 0, 0], [0, 1, 0], beam);
          const away = 0.8 + 2 * random();
          const at: Vec3 = [away * (random() - 0.5), away, away * (random() - 0.5)];
          const facing = randomDirection(random);
          const receptor = turn % 2 === 0 ? "disc" : "dome";
          const sampled = sampledReading(source, at, facing, receptor, 4000, random);
          const found = directPerLumenSecond(source, at, facing, receptor);
          const axial = (luminancePerEnergy(sourceShape(source), sourceBeam(source)) ?? 0) * source.area;
          expect(Math.abs(found - sampled.value)).toBeLessThanOrEqual(
            4 * sampled.error + (0.002 * axial) / (away * away),
          );
        }
      });
    }
  }
});

describe("the rule for beams", () => {
  // The finer rule is that of physics, over the area with 40 points to a side; its own error for grids is 0.02 %.
  test("is off by no more than it says: 0.001 % for a power of the cosine, and nothing that is seen for a grid", () => {
    const random = randomFrom(3);
    for (const shape of shapes.slice(0, 2)) {
      for (const beam of beams.slice(1)) {
        const source = sourceOf(shape, [0, 0, 0], [0, 1, 0], beam);
        for (let turn = 0; turn < 60; turn++) {
          const away = 0.5 + 3 * random();
          const at: Vec3 = [away * 1.2 * (random() - 0.5), away, away * 1.2 * (random() - 0.5)];
          const facing: Vec3 = [0, -1, 0];
          const optics = sourceShape(source);
          if (optics.kind !== "disc" && optics.kind !== "polygon") throw new Error("flat shapes only");
          const fine = beamReading(optics, sourceBeam(source), at, facing, "disc", 40).value;
          const luminance = luminancePerEnergy(optics, sourceBeam(source)) ?? 0;
          const found = directPerLumenSecond(source, at, facing, "disc");
          const axis = (luminance * source.area) / (away * away);
          const allowed = beam.kind === "grid" ? 0.0003 * axis : 0.00001 * luminance * fine;
          expect(Math.abs(found - luminance * fine)).toBeLessThanOrEqual(allowed);
        }
      }
    }
  });
});

describe("where there is no light", () => {
  test("flat sources give none behind them", () => {
    for (const shape of shapes.slice(0, 2)) {
      const source = sourceOf(shape);
      expect(directPerLumenSecond(source, [0.1, -1, 0.2], [0, 1, 0], "disc")).toBe(0);
      expect(directPerLumenSecond(source, [0.1, -1, 0.2], [0, 1, 0], "dome")).toBe(0);
    }
  });

  test("a disc receptor that looks away gets none, and a dome on its back a little from a large source only", () => {
    for (const shape of shapes) {
      const source = sourceOf(shape);
      expect(directPerLumenSecond(source, [0, 2, 0], [0, 1, 0], "disc")).toBe(0);
      const back = directPerLumenSecond(source, [0, 2, 0], [0, 1, 0], "dome");
      const front = directPerLumenSecond(source, [0, 2, 0], [0, -1, 0], "dome");
      expect(back / front).toBeGreaterThan(0);
      expect(back / front).toBeLessThan(0.02);
    }
  });

  test("a receptor inside a bulb gets none, and no number is lost", () => {
    for (const shape of shapes.slice(2)) {
      const source = sourceOf(shape);
      for (const receptor of ["disc", "dome"] as const) {
        expect(directPerLumenSecond(source, [0, 0, 0], [0, 1, 0], receptor)).toBe(0);
      }
    }
  });
});
