import { expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { prepareSource } from "../../../src/transport/direct.js";
import { occludersOf } from "../../../src/transport/hiding/occluder.js";
import { isClearNear, seenShare, shadedSource } from "../../../src/transport/hiding/shaded.js";
import { occludersFor } from "../../../src/transport/outside.js";
import { livedInRoom } from "../../helpers/lived-in-room.js";

test("where it is sure that nothing hides a light, nothing hides any part of it near there", () => {
  const scene = livedInRoom();
  let seed = 11;
  const next = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  let sure = 0;
  let asked = 0;
  for (const source of scene.sources) {
    const prepared = prepareSource(source);
    const shaded = shadedSource(
      prepared,
      occludersFor(occludersOf(scene), scene.room, shadedSource(prepared, [])),
    );
    for (let i = 0; i < 400; i++) {
      const at: Vec3 = [4 * next() - 2, 4 * next() - 2, 0.1 + 2 * next()];
      const room = 0.3 * next();
      asked++;
      if (!isClearNear(shaded, at, room, -1)) continue;
      sure++;
      for (let k = 0; k < 12; k++) {
        const way: Vec3 = [next() - 0.5, next() - 0.5, next() - 0.5];
        const size = Math.hypot(...way);
        const near: Vec3 = [
          at[0] + (room * way[0]) / size,
          at[1] + (room * way[1]) / size,
          at[2] + (room * way[2]) / size,
        ];
        expect(seenShare(shaded, near, [0, 0, 1], true)).toBe(1);
      }
    }
  }
  // It is sure of enough to be of use, and not of everything.
  expect(sure).toBeGreaterThan(asked / 10);
  expect(sure).toBeLessThan(asked);
});
