import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Recipe } from "../../src/model/types.js";
import { buildScene } from "../../src/scene/build.js";
import type { Scene } from "../../src/scene/types.js";
import { lightField } from "../../src/transport/light-field.js";
import { energiesOf, mix } from "../../src/transport/mix.js";
import { cm, ft, inch } from "../../src/units/make.js";
import { freeField } from "../helpers/free-field.js";
import { mustBreak } from "../helpers/must-break.js";
import { anyStudio, type StudioSpec, studio } from "../helpers/studio.js";

/** Exposures of a recipe by station name and receptor, lx s. */
type Evaluate = (recipe: Recipe) => ReadonlyMap<string, number>;

const none = (): undefined => undefined;
const named = (scene: Scene, totals: ArrayLike<number>): ReadonlyMap<string, number> =>
  new Map(scene.stations.map((station, i) => [`${station.name} ${station.receptor}`, totals[i] ?? 0]));

const evaluate: Evaluate = (recipe) => {
  const scene = buildScene(recipe, none);
  return named(scene, mix(freeField(scene), energiesOf(scene)));
};

/** The same with all that hides and throws back; a run costs more, so there are fewer. */
const inFull: Evaluate = (recipe) => {
  const scene = buildScene(recipe, none);
  return named(scene, mix(lightField(scene), energiesOf(scene)));
};
const few = { numRuns: 12 };

const alike = (a: number, b: number, what: string): void => {
  expect(Math.abs(a - b), what).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 1e-9);
};

describe("all lengths times k: every exposure over k squared", () => {
  const read = (scene: Scene): ReadonlyMap<string, number> =>
    named(scene, mix(freeField(scene), energiesOf(scene)));
  /** A hand stays as broad as it is: where meters are held, in the larger set-up, is k times where they were. */
  const law = (aside: number): void => {
    fc.assert(
      fc.property(anyStudio, fc.constantFrom(0.25, 0.5, 2, 3), (spec, k) => {
        const plain = buildScene(studio(spec), none);
        const own = buildScene(studio(spec, { scale: k }), none);
        const stations = plain.stations.map((station, i) => {
          const at = [k * station.at[0], k * station.at[1] - aside, k * station.at[2]] as const;
          const there = own.stations[i];
          if (station.natural && aside === 0)
            for (const axis of [0, 1, 2] as const) alike(there?.at[axis] ?? -1, at[axis], station.name);
          return { ...station, at };
        });
        const scaled = read({ ...own, stations });
        for (const [name, value] of read(plain)) alike((scaled.get(name) ?? -1) * k * k, value, name);
      }),
    );
  };
  test("holds", () => law(0));
  test("breaks when stations stand a little off", () => mustBreak(() => law(0.001)));
});

describe("left and right swapped: the same exposures, left and right swapped", () => {
  const swap = (name: string): string =>
    name.replace(/\.(left|right)/, (_, word: string) => (word === "left" ? ".right" : ".left"));
  const law = (run: Evaluate): void => {
    fc.assert(
      fc.property(anyStudio, (spec) => {
        // A key right on the nose line has no lit side to swap.
        const off = (((spec.lamps[0]?.bearing ?? 0) - spec.facing) * Math.PI) / 180;
        fc.pre(Math.abs(Math.sin(off)) > 1e-6);
        const plain = run(studio(spec));
        const other = run(studio(spec, { mirrored: true }));
        for (const [name, value] of plain) alike(other.get(swap(name)) ?? -1, value, name);
      }),
    );
  };
  test("holds", () => law(evaluate));
  test("breaks when the lamps stand a little to the right", () =>
    mustBreak(() =>
      law((recipe) => {
        const scene = buildScene(recipe, none);
        const sources = scene.sources.map((s) => ({
          ...s,
          centre: [s.centre[0] + 0.01, s.centre[1], s.centre[2]] as const,
        }));
        return named(scene, mix(freeField({ ...scene, sources }), energiesOf(scene)));
      }),
    ));
});

describe("the unit a length is written in changes nothing", () => {
  const law = (run: Evaluate): void => {
    fc.assert(
      fc.property(anyStudio, fc.constantFrom("cm", "ft", "in"), (spec, unit) => {
        const say = (x: number) =>
          unit === "cm" ? cm(x * 100) : unit === "ft" ? ft(x / 0.3048) : inch(x / 0.0254);
        const plain = run(studio(spec));
        for (const [name, value] of run(studio(spec, { say }))) alike(plain.get(name) ?? -1, value, name);
      }),
    );
  };
  test("holds", () => law(evaluate));
  test("breaks when a written number counts", () =>
    mustBreak(() =>
      law((recipe) => {
        const tape = recipe.lights[0]?.distance?.length.written ?? "";
        return new Map([...evaluate(recipe)].map(([name, value]) => [name, value * (1 + tape.length)]));
      }),
    ));
});

describe("exposure is linear in power", () => {
  const energy = (recipe: Recipe, k: number): Recipe => ({
    ...recipe,
    lights: recipe.lights.map((light) =>
      light.output === undefined
        ? light
        : {
            ...light,
            output: {
              ...light.output,
              amount: { ...light.output.amount, value: light.output.amount.value * k },
            },
          },
    ) as Recipe["lights"],
  });
  const law = (run: Evaluate, size = {}): void => {
    fc.assert(
      fc.property(anyStudio, fc.double({ min: 0.01, max: 50, noNaN: true }), (spec, k) => {
        const one = run(studio(spec));
        for (const [name, value] of run(energy(studio(spec), k)))
          alike(value, k * (one.get(name) ?? -1), name);
      }),
      size,
    );
  };
  test("holds", () => law(evaluate));
  test("holds with all that hides and throws back", () => law(inFull, few));
  test("breaks when something is added", () =>
    mustBreak(() =>
      law((recipe) => new Map([...evaluate(recipe)].map(([name, value]) => [name, value + 0.01]))),
    ));
});

describe("the order of the lights changes no bit", () => {
  const turned = (spec: StudioSpec, turn: number): Recipe => {
    const recipe = studio(spec);
    const k = turn % Math.max(1, recipe.lights.length);
    return { ...recipe, lights: [...recipe.lights.slice(k), ...recipe.lights.slice(0, k)] };
  };
  const law = (run: Evaluate, size = {}): void => {
    fc.assert(
      fc.property(anyStudio, fc.nat(3), (spec, turn) => {
        const plain = run(studio(spec));
        for (const [name, value] of run(turned(spec, turn)))
          expect(Object.is(value, plain.get(name)), name).toBe(true);
      }),
      size,
    );
  };
  test("holds", () => law(evaluate));
  test("holds with all that hides and throws back", () => law(inFull, few));
  test("breaks when lights are summed in file order", () =>
    mustBreak(() =>
      law((recipe) => {
        const scene = buildScene(recipe, none);
        const field = freeField(scene);
        const totals = scene.stations.map((_, i) =>
          scene.sources.reduce(
            (sum, source, j) => sum + (field.direct[i * field.sources + j] ?? 0) * source.energy,
            0,
          ),
        );
        return named(scene, totals);
      }),
    ));
});

describe("a lamp without power changes nothing", () => {
  const law = (run: Evaluate, size = {}): void => {
    fc.assert(
      fc.property(anyStudio, fc.nat(4), (spec, where) => {
        const recipe = studio(spec);
        const extra = recipe.lights[0];
        if (extra === undefined) return;
        const dark = {
          ...extra,
          name: "dark",
          role: "fill",
          power: { kind: "off", written: "off" },
        } as typeof extra;
        const k = Math.min(where, recipe.lights.length);
        const more = run({
          ...recipe,
          lights: [...recipe.lights.slice(0, k), dark, ...recipe.lights.slice(k)],
        });
        for (const [name, value] of run(recipe)) expect(Object.is(value, more.get(name)), name).toBe(true);
      }),
      size,
    );
  };
  test("holds", () => law(evaluate));
  test("holds with all that hides and throws back", () => law(inFull, few));
  test("breaks when every lamp leaks a little", () =>
    mustBreak(() =>
      law((recipe) => {
        const scene = buildScene(recipe, none);
        return named(
          scene,
          mix(
            freeField(scene),
            energiesOf(scene).map((energy) => energy + 0.001),
          ),
        );
      }),
    ));
});
