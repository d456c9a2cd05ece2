import { expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { apart, apartWork, type Convex } from "../../../src/math/convex.js";
import { prepareSource } from "../../../src/transport/direct.js";
import { hullOf, leastWidth, sourceHull } from "../../../src/transport/hiding/hulls.js";
import { occludersOf } from "../../../src/transport/hiding/occluder.js";
import { seenShare, shadedSource } from "../../../src/transport/hiding/shaded.js";
import { occludersFor } from "../../../src/transport/outside.js";
import { livedInRoom } from "../../helpers/lived-in-room.js";

test("what is clear of all ways from some places to a light hides nothing of it from them", () => {
  const scene = livedInRoom();
  const work = apartWork();
  let seed = 11;
  const next = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  let clear = 0;
  let asked = 0;
  for (const source of scene.sources) {
    const prepared = prepareSource(source);
    const occluders = occludersFor(occludersOf(scene), scene.room, shadedSource(prepared, []));
    const hulls = occluders.map(hullOf);
    const light = sourceHull(prepared.shape);
    const shaded = shadedSource(prepared, occluders);
    for (let i = 0; i < 300; i++) {
      const at: Vec3 = [4 * next() - 2, 4 * next() - 2, 0.1 + 2 * next()];
      const room = 0.3 * next();
      const places: Convex = {
        points: Float64Array.from(at),
        axes: Float64Array.of(room, 0, 0, 0, room, 0, 0, 0, room),
        middle: Float64Array.from(at),
      };
      asked++;
      if (hulls.some((hull) => apart(places, light, hull, 0, work) === 0)) continue;
      clear++;
      for (let k = 0; k < 12; k++) {
        const way: Vec3 = [next() - 0.5, next() - 0.5, next() - 0.5];
        const size = Math.hypot(...way);
        const near: Vec3 = [
          at[0] + (room * way[0]) / size,
          at[1] + (room * way[1]) / size,
          at[2] + (room * way[2]) / size,
        ];
        // A round thing's polygon has its area, and so corners a little beyond it.
        expect(seenShare(shaded, near, [0, 0, 1], true)).toBeGreaterThan(0.999);
      }
    }
  }
  // It is found of enough to be of use, and not of everything.
  expect(clear).toBeGreaterThan(asked / 8);
  expect(clear).toBeLessThan(asked);
});

test("a light is as wide as its narrower side makes it, less by its slant", () => {
  const normal: Vec3 = [0, 0, 1];
  const disc = { kind: "disc", centre: [0, 0, 0], normal, radius: 0.1 } as const;
  expect(leastWidth(disc, 0, 0, 2)).toBeCloseTo(0.1, 12);
  expect(leastWidth(disc, 2, 0, 2)).toBeCloseTo((0.2 * Math.SQRT1_2) / (2 * Math.SQRT2), 12);
  expect(leastWidth(disc, 0, 0, -2)).toBe(0);
  const corners: readonly Vec3[] = [
    [-0.15, -0.6, 0],
    [0.15, -0.6, 0],
    [0.15, 0.6, 0],
    [-0.15, 0.6, 0],
  ];
  expect(leastWidth({ kind: "polygon", corners, normal }, 0, 0, 3)).toBeCloseTo(0.1, 12);
  expect(leastWidth({ kind: "sphere", centre: [0, 0, 0], radius: 0.05 }, 0, 4, 3)).toBeCloseTo(0.02, 12);
});
