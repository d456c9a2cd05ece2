import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { distance } from "../../src/math/vector.js";
import { MOST_SUNK, solidsOf, sunkIn, surfaced } from "../../src/scene/sunk.js";
import { sceneOf } from "../helpers/worked.js";

const lamp =
  "light key { shape: disc(20 cm), output: 900 lm s, distance: 2 m, bearing: left(0 deg), height: 2 m }";
const scene = sceneOf(`
set {
  sphere ball { diameter: 60 cm, at: (2 m, 0 m, 1 m) }
  capsule post { diameter: 20 cm, height: 1 m, at: (-2 m, 0 m, 0 m) }
  box crate { size: 60 x 40 x 80 cm, at: (0 m, 2 m, 0 m) }
  flat board { size: 2 x 2 m, at: (2 m, 0.28 m, 0 m) }
}
subject { height: 1.7 m }
${lamp}`);
const solids = solidsOf(scene);
const up: Vec3 = [0, 0, 1];

describe("how deep a place lies in a solid", () => {
  test("a ball, a post between and beyond its ends, a box by its nearest side", () => {
    expect(sunkIn(solids, [2.2, 0, 1])).toMatchObject({ name: "ball", of: "piece" });
    expect(sunkIn(solids, [2.2, 0, 1])?.depth).toBeCloseTo(0.1, 12);
    expect(sunkIn(solids, [-2, 0.03, 0.5])?.depth).toBeCloseTo(0.07, 12);
    // The ends are half balls round (-2, 0, 0.1) and (-2, 0, 0.9).
    expect(sunkIn(solids, [-2, 0, 0.99])?.depth).toBeCloseTo(0.01, 12);
    expect(sunkIn(solids, [0.1, 2.05, 0.7])?.depth).toBeCloseTo(0.1, 12);
    expect(sunkIn(solids, [0.1, 2.05, 0.7])?.surface).toEqual([0.1, 2.05, 0.8]);
    expect(sunkIn(solids, [0, 2, 0.81])).toBe(null);
  });

  test("a head, whose half width is 0.045 of the stature", () => {
    const [x, y, z] = scene.subjects[0]?.head ?? [0, 0, 0];
    const sunk = sunkIn(solids, [x + 0.07, y, z]);
    expect(sunk).toMatchObject({ name: "head", of: "subject" });
    expect(sunk?.depth).toBeCloseTo(0.045 * 1.7 - 0.07, 9);
  });
});

describe("where a meter is that is held at a place", () => {
  test("there, at the surface near by, or nowhere", () => {
    expect(surfaced(solids, [2, -0.31, 1], up)).toEqual([2, -0.31, 1]);
    const near = surfaced(solids, [2, -0.3 + MOST_SUNK - 1e-6, 1], up) ?? [0, 0, 0];
    expect(distance(near, [2, -0.3, 1])).toBeLessThan(1e-9);
    expect(surfaced(solids, [2, -0.3 + MOST_SUNK + 1e-6, 1], up)).toBe(null);
    expect(surfaced(solids, [2, 0, 1], up)).toBe(null);
  });

  test("in the groove of two bodies that cut each other, clear of both", () => {
    // Where neck and head meet, 2 cm in from the neck's side.
    const neck = scene.bodies.find(({ name }) => name === "neck");
    if (neck?.kind !== "capsule") throw new Error("no neck");
    const place: Vec3 = [neck.radius - 0.005, 0, 0.863 * 1.7];
    const there = surfaced(solids, place, up);
    expect(there).not.toBe(null);
    expect(sunkIn(solids, there ?? place)?.depth ?? 0).toBeLessThan(1e-6);
  });

  test("nowhere, where a sheet lies before the surface", () => {
    // The board cuts the ball 2 cm before its back.
    expect(surfaced(solids, [2, 0.27, 1], up)).toBe(null);
    expect(surfaced(solids, [2, 0.285, 1], up)).not.toBe(null);
  });
});
