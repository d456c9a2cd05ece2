import { expect, test } from "vitest";
import type { Scene } from "../../../src/scene/types.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { mustBreak } from "../../helpers/must-break.js";
import { sceneOf } from "../../helpers/worked.js";
import { randomBlocks } from "./random-scenes.js";

/** What one lamp bounces to one meter by usual and by finer working, and how far both say they may be off together. */
interface Pair {
  readonly apart: number;
  readonly stated: number;
}

/** Pairs of a full reading, and of a glance, with the same finer working. */
interface Pairs {
  readonly reach: readonly Pair[];
  readonly glance: readonly Pair[];
}

function pairsOf(scene: Scene): Pairs {
  const [usual, fine] = [sceneLight(scene), sceneLight(scene, "fine")];
  const all = scene.stations.flatMap((station) => scene.sources.map((source) => ({ station, source })));
  const found = all.filter(({ station, source }) => fine.reach(source, station).bounced > 0);
  const by = (ask: keyof Pairs): readonly Pair[] =>
    found.map(({ station, source }) => {
      const [a, b] = [usual[ask](source, station), fine.reach(source, station)];
      return {
        apart: Math.abs(a.bounced - b.bounced),
        stated: Math.sqrt(a.error * a.error + b.error * b.error),
      };
    });
  return { reach: by("reach"), glance: by("glance") };
}

const scenes = [1, 3, 10].map((seed) => sceneOf(randomBlocks(seed)));
const known = scenes.map(pairsOf);

const outside = (pairs: readonly Pair[], scale: number): number =>
  pairs.filter(({ apart, stated }) => apart > scale * stated).length / pairs.length;

test("the stated error of bounced light covers what finer working finds, nearly always, and is not wider by far", () => {
  const pairs = known.flatMap(({ reach }) => reach);
  expect(pairs.length).toBeGreaterThan(40);
  // 2.5 standard errors leave 1.2 % of a normal spread outside.
  const law = (scale: number): void => expect(outside(pairs, scale)).toBeLessThan(0.03);
  law(1);
  mustBreak(() => law(0.2));
  // One standard error leaves about a third outside: a bound that never meets the deviations would say nothing.
  expect(outside(pairs, 0.2)).toBeGreaterThan(0.2);
});

test("so does the stated error of a glance, which follows fewer paths and knows that it knows less", () => {
  const pairs = known.flatMap(({ glance }) => glance);
  const law = (scale: number): void => expect(outside(pairs, scale)).toBeLessThan(0.03);
  law(1);
  mustBreak(() => law(2.5 / 4 / 2));
  expect(outside(pairs, 0.1)).toBeGreaterThan(0.2);
  const stated = (all: readonly Pair[]): number => all.reduce((sum, row) => sum + row.stated, 0);
  expect(stated(pairs)).toBeGreaterThan(2 * stated(known.flatMap(({ reach }) => reach)));
});

test("a station where little light comes straight is worked on until it says 0.05 stop, where that can be reached", () => {
  const widest = (scene: Scene): number => {
    const light = sceneLight(scene);
    const shares = scene.stations.map((station) => {
      const parts = scene.sources.map((source) => ({
        energy: source.energy,
        ...light.reach(source, station),
      }));
      const error = parts.reduce((sum, part) => sum + part.energy * part.error, 0);
      return error / parts.reduce((sum, part) => sum + part.energy * (part.direct + part.bounced), 0);
    });
    return Math.max(...shares);
  };
  // Dark rooms, in which the paths of a usual reading leave 5.9 and 4.4 % of the floor and of a shaded cheek open.
  for (const seed of [3, 17]) expect(widest(sceneOf(randomBlocks(seed)))).toBeLessThan(2 ** 0.05 - 1);
});

test("a reading in short is the same before and after the long one, and no narrower", () => {
  for (const seed of [3, 17]) {
    const scene = sceneOf(randomBlocks(seed));
    const [one, other] = [sceneLight(scene), sceneLight(scene)];
    const pairs = scene.stations.flatMap((station) =>
      scene.sources.map((source) => {
        const long = one.reach(source, station);
        const short = other.reach(source, station, "short");
        expect(one.reach(source, station, "short")).toEqual(short);
        expect(other.reach(source, station)).toEqual(long);
        return { long, short };
      }),
    );
    expect(pairs.some(({ long, short }) => long.error < 0.8 * short.error)).toBe(true);
    expect(pairs.every(({ long, short }) => long.error <= 1.001 * short.error)).toBe(true);
  }
});

test("a glance knows what comes straight as a reading does", () => {
  for (const scene of scenes) {
    const light = sceneLight(scene);
    for (const station of scene.stations)
      for (const source of scene.sources)
        expect(light.glance(source, station).direct).toBe(light.direct(source, station));
  }
});

test("in a closed room that hardly takes any light the stated error holds what is cut off the paths", () => {
  // Emitted is absorbed: on average flux / (area (1 - rho)) falls on the walls (energy balance).
  const reflectance = 0.99;
  const scene = sceneOf(`room {
  size: 3 x 3 x 3 m
  walls { reflectance: 99 % }
  ceiling { reflectance: 99 % }
  floor { reflectance: 99 % }
}
point low { at: (0 m, 0 m, 0.01 m), faces: up }
point corner { at: (-1.4 m, -1.3 m, 2.8 m), faces: down }
light bulb { shape: sphere(10 cm), output: 100 lm s, position: (0 m, 0 m, 1.5 m), aim: low }`);
  const light = sceneLight(scene);
  const mean = 100 / (6 * 3 * 3 * (1 - reflectance));
  for (const station of scene.stations.filter(({ name }) => name === "low" || name === "corner")) {
    const reach = light.reach(scene.sources[0] as Scene["sources"][number], station);
    const found = 100 * (reach.direct + reach.bounced);
    const off = Math.abs(found - mean);
    // Paths end at 200 surfaces; 0.99^200 = 0.13 of the light goes farther.
    expect(off).toBeGreaterThan(0.05 * mean);
    expect(off).toBeLessThan(100 * reach.error);
    expect(100 * reach.error).toBeLessThan(0.3 * mean);
  }
});
