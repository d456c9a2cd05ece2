import { describe, expect, test } from "vitest";
import type { LightModel, Recipe, RoomModel } from "../../../src/model/types.js";
import { run } from "../../../src/pipeline.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { lampInputs, measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { intervalOf, spreadOf } from "../../../src/report/evaluate/spread.js";
import { readingAt } from "../../../src/report/light/reading.js";
import type { Plan } from "../../../src/report/plan.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import type { Plain } from "../../../src/units/quantity.js";

const TEXT = `halfshade 1
recipe "Intervals"
room {
  size: 5 m x 7 m x 2.8 m
  ceiling { reflectance: 70 % }
  walls { reflectance: 50 % }
  floor { reflectance: 30 % }
}
subject { height: 1.7 m }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3.2 m, height: 1.3 m }
light key { role: key, shape: disc(20 cm), calibration: metered(f/11, at: 2 m, ISO 100), power: full, distance: 2 m, bearing: left(35 deg), height: 2.1 m }
expect stops(lit_cheek, shaded_cheek) > 0 stop
expect stops(face.disc(towards: key), chest.disc(towards: key)) > 0 stop
`;

function recipeOf(text: string): Recipe {
  const { recipe, diagnostics } = run({ name: "intervals.light", text });
  if (recipe === null || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics));
  return recipe;
}

function planFor(recipe: Recipe): Plan {
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

const base = recipeOf(TEXT);
const plan = planFor(base);
const inputs = measuredInputs(plan);

/** Stops of the reading at a station of a plan. */
function stopsAt({ scene, light }: Plan, name: string): number {
  const station = scene.stations.find((row) => row.name === name && row.receptor === "disc");
  if (station === undefined) throw new Error(name);
  return Math.log2(readingAt({ scene, light }, station).exposure);
}

/** Numbers from 0 to 1 that look like chance: a linear congruence (Numerical Recipes, from memory). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
}

/** The recipe with every input drawn: its tolerance is the 95 % limit of a normal law, about two standard deviations. */
function drawn(normal: () => number): { readonly recipe: Recipe; readonly stops: number } {
  const key = base.lights[0] as LightModel;
  const off = (tolerance: number): number => (tolerance / 1.96) * normal();
  const changed = {
    ...key,
    distance: key.distance && {
      ...key.distance,
      length: { ...key.distance.length, value: key.distance.length.value + off(0.02) },
    },
    height: key.height && { ...key.height, value: key.height.value + off(0.03) },
    bearing: key.bearing && {
      ...key.bearing,
      angle: { ...key.bearing.angle, value: key.bearing.angle.value + off(2) },
    },
  } as LightModel;
  const parts = (base.room as RoomModel).parts.map((part) => {
    const share = (part as { readonly reflectance?: Plain }).reflectance;
    return share === undefined
      ? part
      : { ...part, reflectance: { ...share, value: share.value + off(0.05) } };
  });
  const room = { ...base.room, parts } as RoomModel;
  return { recipe: { ...base, lights: [changed], room }, stops: off(0.3) };
}

describe("the interval of a reading", () => {
  test("covers about 95 of 100 full evaluations with drawn inputs, and half of it about 68", () => {
    const next = chance(7);
    const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const names = ["face", "shaded_cheek", "chest"];
    const middle = names.map((name) => stopsAt(plan, name));
    const limits = names.map((name) =>
      intervalOf({ plan, alarms: null }, inputs, (there) => stopsAt(there.plan, name)),
    );
    const DRAWS = 100;
    let inside = 0;
    let half = 0;
    for (let i = 0; i < DRAWS; i++) {
      const { recipe, stops } = drawn(normal);
      const there = planFor(recipe);
      names.forEach((name, k) => {
        const by = stopsAt(there, name) + stops - (middle[k] as number);
        const limit = by > 0 ? (limits[k]?.above ?? 0) : (limits[k]?.below ?? 0);
        if (Math.abs(by) <= limit) inside++;
        if (Math.abs(by) <= limit / 2) half++;
      });
    }
    const all = DRAWS * names.length;
    // The three readings share the output, so about 100 free draws: 95 % to 2.2, 68 % to 4.7 standard errors.
    expect(inside / all).toBeGreaterThan(0.89);
    expect(half / all).toBeGreaterThan(0.55);
    expect(half / all).toBeLessThan(0.82);
  });

  test("is that of the output where all else is nearly sure", () => {
    const sure = planFor(
      recipeOf(
        TEXT.replace(
          "subject",
          "tolerances { tape: 1 mm, height: 1 mm, angle: 0.01 deg, reflectance: 0.1 % }\nsubject",
        ),
      ),
    );
    const found = intervalOf({ plan: sure, alarms: null }, measuredInputs(sure), (there) =>
      stopsAt(there.plan, "face"),
    );
    expect(found?.above).toBeCloseTo(0.3, 2);
    expect(found?.below).toBeCloseTo(0.3, 2);
  });
});

test("an input that moves both readings of a ratio alike cancels", () => {
  const [, apart] = base.expectations;
  const value = apart?.claims[0]?.value;
  if (value === undefined) throw new Error("no claim");
  const output = lampInputs(plan).filter((row) => row.what === "key output");
  expect(output).toHaveLength(1);
  const asked = { plan, alarms: null };
  expect(evaluate(asked, value).value).not.toBeNull();
  expect(spreadOf(asked, value, output)?.above).toBeCloseTo(0, 12);
  const one = intervalOf(asked, output, (there) => stopsAt(there.plan, "face"));
  expect(one?.above).toBeCloseTo(0.3, 12);
});

test.each([
  ["floor", 0.3],
  ["ceiling", 0.7],
])("bounced light follows the reflectance of the %s as a scene built anew does", (surface, reflectance) => {
  const at = (percent: number): number =>
    stopsAt(
      planFor(
        recipeOf(
          TEXT.replace(
            `${surface} { reflectance: ${100 * reflectance} %`,
            `${surface} { reflectance: ${percent} %`,
          ),
        ),
      ),
      "shaded_cheek",
    );
  const anew = at(100 * reflectance + 5) - at(100 * reflectance - 5);
  const input = inputs.find((row) => row.what === `reflectance of ${surface}`);
  if (input === undefined) throw new Error(surface);
  const near = stopsAt(input.moved, "shaded_cheek") - stopsAt(input.back, "shaded_cheek");
  expect(anew).toBeGreaterThan(0.01);
  // Two readings built anew differ by their own errors, about 0.005 stop.
  expect(Math.abs(near - anew)).toBeLessThan(0.01 + 0.1 * anew);
});

test("a tolerance after a reflectance counts before the standing one", () => {
  const by = (text: string): number =>
    measuredInputs(planFor(recipeOf(TEXT.replace("floor { reflectance: 30 %", text)))).find(
      (row) => row.what === "reflectance of floor",
    )?.size ?? Number.NaN;
  expect(by("floor { reflectance: 30 %")).toBeCloseTo(0.05, 12);
  expect(by("floor { reflectance: 30 % +- 2 %")).toBeCloseTo(0.02, 12);
});
