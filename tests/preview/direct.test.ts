import { describe, expect, test } from "vitest";
import { emptyVector } from "../../src/physics/light-vector.js";
import { addDirect } from "../../src/preview/direct.js";
import { meterAt, type View, viewOf } from "../../src/preview/view.js";
import type { Scene } from "../../src/scene/types.js";
import { prepareSource } from "../../src/transport/direct.js";
import { occludersOf } from "../../src/transport/hiding/occluder.js";
import { shadedReading, shadedSource } from "../../src/transport/hiding/shaded.js";
import { livedIn } from "../helpers/lived-in-room.js";
import { sceneOf } from "../helpers/worked.js";

/** A person in a corner, its shadow on a flat, seen whole. */
const seen = (light: string): Scene =>
  sceneOf(
    `${livedIn(50, 80, 25)}\n${light}\ncamera { held: upright, focal_length: 45 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 2.4 m, height: 1.2 m }`,
  );

/** Every pixel asked by itself, with everything that stands about. */
function oneByOne(scene: Scene, view: View): Float64Array {
  const found = new Float64Array(view.width * view.height);
  const scratch = emptyVector();
  for (const source of scene.sources) {
    const shaded = shadedSource(prepareSource(source), occludersOf(scene));
    for (let pixel = 0; pixel < found.length; pixel++) {
      if (view.side[pixel] === -1) continue;
      const { at, facing } = meterAt(view, pixel);
      found[pixel] =
        (found[pixel] as number) + source.energy * shadedReading(shaded, at, facing, "disc", scratch);
    }
  }
  return found;
}

/** How far the picture is from what its pixels would be told by themselves, as shares of its white, and in stops. */
function compared(scene: Scene): { rms: number; worst: number; stops: number; dark: number } {
  const view = viewOf(scene, 180) as View;
  const found = new Float64Array(view.width * view.height);
  addDirect(scene, view, found);
  const expected = oneByOne(scene, view);
  const white = [...expected].sort((a, b) => a - b)[Math.floor(0.99 * expected.length)] as number;
  let squares = 0;
  let worst = 0;
  let stops = 0;
  expected.forEach((want, pixel) => {
    const got = found[pixel] as number;
    const off = Math.abs(got - want) / white;
    squares += off * off;
    worst = Math.max(worst, off);
    if (want > white / 64) stops = Math.max(stops, Math.abs(Math.log2(got / want)));
  });
  const dark = expected.filter((want) => want === 0).length / expected.length;
  return { rms: Math.sqrt(squares / expected.length), worst, stops, dark };
}

describe("direct light in a picture is what each pixel would be told by itself", () => {
  const lights = {
    "a small lamp":
      "light key { role: key, shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }",
    "a large cloth close by":
      "light key { role: key, shape: rectangle(90 x 120 cm), output: 900 lm s, distance: 1.4 m, bearing: right(50 deg), height: 1.8 m }",
    "a bare bulb":
      "light key { role: key, shape: sphere(4 cm), output: 900 lm s, distance: 2 m, bearing: left(75 deg), height: 1.9 m }",
  };
  for (const [name, light] of Object.entries(lights))
    test(name, () => {
      const { rms, worst, stops, dark } = compared(seen(light));
      expect(rms).toBeLessThan(0.001);
      expect(worst).toBeLessThan(0.02);
      expect(stops).toBeLessThan(0.1);
      expect(dark).toBeGreaterThan(0.01);
    }, 60_000);

  test("what is seen through an opening has the wall before its lamp", () => {
    const scene = sceneOf(`room {
  size: 4 x 5 x 2.8 m
  opening door { wall: back, at: (0 m, 2.5 m, 0 m), size: 1.2 x 2.1 m }
}
set { flat yard { size: 4 x 3 m, at: offset(behind: 4 m), reflectance: 60 % } }
light key { shape: disc(20 cm), output: 900 lm s, position: (-1.2 m, 0.5 m, 1.6 m), aim: (0.3 m, 2.5 m, 1 m) }
camera { held: upright, focal_length: 45 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 2.4 m, height: 1.2 m }`);
    const view = viewOf(scene, 180) as View;
    const yard = scene.polygons.findIndex(({ name }) => name === "yard");
    const direct = new Float64Array(view.width * view.height);
    addDirect(scene, view, direct);
    const there = [...direct].filter((_, pixel) => view.side[pixel] === 2 * yard + 1);
    // A part of it lies in the shade of the wall, a part in the light that comes through the door.
    expect(there.filter((light) => light === 0).length).toBeGreaterThan(0.1 * there.length);
    expect(there.filter((light) => light > 0).length).toBeGreaterThan(0.1 * there.length);
    const { rms, worst, stops } = compared(scene);
    expect(rms).toBeLessThan(0.001);
    expect(worst).toBeLessThan(0.02);
    expect(stops).toBeLessThan(0.1);
  });

  test("light that falls through slits into what is dark all round", () => {
    // The lamp stands far to the left, so that its slits fall on the wall beside the leaves.
    const leaves = [-0.95, -0.8, -0.65, -0.5, -0.35].map(
      (x, i) => `panel leaf${i} { size: 0.14 x 3 m, at: (${x} m, 0 m, 1.5 m), front: 0 %, back: 0 % }`,
    );
    const { worst, dark } = compared(
      sceneOf(`set {
  ${leaves.join("\n  ")}
  flat back { size: 4 x 3 m, at: offset(behind: 50 cm), front: 50 % }
}
light key { shape: disc(1 cm), output: 900 lm s, position: (-1.5 m, -1 m, 1.3 m), aim: (0 m, 50 cm, 1.3 m) }
camera { held: upright, focal_length: 60 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3.5 m, height: 1.3 m, focus: (0 m, 50 cm, 1.3 m) }`),
    );
    expect(worst).toBeLessThan(0.02);
    expect(dark).toBeGreaterThan(0.1);
  }, 60_000);
});
