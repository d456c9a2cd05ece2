import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { lightField } from "../../src/transport/light-field.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { freeField } from "../helpers/free-field.js";
import { sceneOf, sourceOf } from "../helpers/worked.js";

const lamp =
  "light key { shape: disc(20 cm), output: 900 lm s, distance: 2.2 m, bearing: left(40 deg), height: 2.2 m }";
const room = (share: number): string => `
room {
  size: 4 x 5 x 2.8 m
  walls { reflectance: ${share} % }
  ceiling { reflectance: ${share} % }
  floor { reflectance: ${share} % }
}
subject { height: 1.7 m }
${lamp}`;

const station = (scene: Scene, name: string) => {
  const found = scene.stations.find((row) => row.name === name);
  if (found === undefined) throw new Error(`no station ${name}`);
  return found;
};

describe("the light of a scene", () => {
  test("is as the field says, for a meter asked alone too", () => {
    const scene = sceneOf(room(50));
    const light = sceneLight(scene);
    const field = lightField(scene, light);
    const i = scene.stations.findIndex(({ name }) => name === "shaded_cheek");
    const key = sourceOf(scene, "key");
    const own = light.reach(key, station(scene, "shaded_cheek"));
    expect(own.direct).toBe(field.direct[i]);
    expect(own.bounced).toBe(field.bounced?.[i]);
    // Another meter near a station shares its cells and reads the same within its error, and a tenth of that again.
    const fresh = sceneLight(scene);
    const alone = fresh.reach(key, {
      ...station(scene, "shaded_cheek"),
      at: station(scene, "shaded_cheek").at,
    });
    expect(Math.abs(alone.bounced / own.bounced - 1)).toBeLessThan(0.02);
  });

  test("is direct light with what hides it where everything is black", () => {
    const scene = sceneOf(room(0).replace("subject {", "subject { skin: 0 %, cloth: 0 %,"));
    const field = lightField(scene);
    expect(Math.max(...(field.bounced ?? []))).toBe(0);
    const free = freeField(scene);
    const at = scene.stations.findIndex(({ name }) => name === "floor");
    // The person stands on the floor's mark: it is inside the legs' shade, so no more than without.
    expect(field.direct[at]).toBeLessThanOrEqual(free.direct[at] as number);
    const face = scene.stations.findIndex(({ name }) => name === "face");
    expect(field.direct[face]).toBeCloseTo(free.direct[face] as number, 12);
  });

  test("grows with the walls' reflectance, and its error stays small beside it", () => {
    const bounced = [10, 50, 85].map((share) => {
      const scene = sceneOf(room(share));
      const reach = sceneLight(scene).reach(sourceOf(scene, "key"), station(scene, "shaded_cheek"));
      expect(reach.error).toBeLessThan(0.1 * reach.bounced);
      return reach.bounced;
    });
    expect(bounced[1]).toBeGreaterThan(2 * (bounced[0] as number));
    expect(bounced[2]).toBeGreaterThan(2 * (bounced[1] as number));
  });

  test("does not depend on power, and a moved lamp leaves the other columns as they are", () => {
    const scene = sceneOf(`${room(50)}
light fill { shape: disc(40 cm), output: 300 lm s, distance: 2 m, bearing: right(50 deg), height: 1.7 m }`);
    const light = sceneLight(scene);
    const field = lightField(scene, light);
    const [key, fill] = scene.sources as [Source, Source];
    const moved = { ...key, energy: 7, centre: [key.centre[0], key.centre[1], key.centre[2] + 0.2] as const };
    const after = lightField({ ...scene, sources: [moved, fill] }, light);
    for (let i = 0; i < field.stations; i++) {
      expect(after.direct[2 * i + 1]).toBe(field.direct[2 * i + 1]);
      expect(after.bounced?.[2 * i + 1]).toBe(field.bounced?.[2 * i + 1]);
    }
    const dim = lightField({ ...scene, sources: [{ ...key, energy: 1 }, fill] }, light);
    expect([...dim.direct]).toEqual([...field.direct]);
  });
});

test("walls hide only a lamp outside the room", () => {
  const outside = (hole: string): number => {
    const scene = sceneOf(`
room {
  size: 4 x 5 x 2.8 m
  ${hole}
}
subject { height: 1.7 m }
light key { shape: disc(30 cm), output: 900 lm s, position: (-4 m, 0 m, 1.6 m), aim: face }`);
    return sceneLight(scene).reach(sourceOf(scene, "key"), station(scene, "face")).direct;
  };
  expect(outside("ambient: 0 lx")).toBe(0);
  expect(outside("opening gap { wall: left, at: (-2 m, 0 m, 1 m), size: 1.5 x 1.5 m }")).toBeGreaterThan(0);
});

test("a cloth is opaque to its own head and the light before it", () => {
  const scene = sceneOf(`
set { scrim silk { size: 1.2 x 1.6 m, at: (0 m, -1.5 m, 1.6 m), faces: (0 m, 0 m, 1.6 m) } }
subject { height: 1.7 m }
light key { shape: sphere(6 cm), output: 900 lm s, position: (0 m, -3 m, 1.6 m), through: silk }`);
  const light = sceneLight(scene);
  const face = station(scene, "face");
  expect(light.reach(sourceOf(scene, "key spill"), face).direct).toBe(0);
  // A Lambertian rectangle: more than nothing, unhidden by the cloth it is on.
  const free = freeField(scene).direct[scene.stations.indexOf(face) * 2] as number;
  expect(light.reach(sourceOf(scene, "key"), face).direct).toBeCloseTo(free, 12);
});

describe("a meter held in a solid", () => {
  const set =
    "set { sphere boulder { diameter: 60 cm, at: offset(right: 80 cm, up: 1 m), reflectance: 30 % } }";
  const scene = sceneOf(`${room(40)}\n${set}`);
  const light = sceneLight(scene);
  const key = sourceOf(scene, "key");
  // Towards the lamp, which is ahead and to the left.
  const reachAt = (deep: number) =>
    light.reach(key, { at: [0.8, -0.3 + deep, 1], facing: [-0.6, -0.8, 0], receptor: "disc" });

  test("reads what the surface reads where it lies a little below it, straight and bounced", () => {
    const before = reachAt(-1e-5);
    for (const deep of [1e-4, 0.01, 0.049]) {
      const { direct, bounced, error } = reachAt(deep);
      expect(direct / before.direct).toBeCloseTo(1, 3);
      expect(Math.abs(bounced - before.bounced)).toBeLessThan(before.error + error);
    }
    expect(before.error).toBeLessThan(before.bounced / 20);
  });

  test("reads nothing deeper in it", () => {
    expect(reachAt(0.051)).toEqual({ direct: 0, bounced: 0, error: 0 });
    expect(light.glance(key, { at: [0.8, 0, 1], facing: [0, -1, 0], receptor: "dome" }).direct).toBe(0);
    expect(light.direct(key, { at: [0.8, 0, 1], facing: [0, -1, 0], receptor: "dome" })).toBe(0);
    expect(
      light.contributors([{ source: key, energy: 1 }], {
        at: [0.8, 0, 1],
        facing: [0, -1, 0],
        receptor: "dome",
      }),
    ).toEqual([]);
  });
});

describe("a meter that no light can reach", () => {
  const walled = sceneOf(room(40));
  const key = sourceOf(walled, "key");
  const at = (place: Vec3) => {
    const light = sceneLight(walled);
    const meter = { at: place, facing: [0, -1, 0], receptor: "dome" } as const;
    const { direct, bounced } = light.reach(key, meter);
    return { direct, bounced, alone: light.direct(key, meter) };
  };

  test("reads nothing behind the walls or under the floor", () => {
    const back = walled.room?.back ?? Number.NaN;
    expect(at([0, back + 1, 1.5])).toEqual({ direct: 0, bounced: 0, alone: 0 });
    expect(at([0, 0, -0.5])).toEqual({ direct: 0, bounced: 0, alone: 0 });
    expect(at([0, back - 0.5, 1.5]).direct).toBeGreaterThan(0);
  });
});
