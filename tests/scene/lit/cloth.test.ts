import { describe, expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import { sceneOf, sourceOf } from "../../helpers/worked.js";

/** A small bulb 4 m behind a cloth of 1.2 x 1.6 m that stands 1 m in front of a face. */
const behind = (light: string, cloth = "loses: 1.5 stop"): string => `
set { scrim silk { size: 1.2 x 1.6 m, at: (0 m, -1.5 m, 1.6 m), faces: (0 m, 0 m, 1.6 m), ${cloth} } }
subject { height: 1.7 m }
light key { ${light}, through: silk }`;
const bulb = "shape: sphere(6 cm), output: 900 lm s, position: (0 m, -5.5 m, 1.6 m)";

describe("a head behind a cloth", () => {
  test("far away it lights the cloth evenly: the cloth is the light, with what comes through", () => {
    const scene = sceneOf(behind(bulb));
    const key = sourceOf(scene, "key");
    expect(key.shape.kind).toBe("rectangle");
    if (key.shape.kind !== "rectangle") return;
    // Inverse square and cosine over 1.2 x 1.6 m from 4 m: darker by less than 8 % at the corners.
    expect(key.shape.width).toBeGreaterThan(1.195);
    expect(key.shape.width).toBeLessThanOrEqual(1.2);
    expect(key.shape.height / key.shape.width).toBeCloseTo(1.6 / 1.2, 6);
    // Solid angle of a rectangle from a point on its axis, 4 asin(...) (handbooks of radiometry), over 4 pi.
    const [a, b, d] = [0.6, 0.8, 4];
    const omega = 4 * Math.asin((a * b) / Math.sqrt((a * a + d * d) * (b * b + d * d)));
    const share = omega / (4 * Math.PI);
    expect(key.energy / (900 * share * 2 ** -1.5)).toBeCloseTo(1, 3);
    expect(key.axis).toEqual([expect.closeTo(0, 9), expect.closeTo(1, 9), expect.closeTo(0, 9)]);
    expect(key.cloth?.caught).toBeCloseTo(share, 5);
  });

  test("near the cloth it lights a part only, in the middle of its light", () => {
    const near = sourceOf(
      sceneOf(behind("shape: sphere(6 cm), output: 900 lm s, position: (30 cm, -1.7 m, 1.6 m)")),
      "key",
    );
    if (near.shape.kind !== "rectangle") throw new Error("no rectangle");
    expect(near.shape.width * near.shape.height).toBeLessThan(0.5 * 1.2 * 1.6);
    expect(near.centre[0]).toBeGreaterThan(0.1);
    expect(near.centre[0]).toBeLessThan(0.35);
  });

  test("of a point lamp at a height h before a wide cloth the patch has the area 8 pi h2", () => {
    // E = I h / r^3: (sum E)^2 / (sum E^2) = (2 pi I)^2 / (pi I^2 / (2 h^2)).
    const scene = sceneOf(`
set { scrim sky { size: 40 x 40 m, at: (0 m, 0 m, 30 m), faces: down } }
light key { shape: sphere(1 cm), output: 100 lm s, position: (0 m, 0 m, 30.5 m), through: sky }`);
    const { shape, energy } = sourceOf(scene, "key");
    if (shape.kind !== "rectangle") throw new Error("no rectangle");
    expect((shape.width * shape.height) / (8 * Math.PI * 0.25)).toBeCloseTo(1, 1);
    expect(energy).toBeGreaterThan(24);
    expect(energy).toBeLessThan(25);
  });

  test("the bare head stays, under a name of its own and with all its light", () => {
    const scene = sceneOf(behind(bulb));
    expect(scene.sources.map(({ name }) => name)).toEqual(["key", "key spill"]);
    const spill = sourceOf(scene, "key spill");
    expect(spill.energy).toBe(900);
    expect(spill.spillOf).toBe("key");
    expect(spill.role).toBeNull();
    expect(scene.key).toBe(0);
  });

  test("meters that look at the key look at the cloth", () => {
    const scene = sceneOf(behind("shape: sphere(6 cm), output: 9 lm s, position: (2 m, -3 m, 3 m)"));
    const key = sourceOf(scene, "key");
    const face = scene.stations.find(({ name, receptor }) => name === "face" && receptor === "disc");
    const to = key.centre.map((x, i) => x - (face?.at[i] ?? 0));
    const size = Math.hypot(...to);
    expect(face?.facing).toEqual(to.map((x) => expect.closeTo(x / size, 9)));
    expect(scene.landmarks.get("key")?.at).toEqual(key.centre);
  });

  test("a cloth gives back and lets through no more than it gets", () => {
    const silk = (cloth: string) => sceneOf(behind(bulb, cloth)).polygons.find(({ name }) => name === "silk");
    expect(silk("loses: 1 stop")?.frontReflectance).toBeCloseTo(0.4, 9);
    expect(silk("loses: 0.3 stop, reflectance: 60 %")?.frontReflectance).toBeCloseTo(1 - 2 ** -0.3, 9);
    expect(silk("loses: 3 stop, reflectance: 60 %")?.frontReflectance).toBe(0.6);
  });

  test("a head that looks away from its cloth is refused", () => {
    const text = `halfshade 1\nrecipe "test"\n${behind("shape: disc(10 cm), output: 9 lm s, position: (0 m, -5 m, 1.6 m), aim: (0 m, -9 m, 1 m)")}`;
    const found = run({ name: "a.light", text }).diagnostics.map(({ code }) => code);
    expect(found).toContain("light.misses");
  });
});
