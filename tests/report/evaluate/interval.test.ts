import { describe, expect, test } from "vitest";
import type { LightModel, Recipe, RoomModel } from "../../../src/model/types.js";
import type { Expr } from "../../../src/model/values.js";
import { run } from "../../../src/pipeline.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { lampInputs, measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { intervalOf, spreadOf } from "../../../src/report/evaluate/spread.js";
import { readingAt } from "../../../src/report/light/reading.js";
import type { Plan } from "../../../src/report/plan.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import type { Plain, Quantity } from "../../../src/units/quantity.js";

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
  const more = <Q extends Quantity>(q: Q, by: number): Q => ({ ...q, value: q.value + off(by) });
  const subjects = base.subjects.map((row) =>
    row.height === undefined ? row : { ...row, height: more(row.height, 0.02) },
  );
  const shape =
    key.shape?.kind === "disc" ? { ...key.shape, diameter: more(key.shape.diameter, 0.004) } : key.shape;
  const lights = [{ ...changed, shape } as LightModel];
  return { recipe: { ...base, lights, subjects, room }, stops: off(0.3) };
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

describe("the interval of what is measured with tapes alone", () => {
  const text = `halfshade 1
recipe "Tapes"
subject { height: 1.7 m }
set { flat back { size: 3 x 2.2 m, at: offset(behind: 1.5 m) } }
point cup { at: offset(left: 50 cm, up: 1.1 m) }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3.2 m, height: 1.3 m }
light key { role: key, shape: disc(60 cm), calibration: metered(f/11, at: 2 m, ISO 100), distance: 2 m, bearing: left(35 deg), height: 2.1 m }
expect key.angular_size < 90 deg
expect key.shadow_edge(gap: 10 cm) < 1 m
expect key.angular_size(at: cup) < 90 deg
expect headroom > 0 m
expect coverage > 0
expect subject_share > 0
expect far_limit > 0 m
expect key.shadow_length > 0 m
`;
  const model = recipeOf(text);
  const there = planFor(model);
  const all = measuredInputs(there);
  const claims = model.expectations.map(
    ({ written: name, claims: [claim] }) => [name, claim?.value as Expr] as const,
  );
  const next = chance(11);
  const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
  const off = <Q extends Quantity>(q: Q, by: number): Q => ({
    ...q,
    value: q.value + (by / 1.96) * normal(),
  });

  /** The recipe with every tape drawn. */
  function drawnTapes(): Recipe {
    // biome-ignore lint/suspicious/noExplicitAny: the recipe above has all of these.
    const { camera, lights, subjects, points, set } = model as any;
    const [key] = lights;
    const [flat] = set.parts;
    const [cup] = points;
    return {
      ...model,
      camera: {
        ...camera,
        focal_length: off(camera.focal_length, 0.03 * 0.085),
        height: off(camera.height, 0.03),
        distance: { ...camera.distance, length: off(camera.distance.length, 0.02) },
      },
      lights: [
        {
          ...key,
          shape: { ...key.shape, diameter: off(key.shape.diameter, 0.012) },
          height: off(key.height, 0.03),
          distance: { ...key.distance, length: off(key.distance.length, 0.02) },
          bearing: { ...key.bearing, angle: off(key.bearing.angle, 2) },
        },
      ],
      subjects: [{ ...subjects[0], height: off(subjects[0].height, 0.02) }],
      points: [{ ...cup, at: { ...cup.at, left: off(cup.at.left, 0.02), up: off(cup.at.up, 0.03) } }],
      set: {
        ...set,
        parts: [
          {
            ...flat,
            size: { ...flat.size, width: off(flat.size.width, 0.01), height: off(flat.size.height, 0.01) },
            at: { ...flat.at, behind: off(flat.at.behind, 0.02) },
          },
        ],
      },
    };
  }
  const DRAWS = 300;
  const draws = Array.from({ length: DRAWS }, () => {
    const recipe = drawnTapes();
    return { recipe, scene: buildScene(recipe, () => undefined), light: there.light };
  });

  test.each(claims)(
    "%s: covers about 95 of 100 set-ups with drawn tapes, and half of it about 68",
    (_, value) => {
      const amount = (at: Plan): number => evaluate({ plan: at, alarms: null }, value).value as number;
      const middle = amount(there);
      const limit = intervalOf({ plan: there, alarms: null }, all, (asked) => amount(asked.plan));
      expect(limit?.above).toBeGreaterThan(0);
      const shares = draws.map((one) => {
        const by = amount(one) - middle;
        return Math.abs(by) / (by > 0 ? (limit?.above ?? 0) : (limit?.below ?? 0));
      });
      const within = (most: number): number => shares.filter((share) => share <= most).length / DRAWS;
      // Of 300 free draws 95 % is known to 1.3, 68 % to 2.7 in a standard error; half of 1.96 is 0.98: 67.3 %.
      expect(within(1)).toBeGreaterThan(0.91);
      expect(within(1)).toBeLessThan(0.99);
      expect(within(0.5)).toBeGreaterThan(0.59);
      expect(within(0.5)).toBeLessThan(0.76);
    },
  );

  test("a `+-` behind a number counts before the standing one, of every kind", () => {
    const by = (before: string, after: string, what: string): number => {
      const rows = measuredInputs(planFor(recipeOf(text.replace(before, after))));
      return rows.find((row) => row.what === what)?.size ?? Number.NaN;
    };
    expect(by("height: 1.7 m", "height: 1.7 m +- 5 cm", "height of the subject")).toBeCloseTo(0.05, 12);
    expect(by("distance: 3.2 m", "distance: 3.2 m +- 7 cm", "camera distance")).toBeCloseTo(0.07, 12);
    expect(by("height: 1.3 m", "height: 1.3 m +- 1 cm", "camera height")).toBeCloseTo(0.01, 12);
    expect(by("up: 1.1 m", "up: 1.1 m +- 2 %", "cup up")).toBeCloseTo(0.022, 12);
    expect(by("disc(60 cm)", "disc(60 cm +- 3 cm)", "size of key")).toBeCloseTo(0.03, 12);
    expect(by("disc(60 cm)", "disc(50 cm)", "size of key")).toBeCloseTo(0.01, 12);
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
