import * as three from "three";
import { bench, describe } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { sceneToJson } from "../../src/scene/export.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { bouncedColumn } from "../../src/transport/bounce/column.js";
import { fineness } from "../../src/transport/bounce/fineness.js";
import { emptyHit, firstHit } from "../../src/transport/bounce/first-hit.js";
import { type KeptSet, keepSet, keepSetAt } from "../../src/transport/bounce/kept-set.js";
import { worldOf } from "../../src/transport/bounce/world.js";
import { prepareSource } from "../../src/transport/direct.js";
import { occludersOf } from "../../src/transport/hiding/occluder.js";
import { type ShadedSource, shadedReading, shadedSource } from "../../src/transport/hiding/shaded.js";
import { lightField } from "../../src/transport/light-field.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { PathTracer } from "../helpers/path-tracer.js";
import { randomDirection, randomFrom } from "../helpers/random.js";
import { corner, meshes, withBalls, withLamps } from "./bounce-scene.js";
import { cpuNow, interleavedMinima } from "./interleaved.js";

/*
 * Two hinged flats, a card and a person in a room of 5 x 7 x 3 m (walls 50 %, ceiling 80 %, floor 25 %), one disc of
 * 20 cm at 2.2 m; all 14 stations at the usual quality. Clock: CPU time of the process, the least of several rounds
 * taken in turn. What is compared:
 * - kept: what the set does, once for all lamps and settings; column: one lamp in it;
 * - direct: the same lamp at the same stations with what hides it, nothing bounced;
 * - paths: a tracer that asks the lamp from every point of a path; its cost for a standard error of 1 % of the total;
 * - triangles: the raycaster of a library for pictures, on the same sheets and bodies as meshes.
 */
const shadedOf = (scene: Scene): readonly ShadedSource[] => {
  const occluders = occludersOf(scene);
  return scene.sources.map((source: Source) => shadedSource(prepareSource(source), occluders));
};
const direct = (scene: Scene, sources: readonly ShadedSource[]): number => {
  let sum = 0;
  for (const source of sources) {
    for (const { at, facing, receptor } of scene.stations) sum += shadedReading(source, at, facing, receptor);
  }
  return sum;
};
const columns = (kept: KeptSet, sources: readonly ShadedSource[]): number => {
  let sum = 0;
  for (const source of sources) sum += bouncedColumn(kept, source).bounced[0] as number;
  return sum;
};

const scene = corner();
const sources = shadedOf(scene);
const kept = keepSet(scene);
const field = lightField(scene);
const energies = energiesOf(scene);

/** CPU time and standard error of some paths at every station. */
const tracer = new PathTracer(sceneToJson(scene), randomFrom(5));
const [BATCHES, SIDE] = [24, 6];
function paths(): { readonly number: number; readonly squares: number } {
  let squares = 0;
  scene.stations.forEach((_, i) => {
    const { total, totalError } = tracer.station(i, BATCHES, SIDE);
    const relative = (totalError[0] as number) / (total[0] as number);
    squares += (relative * relative) / scene.stations.length;
  });
  return { number: BATCHES * SIDE * SIDE, squares };
}

/** Rays from the stations, all ways alike. */
const random = randomFrom(11);
const rays = Array.from({ length: 400 }, (_, i): { readonly from: Vec3; readonly to: Vec3 } => {
  const { at, facing } = scene.stations[i % scene.stations.length] as Scene["stations"][number];
  const to = randomDirection(random);
  const sign = to[0] * facing[0] + to[1] * facing[1] + to[2] * facing[2] < 0 ? -1 : 1;
  return {
    from: [at[0] + 1e-3 * facing[0], at[1] + 1e-3 * facing[1], at[2] + 1e-3 * facing[2]],
    to: [sign * to[0], sign * to[1], sign * to[2]],
  };
});
const world = worldOf(scene);
const hit = emptyHit();
const { objects, triangles } = meshes(scene);
const raycaster = new three.Raycaster();
const bodies = [...objects];
let alike = 0;
for (const { from, to } of rays) {
  firstHit(world, ...from, ...to, -1, hit);
  raycaster.set(new three.Vector3(...from), new three.Vector3(...to));
  const met = raycaster.intersectObjects(bodies, false)[0];
  if (Math.abs((met?.distance ?? 0) - (hit.thing < 0 ? 0 : hit.way)) < 0.02) alike++;
}

const usual = fineness.usual;
const twice = { ...usual, patches: 2 * usual.patches };
const four = { ...usual, patches: 4 * usual.patches };
const three6 = withLamps(3);
const six = withLamps(6);
const [balls8, balls24] = [withBalls(8), withBalls(24)];
const lamps3 = shadedOf(three6);
const lamps6 = shadedOf(six);
const [kept3, kept6, keptBalls8, keptBalls24] = [three6, six, balls8, balls24].map((one) => keepSet(one)) as [
  KeptSet,
  KeptSet,
  KeptSet,
  KeptSet,
];
const [source8, source24] = [shadedOf(balls8), shadedOf(balls24)];

const once = (name: string, run: () => void, count = 1) => ({
  name,
  count,
  run: () => {
    for (let i = 0; i < count; i++) run();
  },
});
const times = interleavedMinima(
  [
    once("kept", () => void keepSet(scene)),
    once("column", () => void columns(kept, sources), 5),
    once("direct", () => void direct(scene, sources), 20),
    once("mix", () => void mix(field, energies), 20_000),
    once("contributors", () => {
      const light = sceneLight(scene);
      light.contributors([{ source: scene.sources[0] as Source, energy: 1 }], scene.stations[3] as never);
    }),
    once("paths", () => void paths()),
    once(
      "ray",
      () => {
        for (const { from, to } of rays)
          firstHit(world, from[0], from[1], from[2], to[0], to[1], to[2], -1, hit);
      },
      50,
    ),
    once("triangles", () => {
      for (const { from, to } of rays) {
        raycaster.ray.origin.set(from[0], from[1], from[2]);
        raycaster.ray.direction.set(to[0], to[1], to[2]);
        raycaster.intersectObjects(bodies, false);
      }
    }),
    once("patches x 2", () => void keepSetAt(scene, twice)),
    once("patches x 4", () => void keepSetAt(scene, four)),
    once("fine", () => void keepSet(scene, "fine")),
    once("column, 3 lamps", () => void columns(kept3, lamps3)),
    once("column, 6 lamps", () => void columns(kept6, lamps6)),
    once("kept, 8 balls", () => void keepSet(balls8)),
    once("kept, 24 balls", () => void keepSet(balls24)),
    once("column, 8 balls", () => void columns(keptBalls8, source8)),
    once("column, 24 balls", () => void columns(keptBalls24, source24)),
  ],
  5,
);
const us = (name: string): number => times.get(name) ?? 0;
const ms = (name: string): string => `${(us(name) / 1000).toFixed(2)} ms`;
const over = (a: number, b: number): string => (a / b).toFixed(a / b < 10 ? 1 : 0);

const sample = paths();
const wanted = sample.number * (sample.squares / 1e-4);
const pathCost = (us("paths") / sample.number) * wanted;
const whole = us("kept") + us("column") + us("direct");
/** How far the usual quality lies from the fine one: root mean square over the stations, as a share of the total. */
const fine = mix(lightField(scene, sceneLight(scene, "fine")), energies);
const own = Math.sqrt(
  mix(field, energies).reduce(
    (sum, x, i) => sum + (x / (fine[i] as number) - 1) * (x / (fine[i] as number) - 1),
    0,
  ) / fine.length,
);

/** Memory that is taken while a set is worked out and held, MB: arrays and objects. */
function memory(): number {
  const before = process.memoryUsage();
  const held = [keepSet(scene), keepSet(six)];
  const after = process.memoryUsage();
  const grown = after.arrayBuffers + after.heapUsed - before.arrayBuffers - before.heapUsed;
  return held.length > 0 ? grown / 1e6 / held.length : 0;
}

const lines = [
  `kept ${ms("kept")}, column ${ms("column")}, direct ${ms("direct")}; ${kept.cells.count} cells, ${kept.sides.patches} patches, ${scene.stations.length} stations`,
  `paths for 1 % of the total: ${wanted.toFixed(0)} a station, ${(pathCost / 1000).toFixed(0)} ms: ${over(pathCost, whole)} times kept + column + direct, ${over(pathCost, us("column") + us("direct"))} times column + direct (own difference from the fine quality ${(100 * own).toFixed(2)} %)`,
  `all with bounce over direct alone: ${over(whole, us("direct"))}; a moved lamp with the set kept over direct alone: ${over(us("column") + us("direct"), us("direct"))}`,
  `changed power, gel, sensitivity or aperture: ${us("mix").toFixed(3)} us, one ${over(whole, us("mix"))}th of all, one ${over(us("direct"), us("mix"))}th of direct alone`,
  `a ray ${((1000 * us("ray")) / rays.length).toFixed(0)} ns; among ${triangles} triangles ${over(us("triangles"), us("ray"))} times as dear (${alike} of ${rays.length} rays end within 2 cm of each other)`,
  `growth: patches x 2 ${over(us("patches x 2"), us("kept"))}, x 4 ${over(us("patches x 4"), us("kept"))} times, fine quality ${over(us("fine"), us("kept"))} times; columns of 3 and 6 lamps ${over(us("column, 3 lamps"), us("column"))} and ${over(us("column, 6 lamps"), us("column"))} times; 8 and 24 balls more: kept ${over(us("kept, 8 balls"), us("kept"))} and ${over(us("kept, 24 balls"), us("kept"))}, column ${over(us("column, 8 balls"), us("column"))} and ${over(us("column, 24 balls"), us("column"))} times`,
  `what each surface does for a reading, the set's own working included: ${ms("contributors")}`,
  `memory of a set: ${memory().toFixed(1)} MB`,
];

describe(lines.join("\n"), () => {
  bench("one lamp in a kept set", () => void columns(kept, sources), { now: cpuNow, time: 100 });
});
