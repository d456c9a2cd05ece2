import { bench, describe } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { lambertVector } from "../../src/math/lambert-polygon.js";
import type { Scene } from "../../src/scene/types.js";
import { clearWay, emptyHit } from "../../src/transport/bounce/first-hit.js";
import { type World, worldOf } from "../../src/transport/bounce/world.js";
import { prepareSource } from "../../src/transport/direct.js";
import { occludersOf } from "../../src/transport/hiding/occluder.js";
import { seenShare, shadedReading, shadedSource } from "../../src/transport/hiding/shaded.js";
import { type HiddenScene, hiddenScene } from "../helpers/hidden-scenes.js";
import { randomFrom } from "../helpers/random.js";
import { spotOf } from "../helpers/sampler.js";
import { cpuNow, interleavedMinima } from "./interleaved.js";

/**
 * A disc of 0.9 m and a rectangle of 1.2 x 0.8 m about 3 m from the receptor; two sheets, two ellipsoids, two capsules
 * and a ball at random places between. Only receptors in the half-shade, where 5 to 95 % of the light is left.
 */
const random = randomFrom(4711);
const cases: { scene: HiddenScene; source: ReturnType<typeof shadedSource>; world: World }[] = [];
for (let i = 0; cases.length < 120; i++) {
  const scene = hiddenScene(random, i % 2);
  const set = { room: null, polygons: scene.polygons, bodies: scene.bodies } as unknown as Scene;
  const source = shadedSource(prepareSource(scene.source), occludersOf(set));
  const share = seenShare(source, scene.at, scene.facing, scene.receptor === "dome");
  if (share > 0.05 && share < 0.95) cases.push({ scene, source, world: worldOf(set) });
}

const hit = emptyHit();

/** One random point of the light: its value where nothing stands before it, else 0. */
function sample({ scene, world }: (typeof cases)[number]): number {
  const spot = spotOf(scene.source, random);
  const to: Vec3 = [spot.at[0] - scene.at[0], spot.at[1] - scene.at[1], spot.at[2] - scene.at[2]];
  const d2 = to[0] * to[0] + to[1] * to[1] + to[2] * to[2];
  const d = Math.sqrt(d2);
  const away = -(to[0] * spot.out[0] + to[1] * spot.out[1] + to[2] * spot.out[2]) / d;
  const cosine = (to[0] * scene.facing[0] + to[1] * scene.facing[1] + to[2] * scene.facing[2]) / d;
  if (away <= 0 || cosine <= 0) return 0;
  const clear = clearWay(world, ...scene.at, to[0] / d, to[1] / d, to[2] / d, d, true, hit);
  return clear ? (away * cosine) / d2 : 0;
}

/** Points needed for an RMS error of 1 % of the unhidden light. */
function pointsForOnePercent(): number {
  let sum = 0;
  for (const one of cases) {
    let mean = 0;
    let squares = 0;
    const count = 2000;
    for (let i = 0; i < count; i++) {
      const value = sample(one);
      mean += value / count;
      squares += (value * value) / count;
    }
    const share = seenShare(one.source, one.scene.at, one.scene.facing, one.scene.receptor === "dome");
    const whole = mean / share;
    sum += (squares - mean * mean) / (whole * whole);
  }
  return Math.ceil(sum / cases.length / 1e-4);
}

const ring: readonly Vec3[] = Array.from({ length: 32 }, (_, i) => {
  const t = (2 * Math.PI * i) / 32;
  return [0.45 * Math.cos(t), 0.45 * Math.sin(t), 3];
});

const points = pointsForOnePercent();
const times = interleavedMinima([
  {
    name: "half-shade",
    count: 20 * cases.length,
    run: () => {
      for (let i = 0; i < 20; i++) {
        for (const { scene, source } of cases) shadedReading(source, scene.at, scene.facing, scene.receptor);
      }
    },
  },
  {
    name: "random point",
    count: 50 * cases.length,
    run: () => {
      for (let i = 0; i < 50; i++) for (const one of cases) sample(one);
    },
  },
  {
    name: "32-gon",
    count: 50 * cases.length,
    run: () => {
      for (let i = 0; i < 50; i++) for (const { scene } of cases) lambertVector(ring, scene.at);
    },
  },
]);
const half = times.get("half-shade") ?? 0;
const point = times.get("random point") ?? 0;
const gon = times.get("32-gon") ?? 0;
const lines = [
  `half-shade behind 7 occluders: ${half.toFixed(2)} us; ${(half / gon).toFixed(1)} times Lambert's sum over a 32-gon unhidden (${gon.toFixed(2)} us)`,
  `random points for 1 %: ${points} points of ${point.toFixed(3)} us, ${((points * point) / half).toFixed(0)} times as dear; for 0.35 %: ${((points * point) / 0.35 / 0.35 / half).toFixed(0)} times`,
];

describe(lines.join("\n"), () => {
  bench(
    "half-shade behind 7 occluders",
    () => void shadedReading(cases[0]!.source, cases[0]!.scene.at, cases[0]!.scene.facing, "disc"),
    {
      now: cpuNow,
      time: 100,
    },
  );
});
