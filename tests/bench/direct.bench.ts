import { bench, describe } from "vitest";
import { emptyVector } from "../../src/physics/light-vector.js";
import { buildScene } from "../../src/scene/build.js";
import type { Source } from "../../src/scene/types.js";
import { preparedReading, prepareSource } from "../../src/transport/direct.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { freeField } from "../helpers/free-field.js";
import { areaSampler, litPairs } from "./area-sampling.js";
import { threeLights } from "./direct-scene.js";
import { cpuNow, interleavedMinima } from "./interleaved.js";

const none = (): undefined => undefined;
const scene = buildScene(threeLights, none);
const field = freeField(scene);
const energies = energiesOf(scene);
const pairs = litPairs(scene, field.direct);

/** Random points a pair needs for a relative error of 1 % (RMS over the pairs of a scene). */
function pointsForOnePercent(chosen: typeof pairs): number {
  const sampler = areaSampler(1);
  let variance = 0;
  for (const { source, station, exact } of chosen) {
    const mean = sampler.read(source, station, 20_000);
    variance += (sampler.squares() - mean * mean) / (exact * exact);
  }
  return Math.ceil(variance / chosen.length / 1e-4);
}

const evaluate = (count: number): void => {
  for (let i = 0; i < count; i++) {
    const built = buildScene(threeLights, none);
    mix(freeField(built), energiesOf(built));
  }
};

const lines: string[] = [];
const evaluation = interleavedMinima([
  { name: "whole", count: 500, run: () => evaluate(500) },
  {
    name: "mix",
    count: 20_000,
    run: () => {
      for (let i = 0; i < 20_000; i++) mix(field, energies);
    },
  },
]);
const whole = evaluation.get("whole") ?? 0;
lines.push(
  `three lights, ${scene.stations.length} stations, from the checked model: ${whole.toFixed(1)} us of CPU, ${Math.round(1e6 / whole)} a CPU-second`,
);
lines.push(`a change of power alone (mix): ${(evaluation.get("mix") ?? 0).toFixed(2)} us`);

for (const [title, wanted] of [
  ["all three sources", (_: Source) => true],
  ["the flat ones (box, disc)", (s: Source) => s.shape.kind === "rectangle" || s.shape.kind === "disc"],
  ["the tube", (s: Source) => s.shape.kind === "capsule"],
] as const) {
  const chosen = pairs.filter((pair) => wanted(pair.source));
  const points = pointsForOnePercent(chosen);
  const prepared = new Map(scene.sources.map((source) => [source, prepareSource(source)]));
  const ready = chosen.map(({ source, station }) => ({
    source,
    station,
    prepared: prepared.get(source) ?? prepareSource(source),
  }));
  const scratch = emptyVector();
  const sampler = areaSampler(5);
  const times = interleavedMinima(
    [
      {
        name: "closed form",
        count: 200 * ready.length,
        run: () => {
          for (let i = 0; i < 200; i++) {
            for (const { station, prepared: source } of ready) {
              const { at, facing, receptor } = station;
              preparedReading(
                source,
                at[0],
                at[1],
                at[2],
                facing[0],
                facing[1],
                facing[2],
                receptor,
                scratch,
              );
            }
          }
        },
      },
      {
        name: "random points",
        count: ready.length,
        run: () => {
          for (const { source, station } of ready) sampler.read(source, station, points);
        },
      },
    ],
    5,
  );
  const exact = times.get("closed form") ?? 1;
  const random = times.get("random points") ?? 0;
  lines.push(
    `${title}: closed form ${exact.toFixed(3)} us a pair; random points at 1 % RMS (${points} points) ${random.toFixed(1)} us: ${(random / exact).toFixed(0)} x`,
  );
}
process.stdout.write(`${lines.join("\n")}\n`);

describe("direct light of three lights at 19 stations (CPU time)", () => {
  const options = { now: cpuNow, time: 300, iterations: 3 };
  bench("scene, field and mix, 100 recipes", () => evaluate(100), options);
  bench(
    "field alone, 100 scenes",
    () => {
      for (let i = 0; i < 100; i++) freeField(scene);
    },
    options,
  );
  bench(
    "mix alone, 100 powers",
    () => {
      for (let i = 0; i < 100; i++) mix(field, energies);
    },
    options,
  );
});
