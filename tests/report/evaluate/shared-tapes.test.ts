import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import type { Expr } from "../../../src/model/values.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { intervalOf } from "../../../src/report/evaluate/spread.js";
import type { Plan } from "../../../src/report/plan.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";

/** What the recipe says by name, each with how far it may be off. */
const middle = {
  throw: [1.8, 0.1],
  tall: [1.95, 0.08],
  wide: [30, 3],
  reading: [8, 0.2],
  less: [1.6, 0.06],
} as const;
type Name = keyof typeof middle;
const names = Object.keys(middle) as Name[];
type Values = Readonly<Record<Name, number>>;

/** Two lamps on one tape, by one reading, of one size; `off` says what stands behind a `let`. */
function textOf(n: Values, off: (name: Name) => string): string {
  return `halfshade 1
recipe "By name"
tolerances {
  tape: 0 m, height: 0 m, angle: 0 deg, stature: 0 m, size: 0, dial: 0 stop, board: 0 m, hinge: 0 deg, lens: 0
  reflectance: 0, assumed_reflectance: 0
}
let throw = ${n.throw} m${off("throw")}
let tall = ${n.tall} m${off("tall")}
let wide = ${n.wide} cm${off("wide")}
let reading = f/${n.reading}${off("reading")}
let farther = 2 * throw - (${n.less} m${off("less")})
subject { height: 1.7 m }
camera { held: level, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, focal_length: 60 mm, distance: 3 m, height: 1.3 m }
light key { role: key, shape: disc(wide), calibration: metered(reading, at: 2 m, ISO 100), distance: throw, bearing: left(40 deg), height: tall }
light fill { shape: disc(wide), calibration: metered(reading, at: 2 m, ISO 100), distance: throw, bearing: right(40 deg), height: tall, power: 1/2 }
light back { role: rim, shape: disc(wide), calibration: metered(f/8 +- 0 stop, at: 2 m, ISO 100), distance: farther, bearing: right(150 deg), height: 4 m - tall }
expect stops(face.disc(towards: key, only: key), face.disc(towards: fill, only: fill)) > 0 stop
expect exposure(face.disc(towards: key)) > 0 lx s
expect stops(face.disc(towards: key, only: key), hair.disc(towards: back, only: back)) > -9 stop
expect key.elevation + back.elevation > 0 deg
expect back.distance - key.distance > 0 m
`;
}

const units: Record<Name, string> = { throw: "m", tall: "m", wide: "cm", reading: "stop", less: "m" };
const written = (name: Name): string => ` +- ${middle[name][1]} ${units[name]}`;
const asPlanned = Object.fromEntries(names.map((name) => [name, middle[name][0]])) as Values;

function planOf(text: string): Plan {
  const { recipe, diagnostics } = compile({ name: "names.light", text });
  if (recipe === null || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics));
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

const claimsOf = ({ recipe }: Plan): readonly Expr[] =>
  recipe.expectations.map(({ claims: [claim] }) => claim?.value as Expr);

function amount(at: Plan, value: Expr): number {
  const found = evaluate({ plan: at, alarms: null }, value);
  return found.type === "exposure" ? Math.log2(found.value as number) : (found.value as number);
}

/** Numbers from 0 to 1 that look like chance: a linear congruence (Numerical Recipes, from memory). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
}

describe("what is said by one name in several places is off together", () => {
  const plan = planOf(textOf(asPlanned, written));
  const inputs = measuredInputs(plan);
  const claims = claimsOf(plan);
  const reach = (value: Expr): number => {
    const limit = intervalOf({ plan, alarms: null }, inputs, ({ plan: there }) => amount(there, value));
    return ((limit?.above ?? Number.NaN) + (limit?.below ?? Number.NaN)) / 2;
  };

  test("each name is one input, and its numbers are none besides", () => {
    expect(inputs.map(({ what, by }) => `${what} ${by}`).sort()).toEqual(
      ["back distance 6 cm", "reading 0.2 stop", "tall 8 cm", "throw 10 cm", "wide 3 cm"].sort(),
    );
  });

  test("two lamps on one tape differ no more for its being off: a ratio of theirs is sure", () => {
    // Sure but for what the skin gives back to the two meters, which look from two sides.
    expect(reach(claims[0] as Expr)).toBeLessThan(1e-3);
  });

  test("twice a tape less a length of its own is off by twice the tape, and less the tape by one", () => {
    // (2 t - l) - t: 10 cm of the tape and 6 cm of the length, independent of each other.
    expect(reach(claims[4] as Expr)).toBeCloseTo(Math.hypot(0.1, 0.06), 9);
  });

  test("intervals are those of draws of the names, each worked out whole", () => {
    const next = chance(7);
    const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const DRAWS = 400;
    const draws = Array.from({ length: DRAWS }, () => {
      const drawn = names.map((name) => {
        const [at, off] = middle[name];
        const by = (off / 1.96) * normal();
        // A reading is off in stops: two of them double an f-number.
        return [name, name === "reading" ? at * 2 ** (by / 2) : at + by];
      });
      return planOf(textOf(Object.fromEntries(drawn) as Values, () => ""));
    });
    for (const value of claims.slice(1)) {
      const before = amount(plan, value);
      const squares = draws.reduce((sum, there) => sum + (amount(there, value) - before) ** 2, 0);
      const drawn = 1.96 * Math.sqrt(squares / DRAWS);
      // A standard deviation of 400 free draws is known to 1 in sqrt(800), 3.5 %; four of those, and bent slopes.
      expect(reach(value) / drawn).toBeGreaterThan(0.85);
      expect(reach(value) / drawn).toBeLessThan(1.15);
    }
  });

  test("the same numbers written out are off one by one: the ratio is not sure", () => {
    const apart = textOf(asPlanned, () => "")
      .replaceAll("distance: throw", "distance: 1.8 m +- 0.1 m")
      .replaceAll("height: tall,", "height: 1.95 m +- 0.08 m,")
      .replaceAll("height: tall }", "height: 1.95 m +- 0.08 m }");
    const there = planOf(apart);
    const [ratio] = claimsOf(there);
    const limit = intervalOf({ plan: there, alarms: null }, measuredInputs(there), ({ plan: one }) =>
      amount(one, ratio as Expr),
    );
    expect(limit?.above).toBeGreaterThan(0.15);
  });
});

test("a tolerance behind a name that is used once stays with its number", () => {
  const plan = planOf(
    textOf(asPlanned, () => "")
      .replace("let tall = 1.95 m", "let tall = 1.95 m +- 8 cm")
      .replaceAll(/height: tall(?= [},])|height: tall(?=,)/g, "height: 2 m"),
  );
  const heights = measuredInputs(plan).filter(({ unit }) => unit === "m");
  expect(heights.map(({ what, by }) => `${what} ${by}`)).toEqual(["back height 8 cm"]);
});
