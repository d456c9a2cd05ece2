import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as three from "three";
import { bench, describe } from "vitest";
import { starter } from "../../src/cli/starter.js";
import type { Vec3 } from "../../src/core/vector.js";
import { sceneToJson } from "../../src/scene/export.js";
import type { Scene, Source } from "../../src/scene/types.js";
import { emptyHit, firstHit } from "../../src/transport/bounce/first-hit.js";
import type { Quality } from "../../src/transport/bounce/types.js";
import { worldOf } from "../../src/transport/bounce/world.js";
import { prepareSource } from "../../src/transport/direct.js";
import { occludersOf } from "../../src/transport/hiding/occluder.js";
import { shadedReading, shadedSource } from "../../src/transport/hiding/shaded.js";
import { lightField } from "../../src/transport/light-field.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { type SceneLight, sceneLight } from "../../src/transport/scene-light.js";
import { PathTracer } from "../helpers/path-tracer.js";
import { randomDirection, randomFrom } from "../helpers/random.js";
import { corner, meshes, withBalls, withLamps } from "./bounce-scene.js";
import { cpuNow, interleavedMinima } from "./interleaved.js";

/*
 * Two hinged flats, a card and a person in a room of 5 x 7 x 3 m (walls 50 %, ceiling 80 %, floor 25 %), one disc of
 * 20 cm at 2.2 m; all 14 stations at the usual quality. Clock: CPU time of the process, the least of several rounds
 * taken in turn. What is compared:
 * - all: a first evaluation, the set and the lamp; moved: the lamp at a new place, the set kept;
 * - direct: the same lamp at the same stations with what hides it, nothing bounced;
 * - paths: a tracer that asks the lamp from every point of a path; its cost for a standard error of 1 % of the total;
 * - triangles: the raycaster of a library for pictures, on the same sheets and bodies as meshes.
 */
type Read = (source: Source, light: SceneLight) => number;
const readings =
  (scene: Scene): Read =>
  (source, light) => {
    let sum = 0;
    for (const station of scene.stations) {
      const { direct, bounced } = light.reach(source, station);
      sum += direct + bounced;
    }
    return sum;
  };

/** All that a first evaluation does: the set, and every lamp in it at every station. */
function first(scene: Scene, quality: Quality = "usual"): SceneLight {
  const light = sceneLight(scene, quality);
  const read = readings(scene);
  for (const source of scene.sources) read(source, light);
  return light;
}

/** Every lamp where it has never been, with the set kept. */
let moves = 0;
function moved(scene: Scene, light: SceneLight): void {
  const read = readings(scene);
  for (const source of scene.sources) {
    const [x, y, z] = source.centre;
    read({ ...source, centre: [x + 1e-6 * ++moves, y, z] }, light);
  }
}

/** Direct light alone of every lamp, made ready anew. */
function direct(scene: Scene): number {
  const occluders = occludersOf(scene);
  let sum = 0;
  for (const source of scene.sources) {
    const shaded = shadedSource(prepareSource(source), occluders);
    for (const { at, facing, receptor } of scene.stations) sum += shadedReading(shaded, at, facing, receptor);
  }
  return sum;
}

const scene = corner();
const light = first(scene);
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
  firstHit(world, ...from, ...to, hit);
  raycaster.set(new three.Vector3(...from), new three.Vector3(...to));
  const met = raycaster.intersectObjects(bodies, false)[0];
  if (Math.abs((met?.distance ?? 0) - (hit.thing < 0 ? 0 : hit.way)) < 0.02) alike++;
}

const lamps3 = withLamps(3);
const lamps6 = withLamps(6);
const [balls8, balls24] = [withBalls(8), withBalls(24)];
const [light3, light6, lightBalls8, lightBalls24] = [lamps3, lamps6, balls8, balls24].map((one) =>
  first(one),
) as [SceneLight, SceneLight, SceneLight, SceneLight];

const once = (name: string, run: () => void, count = 1) => ({
  name,
  count,
  run: () => {
    for (let i = 0; i < count; i++) run();
  },
});
const times = interleavedMinima(
  [
    once("all", () => void first(scene)),
    once("moved", () => moved(scene, light), 3),
    once("direct", () => void direct(scene), 20),
    once("mix", () => void mix(field, energies), 20_000),
    once("contributors", () => {
      const light = sceneLight(scene);
      light.contributors([{ source: scene.sources[0] as Source, energy: 1 }], scene.stations[3] as never);
    }),
    once("paths", () => void paths()),
    once(
      "ray",
      () => {
        for (const { from, to } of rays) firstHit(world, from[0], from[1], from[2], to[0], to[1], to[2], hit);
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
    once("fine", () => void first(scene, "fine")),
    once("moved, 3 lamps", () => moved(lamps3, light3)),
    once("moved, 6 lamps", () => moved(lamps6, light6)),
    once("all, 8 balls", () => void first(balls8)),
    once("all, 24 balls", () => void first(balls24)),
    once("moved, 8 balls", () => moved(balls8, lightBalls8)),
    once("moved, 24 balls", () => moved(balls24, lightBalls24)),
  ],
  5,
);
const us = (name: string): number => times.get(name) ?? 0;
const ms = (name: string): string => `${(us(name) / 1000).toFixed(2)} ms`;
const over = (a: number, b: number): string => (a / b).toFixed(a / b < 10 ? 1 : 0);

const sample = paths();
const wanted = sample.number * (sample.squares / 1e-4);
const pathCost = (us("paths") / sample.number) * wanted;
/** How far the usual quality lies from the fine one: root mean square over the stations, as a share of the total. */
const fine = mix(lightField(scene, sceneLight(scene, "fine")), energies);
const own = Math.sqrt(
  mix(field, energies).reduce(
    (sum, x, i) => sum + (x / (fine[i] as number) - 1) * (x / (fine[i] as number) - 1),
    0,
  ) / fine.length,
);

/** Peak memory of a whole process, MB: resident set of `halfshade report` on the starter, and of bare node. */
function memory(): string {
  const program = new URL("../../dist/cli.cjs", import.meta.url).pathname;
  if (!existsSync(program) || !existsSync("/proc/self/status")) return "not known";
  const folder = mkdtempSync(join(tmpdir(), "halfshade-memory-"));
  const recipe = join(folder, "recipe.light");
  writeFileSync(recipe, starter);
  // The high-water mark of the process's own memory; what was taken by the process that started it does not count.
  const tell =
    "process.on('exit', () => { const status = require('node:fs').readFileSync('/proc/self/status', 'utf8'); process.stderr.write(' ' + /VmHWM:\\s*(\\d+)/.exec(status)[1]); });";
  const peak = (code: string): number => {
    const { stderr } = spawnSync(process.execPath, ["-e", tell + code], { encoding: "utf8" });
    return Number(stderr.split(" ").at(-1)) / 1000;
  };
  const report = peak(
    `process.argv = ["node", "halfshade", "report", ${JSON.stringify(recipe)}]; require(${JSON.stringify(program)});`,
  );
  const bare = peak("");
  rmSync(folder, { recursive: true, force: true });
  return `${report.toFixed(0)} MB for a report of the starter, ${bare.toFixed(0)} MB for bare node`;
}

const lines = [
  `all ${ms("all")}, a moved lamp ${ms("moved")}, direct light alone ${ms("direct")}; ${scene.stations.length} stations`,
  `paths for 1 % of the total: ${wanted.toFixed(0)} a station, ${(pathCost / 1000).toFixed(0)} ms: ${over(pathCost, us("all"))} times all, ${over(pathCost, us("moved"))} times a moved lamp (own difference from the fine quality ${(100 * own).toFixed(2)} %, for which paths are ${over((pathCost * 1e-4) / (own * own), us("all"))} times as dear as all)`,
  `all over direct alone: ${over(us("all"), us("direct"))}; a moved lamp with the set kept over direct alone: ${over(us("moved"), us("direct"))}`,
  `changed power, gel, sensitivity or aperture: ${us("mix").toFixed(3)} us, one ${over(us("all"), us("mix"))}th of all, one ${over(us("direct"), us("mix"))}th of direct alone`,
  `a ray ${((1000 * us("ray")) / rays.length).toFixed(0)} ns; among ${triangles} triangles ${over(us("triangles"), us("ray"))} times as dear (${alike} of ${rays.length} rays end within 2 cm of each other)`,
  `growth: fine quality ${over(us("fine"), us("all"))} times; moved lamps, 3 and 6: ${over(us("moved, 3 lamps"), us("moved"))} and ${over(us("moved, 6 lamps"), us("moved"))} times; 8 and 24 balls more: all ${over(us("all, 8 balls"), us("all"))} and ${over(us("all, 24 balls"), us("all"))}, a moved lamp ${over(us("moved, 8 balls"), us("moved"))} and ${over(us("moved, 24 balls"), us("moved"))} times`,
  `what each surface does for a reading, the set's own working included: ${ms("contributors")}`,
  `peak memory of the process (where /proc tells): ${memory()}`,
];

describe(lines.join("\n"), () => {
  bench("one moved lamp in a kept set", () => moved(scene, light), { now: cpuNow, time: 100 });
});
