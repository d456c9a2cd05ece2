import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { printRecipe } from "../../src/model/print.js";
import type { Recipe, VariantModel } from "../../src/model/types.js";

const BASE = `halfshade 1
recipe "The glass blower's door"

let throw = 3 m
let reach = 2.2 m

define light strobe {
  shape: disc(18 cm)
  calibration: metered(f/8, at: 2 m, ISO 100)
  distance: throw
  gel: warm(30 mired)
}

room {
  size: 6 x 8 x 3 m
  walls { reflectance: 30 % }
  opening door { wall: left, size: 1 x 2 m, at: offset(left: 3 m, up: 1 m) }
}
set { flat back { size: 2 x 2.4 m, at: offset(behind: 1.5 m) } }
subject { height: 1.7 m }
light key like strobe { role: key, bearing: left(30 deg), height: reach }
light fill like strobe { distance: 2 m, bearing: right(30 deg), elevation: 10 deg, power: 1/4 }
camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }

expect key.angular_size is 3.4 deg within 10 %
`;

const read = (text: string) => compile({ name: "door.light", text });
const codesOf = (text: string): readonly string[] =>
  read(text).diagnostics.map((one) => one.code + (one.severity === "note" ? "?" : ""));

function recipeOf(text: string): Recipe {
  const { recipe, diagnostics } = read(text);
  expect(diagnostics.filter((one) => one.severity === "error")).toEqual([]);
  if (recipe === null) throw new Error("no recipe");
  return withoutOrigins(recipe);
}

function variantsOf(lines: string): readonly VariantModel[] {
  return recipeOf(BASE + lines).variants;
}

/** The set-up of a recipe by itself: what a variant has of it. */
const bare = (recipe: Recipe): Recipe => ({ ...recipe, uses: [], definitions: [], variants: [], later: [] });

/** The base with parts of it replaced, and without what it expects. */
const written = (...pairs: readonly (readonly [was: string, is: string])[]): Recipe => {
  const text = pairs.reduce((all, [was, is]) => {
    if (!all.includes(was)) throw new Error(was);
    return all.replace(was, is);
  }, BASE);
  return bare(recipeOf(text.slice(0, text.indexOf("expect"))));
};

const NOTHING_EXPECTED = "expect key.reserve > -9 stop";
const without = (model: VariantModel): Recipe => ({ ...model.recipe, expectations: [] });

describe("a variant is the recipe as if it had been written so", () => {
  test.each<[what: string, lines: string, wanted: () => Recipe]>([
    ["one value", "key.power: 1/8", () => written(["height: reach", "height: reach, power: 1/8"])],
    ["off, and still there to be named", "fill.power: off", () => written(["power: 1/4", "power: off"])],
    ["a sibling", "key.elevation: 40 deg", () => written(["height: reach", "elevation: 40 deg"])],
    [
      "a value a definition gives",
      "key.distance: 4 m",
      () => written(["role: key", "role: key, distance: 4 m"]),
    ],
    ["a let and all that follows", "throw: 4 m", () => written(["throw = 3 m", "throw = 4 m"])],
    ["a value by a let", "key.distance: reach", () => written(["role: key", "role: key, distance: reach"])],
    ["the camera", "camera.aperture: f/11", () => written(["f/8, shutter", "f/11, shutter"])],
    [
      "a wall at its default",
      "wall.left.reflectance: 5 %",
      () =>
        written(
          ["30 % }\n", "30 % }\n  wall left { reflectance: 5 % }\n"],
          ["  opening door { wall: left, size: 1 x 2 m, at: offset(left: 3 m, up: 1 m) }\n", ""],
        ),
    ],
    ["a light less", "remove fill", () => written([/light fill.*\n/.exec(BASE)?.[0] ?? "", ""])],
    [
      "a light more",
      "light rim like strobe { position: (1 m, 1 m, 2 m) }",
      () => written(["camera {", "light rim like strobe { position: (1 m, 1 m, 2 m) }\ncamera {"]),
    ],
    [
      "a flat more",
      "set { flat wing { size: 1 x 2 m, at: offset(left: 1 m) } }",
      () => written(["1.5 m) } }", "1.5 m) }\n flat wing { size: 1 x 2 m, at: offset(left: 1 m) } }"]),
    ],
    [
      "a wish that was not there",
      "intent.side: short",
      () => written(["camera {", "intent { side: short }\ncamera {"]),
    ],
  ])("%s", (what, lines, wanted) => {
    const removed = what === "a wall at its default" ? "remove door\n" : "";
    const [model] = variantsOf(`variant "B" {\n${removed}${lines}\n${NOTHING_EXPECTED}\n}\n`);
    expect(model && without(model)).toEqual(wanted());
  });

  test("a chain has what all before it changed", () => {
    const [c, b, a] = variantsOf(
      `variant "C" from "B" { key.height: 2 m, ${NOTHING_EXPECTED} }
variant "B" from "A" { remove fill, ${NOTHING_EXPECTED} }
variant "A" { key.elevation: 40 deg, fill.power: 1/8, ${NOTHING_EXPECTED} }\n`,
    );
    expect([c?.title, b?.title, a?.title]).toEqual(["C", "B", "A"]);
    const fill = /light fill.*\n/.exec(BASE)?.[0] ?? "";
    expect(c && without(c)).toEqual(written(["height: reach", "height: 2 m"], [fill, ""]));
    expect(b && without(b)).toEqual(written(["height: reach", "elevation: 40 deg"], [fill, ""]));
    expect(a && without(a)).toEqual(written(["height: reach", "elevation: 40 deg"], ["1/4", "1/8"]));
  });
});

test("expectations are its own, and those it keeps stand before them", () => {
  const own = "expect key.elevation > 1 deg";
  const found = variantsOf(
    `variant "A" { ${own} }
variant "B" from "A" { keep expectations, expect key.elevation > 2 deg }
variant "C" { keep expectations, ${own} }
variant "D" from "C" { keep expectations }
variant "E" from "C" { ${own} }\n`,
  ).map((model) => model.recipe.expectations.map((row) => row.written));
  const base = "expect key.angular_size is 3.4 deg within 10 %";
  expect(found).toEqual([[own], [own, "expect key.elevation > 2 deg"], [base, own], [base, own], [own]]);
});

test("a hold takes the place of one that turns the same dial, and others are had", () => {
  const holds = (lines: string) =>
    variantsOf(lines).map((model) => model.recipe.holds.map((row) => row.written));
  expect(
    holds(`hold face.disc(towards: key) is f/8 by key.power
hold key.angular_size is 4 deg by key.distance
variant "A" { ${NOTHING_EXPECTED} }
variant "B" { hold face.disc(towards: key) by key.power, ${NOTHING_EXPECTED} }\n`),
  ).toEqual([
    ["hold face.disc(towards: key) is f/8 by key.power", "hold key.angular_size is 4 deg by key.distance"],
    ["hold key.angular_size is 4 deg by key.distance", "hold face.disc(towards: key) by key.power"],
  ]);
});

describe("findings stand at the lines of the variant, once", () => {
  const places = (lines: string): readonly string[] => {
    const text = BASE + lines;
    return read(text).diagnostics.map(
      ({ code, place, related }) =>
        `${code} ${text.slice(place.start, place.end)}${related.map((row) => ` | ${text.slice(row.place.start, row.place.end)}`).join("")}`,
    );
  };

  test.each<[string, string, readonly string[]]>([
    [
      "a value that does not fit",
      `variant "B" { key.distance: 30 deg, ${NOTHING_EXPECTED} }`,
      ["unit.wrong 30 deg"],
    ],
    [
      "an unknown name in a value",
      `variant "B" { key.aim: bench, ${NOTHING_EXPECTED} }`,
      ["name.unknown bench"],
    ],
    [
      "two values for one",
      `variant "B" { key.power: 1/2, key.power: 1/4, ${NOTHING_EXPECTED} }`,
      ["property.twice power | power"],
    ],
    [
      "two ways to place a light",
      `variant "B" { key.height: 2 m, key.elevation: 40 deg, ${NOTHING_EXPECTED} }`,
      ["placement.twice key.elevation: 40 deg | key.height: 2 m"],
    ],
    [
      "what another block still names",
      `variant "A" { fill.aim: key, ${NOTHING_EXPECTED} }\nvariant "B" from "A" { remove key\n expect fill.reserve > -9 stop }`,
      ["name.unknown remove key | key"],
    ],
    [
      "what a kept expectation names",
      'variant "B" { remove key\n keep expectations }',
      ["name.unknown keep expectations | key.angular_size"],
    ],
    [
      "a mistake of a variant is not said again by those that come from it",
      `variant "A" { key.distance: 30 deg, ${NOTHING_EXPECTED} }\nvariant "B" from "A" { keep expectations }`,
      ["unit.wrong 30 deg"],
    ],
    [
      "a path into a block that only the variant before it has",
      `variant "A" { light rim like strobe { position: (1 m, 1 m, 2 m) }\n ${NOTHING_EXPECTED} }\nvariant "B" from "A" { rim.power: 1/2, rmi.power: 1/2, keep expectations }`,
      ["path.unknown rmi"],
    ],
    ["a circle", 'variant "A" from "B" { }\nvariant "B" from "A" { }', ['variant.circle "B"']],
    ["a base of itself", 'variant "A" from "A" { }', ['variant.circle "A"']],
    ["a base that is not", `variant "A" from "Z" { }`, ['variant.unknown "Z"']],
  ])("%s", (_, lines, wanted) => {
    expect(places(lines)).toEqual(wanted);
  });

  test("nothing about a mistake of the recipe is said again for its variants", () => {
    const broken = BASE.replace("height: 1.7 m", "height: 1.7 deg");
    const codes = codesOf(broken);
    expect(codes).not.toEqual([]);
    expect(codesOf(`${broken}variant "A" { key.power: 1/2\n keep expectations }\n`)).toEqual(codes);
  });

  test("a let that only the recipe uses is no finding of a variant", () => {
    expect(codesOf(`${BASE}variant "A" { key.height: 2 m\n keep expectations }\n`)).toEqual([]);
    expect(codesOf(`${BASE}variant "A" { key.height: 2 m }\n`)).toEqual(["variant.unchecked?"]);
  });
});

const many = `
variant "A" {
  throw: 4 m
  key.elevation: 40 deg
  ${NOTHING_EXPECTED}
}
`;

test.each([
  ["a let", many],
  ["a chain", `${many}variant "B" from "A" { remove fill, reach: 1.8 m, keep expectations }\n`],
  [
    "a block anew",
    `variant "B" { remove key\n light key { shape: sphere(9 cm), output: 800 lm, position: (1 m, -1 m, 2 m) }\n keep expectations }\n`,
  ],
  [
    "parts",
    `variant "B" { remove back\n set { flat wing { size: 1 x 2 m, at: offset(left: 1 m) } }\n room.wall.left.reflectance: 3 %\n remove opening.door\n keep expectations }\n`,
  ],
  [
    "settings",
    `tolerances { tape: 5 cm, angle: 2 deg }\nvariant "B" { tolerances.tape: 1 cm\n remove tolerances.angle\n keep expectations }\n`,
  ],
  [
    "a wish and a hold",
    `variant "B" { intent.side: short\n hold face.disc(towards: key) is f/8 by key.power\n keep expectations }\n`,
  ],
  [
    "a point of the subject",
    `variant "B" { subject { point hand { at: offset(up: 1 m) } }\n keep expectations }\n`,
  ],
  ["nothing", 'variant "B" { keep expectations }\n'],
])("text, model, text: %s", (_, lines) => {
  const model = recipeOf(BASE + lines);
  expect(model.variants.length).toBeGreaterThan(0);
  const printed = printRecipe(model);
  expect(recipeOf(printed)).toEqual(model);
  expect(printRecipe(recipeOf(printed))).toBe(printed);
});

test("a variant is itself a recipe that can be printed and read", () => {
  const [, b] = variantsOf(`${many}variant "B" from "A" { remove fill, keep expectations }\n`);
  if (b === undefined) throw new Error("no variant");
  expect(recipeOf(printRecipe(b.recipe))).toEqual(b.recipe);
});
