import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CompileOptions, compile } from "../../src/compile.js";
import * as library from "../../src/index.js";
import {
  block,
  camera,
  change,
  changeLet,
  cm,
  column,
  define,
  deg,
  disc,
  expectation,
  fNumber,
  halfshade,
  hold,
  isLess,
  isMore,
  iso,
  isTrue,
  isUnder,
  isWithin,
  kit,
  kitsAmong,
  left,
  letValue,
  light,
  like,
  m,
  measuredReading,
  measuredSetting,
  metered,
  mm,
  named,
  number,
  percent,
  plus,
  proportion,
  type Recipe,
  reading,
  recipe,
  reflecting,
  removeBlock,
  removeProperty,
  result,
  resultOf,
  session,
  set,
  shutterOneOver,
  silence,
  size,
  stops,
  subject,
  sweepLet,
  sweepLight,
  sweepLike,
  sweepProperty,
  sweepVariants,
  table,
  tape,
  tolerances,
  use,
  withVariant,
} from "../../src/index.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { printRecipe } from "../../src/model/print.js";
import { results } from "../../src/vocabulary/results.js";
import { mustBreak } from "../helpers/must-break.js";
import { runs } from "../helpers/runs.js";
import { drawFrom } from "./random/draw.js";
import { anyResult, withStatements } from "./random/statements.js";
import { anyWorld } from "./random/world.js";

/** Reads a text that has to be sound. */
function read(text: string, options: CompileOptions = {}): Recipe {
  const { diagnostics, recipe: made } = compile({ name: "made", text }, options);
  const errors = diagnostics.filter(({ severity }) => severity === "error");
  expect(errors.map(({ code, place }) => `${code}: ${text.slice(place.start, place.end)}`)).toEqual([]);
  if (made === null) throw new Error("no recipe");
  return withoutOrigins(made);
}

const comesBack = (made: Recipe, options: CompileOptions = {}): void =>
  expect(read(printRecipe(made), options)).toEqual(made);

const strobe = light("strobe", {
  shape: disc(cm(60)),
  calibration: metered(fNumber(11), m(2), iso(100)),
});

const key = like(strobe, "key", { distance: tape(m(2)), bearing: left(deg(40)), height: m(2.1) });

const plain = recipe("Made by code", {
  subjects: [subject(null, { height: m(1.7) })],
  lights: [key],
  camera: camera({
    held: "upright",
    focal_length: mm(85),
    aperture: fNumber(8),
    shutter: shutterOneOver(125),
    sensitivity: iso(100),
    distance: tape(m(3)),
    height: m(1.5),
  }),
});

const face = reading("face", { towards: named("key") });

describe("statements made by code", () => {
  test("print as text that gives the same model", () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => void comesBack(withStatements(seed))),
      runs(120),
    );
  });

  test("are tried with every result and every argument of the vocabulary", () => {
    const world = anyWorld(drawFrom(5));
    expect([world.lights.length, world.subjects.length].map((count) => count > 0)).toEqual([true, true]);
    for (const row of results) {
      const seen = new Set<string>();
      for (let seed = 0; seed < 40; seed++) {
        const said = anyResult(drawFrom(seed), world, row);
        if (said.expr.kind === "result") for (const { name } of said.expr.args) seen.add(name);
      }
      expect([...seen].sort(), row.name).toEqual(row.args.map(({ name }) => name).sort());
    }
  });

  test("fail where a claim prints as another", () => {
    mustBreak(() => {
      const made = { ...plain, expectations: [expectation(isMore(resultOf("key", "angular_size"), deg(9)))] };
      expect(read(printRecipe(made).replace("> 9 deg", ">= 9 deg"))).toEqual(made);
    });
  });

  test("say what the same text says", () => {
    const gap = letValue("gap", cm(12));
    const made = withVariant(
      {
        ...plain,
        lets: [gap.kept],
        tolerances: tolerances({ tape: cm(3), meter: stops(0.2) }),
        silence: [silence("lamp-in-frame", "it is meant to be seen")],
        expectations: [
          expectation(
            [
              isLess(resultOf("key", "shadow_edge", { gap: cm(12) }), cm(9)),
              isWithin(result("lit_to_shadow", { face: "face" }), proportion(3, 1), stops(0.5)),
            ],
            { surely: true, because: 'the "chin" shows' },
          ),
          expectation(isUnder(reading("shaded_cheek"), stops(1), face, stops(0.5))),
          expectation(isTrue(result("no_warnings"))),
        ],
        holds: [hold(face, [{ light: "key", property: "power" }], fNumber(8))],
      },
      "Closer",
      [change("light", "key", { distance: tape(m(1.2)) }), changeLet("gap", cm(10))],
      { keepExpectations: true },
    );
    const written = halfshade`halfshade 1
recipe "Made by code"
let gap = 12 cm
subject { height: 1.7 m }
light key {
  shape: disc(60 cm)
  calibration: metered(f/11, at: 2 m, ISO 100)
  distance: 2 m
  bearing: left(40 deg)
  height: 2.1 m
}
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m
}
tolerances { tape: 3 cm, meter: 0.2 stop }
silence { \`lamp-in-frame\`: "it is meant to be seen" }
expect surely key.shadow_edge(gap: 12 cm) < 9 cm and lit_to_shadow(face) is 3:1 within 0.5 stop because ${'the "chin" shows'}
expect shaded_cheek is 1 stop under face.disc(towards: key) within 0.5 stop
expect no_warnings
hold face.disc(towards: key) is f/8 by key.power
variant "Closer" { key.distance: 1.2 m, gap: 10 cm, keep expectations }
`;
    expect(made).toEqual(withoutOrigins(written));
  });

  test("have places of any name behind surely", () => {
    const between = like(strobe, "between", { distance: tape(m(2)), height: m(2.1) });
    const is = like(strobe, "is", { distance: tape(m(2)), height: m(2.1) });
    for (const one of [between, is]) {
      const claim = isMore(resultOf(one.name ?? "", "angular_size"), deg(9));
      comesBack({ ...plain, lights: [one], expectations: [expectation(claim, { surely: true })] });
    }
  });
});

describe("definitions, kits and sessions made by code", () => {
  test("are read as what they were made of", () => {
    const kits = new Map([["kit.light", printRecipe(kit("Heads", { definitions: [define(strobe)] }))]]);
    const options = { read: kitsAmong(kits) };
    comesBack(kit("Heads", { definitions: [define(strobe)] }));
    comesBack({ ...plain, uses: [use("./kit.light", "strobe")] }, options);
    comesBack({ ...plain, definitions: [define(strobe)] });
    expect(() => define(camera({}))).toThrow(TypeError);
  });

  test("a block like another has its properties, its own first, and neither place twice", () => {
    const placed = light(
      "a",
      { position: library.at(m(1), m(0), m(2)), shape: disc(cm(60)), loses: stops(1) },
      [block("stand", null, { weight: library.kg(3) })],
    );
    const own = like(placed, "b", { distance: tape(m(2)), loses: stops(2) });
    expect(own).toEqual(
      light("b", { shape: disc(cm(60)), distance: tape(m(2)), loses: stops(2) }, [
        block("stand", null, { weight: library.kg(3) }),
      ]),
    );
    const other = like(placed, "c", {}, [block("stand", null, { weight: library.kg(2) })]);
    expect(other.parts).toEqual([block("stand", null, { weight: library.kg(2) })]);
  });

  test("a session gives what was measured", () => {
    const day = session("The day", "./plan.light", [
      measuredSetting("light", "key", { distance: tape(m(2.1)) }),
      measuredReading(face, fNumber(7.1), stops(0.2)),
    ]);
    const options = { read: kitsAmong(new Map([["plan.light", printRecipe(plain)]])) };
    const compiled = compile({ name: "day.light", text: printRecipe(day) }, options);
    expect(compiled.recipe === null ? null : withoutOrigins(compiled.recipe)).toEqual(day);
    const [measured] = compiled.session?.readings ?? [];
    expect([measured?.what, measured?.tolerance]).toEqual(["face.disc(towards: key)", 0.2]);
    expect(compiled.session?.built.lights[0]?.distance?.length.value).toBe(2.1);
  });

  test("a session of a variant says which, and reads back", () => {
    const day = session("The day", "./plan.light", [measuredReading(face, fNumber(7.1))], {
      variant: 'Half "x"',
    });
    const text = printRecipe(day);
    expect(text).toContain('session "The day" of "./plan.light" variant "Half \\"x\\""');
    const compiled = compile({ name: "day.light", text });
    expect(compiled.recipe === null ? null : withoutOrigins(compiled.recipe)).toEqual(day);
  });
});

describe("variants made by code", () => {
  const two = {
    ...plain,
    lights: [key, like(key, "fill", { gel: library.gels(library.gel("warm", library.mired(60), stops(0))) })],
  };

  test("take away, put in and change, one from the other", () => {
    const first = withVariant(two, "No fill", [removeBlock("light", "fill")]);
    const second = withVariant(
      first,
      "No fill, farther",
      [change("light", "key", { position: library.at(m(-1), m(-2), m(2)) })],
      { from: "No fill" },
    );
    const third = withVariant(second, "Bare fill", [removeProperty("light", "fill", "gel")], {
      holds: [hold(face, [{ light: "key", property: "power" }])],
      expectations: [expectation(isMore(resultOf("key", "angular_size"), deg(9)))],
    });
    comesBack(third);
    const moved = third.variants[1]?.recipe.lights;
    expect(moved?.map(({ name, distance, height }) => [name, distance, height])).toEqual([
      ["key", undefined, undefined],
    ]);
  });

  test("put blocks into others, by kind and name", () => {
    const flat = block("flat", "back", { size: size(m(2), m(2)), at: library.at(m(0), m(1.5), m(0)) });
    const made = withVariant({ ...plain, set: set() }, "With a flat", [
      library.addBlock(flat, { kind: "set", name: null }),
    ]);
    comesBack(made);
    expect(made.variants[0]?.recipe.set?.parts).toEqual([flat]);
  });

  test("refuse what is not there, and titles twice", () => {
    expect(() => withVariant(plain, "x", [removeBlock("light", "rim")])).toThrow("no `light rim`");
    expect(() => withVariant(plain, "x", [removeProperty("light", "key", "gel")])).toThrow("has no gel");
    expect(() => withVariant(plain, "x", [changeLet("gap", cm(1))])).toThrow("no `let` gap");
    const gap = letValue("gap", cm(12));
    const edge = isLess(resultOf("key", "shadow_edge", { gap: gap.value }), cm(9));
    const bound = { ...plain, lets: [gap.kept], expectations: [expectation(edge)] };
    const closer = [changeLet("gap", cm(1))];
    expect(() => withVariant(bound, "x", closer, { keepExpectations: true })).toThrow("say it there anew");
    expect(() => withVariant(bound, "x", [], { keepExpectations: true })).not.toThrow();
    comesBack(
      withVariant(bound, "x", closer, {
        expectations: [
          expectation(isLess(resultOf("key", "shadow_edge", { gap: letValue("gap", cm(1)).value }), cm(9))),
        ],
      }),
    );
    expect(() => withVariant(plain, "x", [], { from: "y" })).toThrow('no variant "y"');
    const once = withVariant(plain, "x", []);
    expect(() => withVariant(once, "x", [])).toThrow("already");
    expect(() => withVariant(plain, "x", [library.addBlock(camera({}))])).toThrow("already");
  });
});

describe("tables made by code", () => {
  const size = resultOf("key", "angular_size");
  const gap = letValue("gap", cm(12));
  const tabled = (...tables: Recipe["tables"]): Recipe => ({
    ...plain,
    lets: [gap.kept],
    definitions: [define(strobe)],
    set: set(
      block("flat", "back", {
        size: library.size(m(2), m(2)),
        at: library.at(m(0), m(1.5), m(0)),
        reflectance: reflecting(percent(20)),
      }),
    ),
    tables,
  });

  test("sweep lamps, lets, pieces of the set and variants", () => {
    const columns = [column(size, { unit: "deg", title: "Size" }), column(face)] as const;
    comesBack(
      tabled(
        table(
          "a",
          [sweepLight("key", "distance", { from: tape(m(1)), to: tape(m(4)), step: cm(50) })],
          columns,
          {
            note: "closer",
            worksheet: ["Size"],
            holds: [hold(face, [{ light: "key", property: "power" }], fNumber(8))],
          },
        ),
        table(
          "b",
          [sweepLight("key", "bearing", { from: left(deg(60)), to: library.right(deg(60)), count: 5 })],
          columns,
        ),
        table(
          "c",
          [sweepLet("gap", { from: cm(10), to: cm(20), count: 3 })],
          [column(plus(resultOf("key", "shadow_edge", { gap: gap.value }), cm(1)), { unit: "mm" })],
        ),
        table(
          "d",
          [sweepProperty("flat", "back", "reflectance", [reflecting(percent(5)), reflecting(percent(80))])],
          columns,
        ),
        table("e", [sweepVariants([null])], columns),
      ),
    );
  });

  test("sweep the definition that a block is like, where the text has the block so", () => {
    const other = light("small", { shape: disc(cm(20)), calibration: metered(fNumber(11), m(2), iso(100)) });
    const made = table("f", [sweepLike("key", ["strobe", "small"])], [column(size)]);
    const text = printRecipe(tabled(made))
      .replace(/light key \{\n {2}shape.*\n {2}calibration.*\n/, "light key like strobe {\n")
      .replace("define light strobe", `${define(other).written}\n\ndefine light strobe`);
    expect(read(text).tables).toEqual([made]);
  });

  test("work out the same rows as the text", () => {
    const made = tabled(
      table("a", [sweepLight("key", "distance", [tape(m(1)), tape(m(2))])], [column(size)]),
    );
    const [rows] = library.tablesOf(library.checkRecipe(made)).map((one) => [...one.work()]);
    // A disc of 60 cm at 2 m, from its middle: 2 atan(0.3 / 2) is 17.06 deg; at 1 m, 2 atan(0.3) is 33.40 deg.
    expect(rows?.map((row) => row.map(({ value }) => Number(value?.toFixed(2))))).toEqual([
      [1, 33.4],
      [2, 17.06],
    ]);
  });

  test("refuse steps of another kind, and units of another kind", () => {
    expect(() => sweepLight("key", "power", { from: library.full, to: library.off, count: 3 })).toThrow(
      "no steps",
    );
    expect(() => sweepLight("key", "height", { from: m(1), to: m(2), step: deg(1) })).toThrow("no step");
    expect(() => sweepLight("key", "height", { from: m(1), to: m(2), count: 1.5 })).toThrow("whole number");
    expect(() => column(size, { unit: "m" })).toThrow("not shown in m");
  });
});

describe("the types of results", () => {
  test("refuse what has no meaning, before anything runs", () => {
    const size = resultOf("key", "angular_size");
    const wrong: readonly (() => unknown)[] = [
      // @ts-expect-error an angle is not compared with a length
      () => isMore(size, m(1)),
      // @ts-expect-error a reading is judged in stops
      () => isWithin(face, fNumber(8), percent(5)),
      // @ts-expect-error truth is not compared
      () => isMore(result("no_warnings"), number(1)),
      // @ts-expect-error an angle and a length do not add up
      () => plus(size, m(1)),
    ];
    for (const run of wrong) expect(run).toThrow(TypeError);
    // @ts-expect-error there is no such result
    expect(() => resultOf("key", "angular_sise")).toThrow(TypeError);
    // @ts-expect-error `stops` needs two readings
    result("stops", { a: face });
    // @ts-expect-error a gap is a length
    resultOf("key", "shadow_edge", { gap: deg(1) });
    // @ts-expect-error a warning about safety is not silenced
    silence("stand-tip", "because");
    // @ts-expect-error a tape is off by a length
    tolerances({ tape: deg(1) });
    expect(() => plus(proportion(3, 1), stops(1) as never)).toThrow("work it out in the program");
  });
});
