import { describe, expect, test } from "vitest";
import { seenLight } from "../../../src/scene/lit/seen.js";
import { sceneOf, sourceOf } from "../../helpers/worked.js";

const hall = "room { size: 60 x 60 x 3 m\n ceiling { reflectance: 80 % } }";

describe("a head that shines into a surface", () => {
  test("a small flat head 50 cm under a wide ceiling makes a patch of 3 pi h2 above it", () => {
    // E of a small Lambertian disc: E ~ h^4 / (h2 + r2)^2; (sum E)^2 / (sum E^2) = 3 pi h2.
    const scene = sceneOf(`${hall}
light key { shape: disc(1 cm), output: 100 lm s, position: (1 m, -1 m, 2.5 m), aim: (1 m, -1 m, 3 m), into: ceiling }`);
    const { patch } = sourceOf(scene, "key");
    expect(patch?.surface).toBe("ceiling");
    expect(((patch?.width ?? 0) * (patch?.height ?? 0)) / (3 * Math.PI * 0.25)).toBeCloseTo(1, 2);
    expect(patch?.width).toBeCloseTo(patch?.height ?? 0, 3);
    expect(patch?.centre).toEqual([expect.closeTo(1, 2), expect.closeTo(-1, 2), expect.closeTo(3, 9)]);
    expect(patch?.normal).toEqual([0, 0, -1]);
    expect(patch?.share).toBeCloseTo(0.8, 2);
  });

  test("it aims at the middle of its surface and keeps the face as the zero of its tape", () => {
    const scene = sceneOf(`${hall}
set { card white { size: 1 x 1 m, at: (2 m, 0 m, 2 m), faces: face } }
subject { height: 1.7 m }
light key { shape: disc(18 cm), output: 100 lm s, distance: 2 m, bearing: left(60 deg), height: 1.6 m, into: white }`);
    const key = sourceOf(scene, "key");
    const face = scene.landmarks.get("face")?.at ?? [0, 0, 0];
    expect(Math.hypot(...key.centre.map((x, i) => x - (face[i] ?? 0)))).toBeCloseTo(2, 9);
    expect(key.aim).toEqual([2, 0, 2]);
    expect(scene.landmarks.get("key")?.at).toEqual(key.patch?.centre);
  });

  test("no light is added: the head is the only source", () => {
    const scene = sceneOf(`${hall}
light key { shape: disc(18 cm), output: 100 lm s, position: (0 m, 0 m, 2 m), into: wall_left }`);
    expect(scene.sources).toHaveLength(1);
    const key = sourceOf(scene, "key");
    expect(key.energy).toBe(100);
    expect(seenLight(key).centre[0]).toBeCloseTo(-30, 9);
  });
});
