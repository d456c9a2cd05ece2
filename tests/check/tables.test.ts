import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { sweepLabel } from "../../src/model/tables/sweep-label.js";
import { sweepLength, sweepValue } from "../../src/model/tables/sweep-value.js";
import type { SweepModel } from "../../src/model/tables/types.js";

const recipe = (...lines: readonly string[]): string => `halfshade 1
recipe "Two lamps in the net loft"

let throw = 2.6 m

define light bench { shape: disc(18 cm), calibration: metered(f/8, at: 2 m, ISO 100), full_power: 400 Ws }
define light small { shape: disc(8 cm), calibration: metered(f/4, at: 2 m, ISO 100) }

room { size: 5 x 7 x 3 m, walls { reflectance: 40 % } }
subject { height: 1.7 m }

light key like bench { role: key, power: 1/2, distance: throw, bearing: left(35 deg), height: 2.3 m }
light fill like small { distance: 3 m, bearing: right(30 deg), height: 1.8 m }

camera {
  held: upright, focal_length: 85 mm, aperture: f/5.6, shutter: 1/125 s, sensitivity: ISO 100
  distance: 3.2 m, height: 1.5 m
}

variant "No fill" { remove fill, keep expectations }
expect key.angular_size < 20 deg

table "Lesson" {
${lines.map((line) => `  ${line}\n`).join("")}}
`;

const show = "show key.angular_size as deg";
const checked = (...lines: readonly string[]) => compile({ name: "a.light", text: recipe(...lines) });
const codes = (...lines: readonly string[]): readonly string[] =>
  checked(...lines).diagnostics.map((one) => one.code);

function sweep(line: string): SweepModel {
  const compiled = checked(line, show);
  expect(compiled.diagnostics.filter((one) => one.severity === "error")).toEqual([]);
  return compiled.recipe?.tables[0]?.sweeps[0] as SweepModel;
}

const values = (line: string): readonly string[] => {
  const found = sweep(line);
  return Array.from({ length: sweepLength(found) }, (_, i) => sweepValue(found, i).written);
};

describe("values of a sweep", () => {
  test.each([
    ["sweep key.distance over [1 m, 140 cm, 6 ft]", ["1 m", "140 cm", "6 ft"]],
    ["sweep key.distance from 1 m to 3 m step 50 cm", ["1 m", "1.5 m", "2 m", "2.5 m", "3 m"]],
    ["sweep key.height from 3 m to 1 m step 1 m", ["3 m", "2 m", "1 m"]],
    ["sweep key.height from 1 m to 2 m count 3", ["1 m", "1.5 m", "2 m"]],
    ["sweep key.height from 2 m to 2 m step 1 m", ["2 m"]],
    [
      "sweep key.distance from 0.1 m to 0.7 m step 0.1 m",
      "0.1 0.2 0.3 0.4 0.5 0.6 0.7".split(" ").map((n) => `${n} m`),
    ],
    ["sweep key.elevation from 0 deg to 60 deg step 20 deg", ["0 deg", "20 deg", "40 deg", "60 deg"]],
    ["sweep walls.reflectance from 5 % to 80 % step 25 %", ["5 %", "30 %", "55 %", "80 %"]],
    ["sweep throw from 1 m to 2 m step 1 m", ["1 m", "2 m"]],
    [
      "sweep key.power from full to 1/8 step 1 stop",
      ["full", "full - 1 stop", "full - 2 stop", "full - 3 stop"],
    ],
    ["sweep key.power from 400 Ws to 100 Ws step 1 stop", ["400 Ws", "200 Ws", "100 Ws"]],
    ["sweep key.power from 100 Ws to 400 Ws step 100 Ws", ["100 Ws", "200 Ws", "300 Ws", "400 Ws"]],
    // The nominal series in full stops: ISO 517 (apertures), ISO 12232 (sensitivities); from memory.
    ["sweep camera.aperture from f/2.8 to f/11 step 1 stop", ["f/2.8", "f/4", "f/5.6", "f/8", "f/11"]],
    ["sweep camera.aperture from f/4 to f/5.6 step 1/3 stop", ["f/4", "f/4.5", "f/5", "f/5.6"]],
    [
      "sweep camera.sensitivity from ISO 100 to ISO 800 step 1 stop",
      ["ISO 100", "ISO 200", "ISO 400", "ISO 800"],
    ],
    ["sweep camera.shutter from 1/250 s to 1/30 s step 1 stop", ["1/250 s", "1/125 s", "1/60 s", "1/30 s"]],
    [
      "sweep key.bearing from left(60 deg) to right(60 deg) step 60 deg",
      ["left(60 deg)", "left(0 deg)", "right(60 deg)"],
    ],
    ['sweep variant over [base, "No fill"]', ["base", '"No fill"']],
    ["sweep key.like over [bench, small]", ["bench", "small"]],
    ["sweep key over [bench, small]", ["bench", "small"]],
    ["sweep key.shape over [disc(8 cm), rectangle(60 x 90 cm)]", ["disc(8 cm)", "rectangle(60 x 90 cm)"]],
  ])("%s", (line, expected) => {
    expect(values(line)).toEqual(expected);
  });

  test("an aperture of a stepped sweep is the exact one: 1 stop is the square root of 2", () => {
    const found = sweep("sweep camera.aperture from f/2.8 to f/11 step 1 stop");
    const numbers = [0, 1, 2, 3, 4].map((i) => (sweepValue(found, i).value as { value: number }).value);
    for (const [i, number] of numbers.entries()) expect(number).toBeCloseTo(Math.sqrt(8 * 2 ** i), 12);
  });

  test("a step that does not meet the end stops before it, and a note says so", () => {
    expect(values("sweep key.distance from 1 m to 2 m step 30 cm")).toEqual([
      "1 m",
      "1.3 m",
      "1.6 m",
      "1.9 m",
    ]);
    expect(codes("sweep key.distance from 1 m to 2 m step 30 cm", show)).toEqual(["sweep.rest"]);
    expect(codes("sweep key.distance from 1 m to 2 m step 1000000000000 m", show)).toEqual(["sweep.rest"]);
    expect(codes("sweep key.distance from 1 m to 1 m step 1 m", show)).toEqual([]);
  });

  test("labels are what people read", () => {
    const power = sweep("sweep key.power from full to 1/8 step 1 stop");
    expect([0, 1, 2, 3].map((i) => sweepLabel(power, i))).toEqual(["full", "1/2", "1/4", "1/8"]);
    const thirds = sweep("sweep key.distance from 1 m to 2 m count 4");
    expect([0, 1, 2, 3].map((i) => sweepLabel(thirds, i))).toEqual(["1 m", "1.33 m", "1.67 m", "2 m"]);
    const sides = sweep("sweep key.bearing from left(10 deg) to right(10 deg) count 4");
    expect(sweepLabel(sides, 0)).toBe("left(10 deg)");
    expect(sweepLabel(sides, 2)).toBe("right(3.3 deg)");
  });
});

describe("refused", () => {
  test.each([
    [["sweep key.distance from 1 m to 4 m step 0 m", show], "sweep.step"],
    [["sweep key.distance from 1 m to 4 m step -1 m", show], "sweep.step"],
    [["sweep key.distance from 1 m to 4 m step 0.0000000001 m", show], "limit.rows"],
    [["sweep key.distance from 1 m to 4 m count 10001", show], "limit.rows"],
    [
      ["sweep key.distance from 1 m to 2 m count 101", "sweep key.height from 1 m to 2 m count 100", show],
      "limit.rows",
    ],
    [["sweep key.distance from 1 m to 4 m count 0", show], "sweep.count"],
    [["sweep key.distance from 1 m to 4 m step 1 deg", show], "sweep.step-unit"],
    [["sweep camera.aperture from f/4 to f/8 step f/1", show], "sweep.step-unit"],
    [["sweep key.power from 1/4 to 200 Ws step 1 stop", show], "sweep.ends"],
    [["sweep key.distance from 1 m", show], "statement.part"],
    [["sweep key.power from off to full step 1 stop", show], "sweep.ends"],
    [["sweep key.distance over [1 deg]", show], "unit.wrong"],
    [["sweep key.distance over [1 m, 2000 m]", show], "value.range"],
    [["sweep key.elevation from 0 deg to 700 deg step 10 deg", show], "value.range"],
    [["sweep kye.distance over [1 m]", show], "path.unknown"],
    [["sweep key.distnace over [1 m]", show], "property.unknown"],
    [["sweep throw over [1 deg]", show], "unit.wrong"],
    [["sweep key.distance over [1 m]", "show key.angular_sise"], "result.unknown"],
    [["sweep key.distance over [1 m]", "show key.angular_size as mm"], "table.unit"],
    [["sweep key.distance over [1 m]", "show lit_to_shadow(face) as deg"], "table.unit"],
    [["sweep key.distance over [1 m]", "show face"], "reading.meter"],
    [["sweep key.distance over [1 m]", "sweep key.distance over [2 m]", show], "sweep.same"],
    [["sweep key.distance over [1 m]", "sweep key.floor_distance over [2 m]", show], "sweep.same"],
    [["sweep key.height over [1.7 m]", "sweep key.elevation over [20 deg]", show], "sweep.same"],
    [
      ["sweep camera.position over [(0 m, -3 m, 1.5 m)]", "sweep camera.distance over [2 m]", show],
      "sweep.same",
    ],
    [["sweep key.distance over [1 m]", show, "note: 3 m"], "value.type"],
  ] as const)("%j is %s", (lines, code) => {
    const found = checked(...lines).diagnostics.filter((one) => one.severity === "error");
    expect(found.map((one) => one.code)).toEqual([code]);
    const text = recipe(...lines);
    expect(found[0]?.place.start).toBeGreaterThan(text.indexOf("table"));
  });

  test("two sweeps of one lamp that say different things go together", () => {
    const found = checked(
      "sweep key.distance over [1 m]",
      "sweep key.elevation over [20 deg]",
      show,
    ).diagnostics;
    expect(found.filter((one) => one.severity === "error")).toEqual([]);
  });

  test("a library may allow more rows, and fewer", () => {
    const text = recipe("sweep key.distance from 1 m to 4 m count 20000", show);
    const more = compile({ name: "a.light", text }, { tables: { rows: 50_000, cells: 500_000 } });
    expect(more.sound).toBe(true);
    const less = compile(
      { name: "a.light", text: recipe("sweep key.distance over [1 m, 2 m, 3 m]", show) },
      { tables: { rows: 2, cells: 100 } },
    );
    expect(less.diagnostics.map((one) => one.code)).toEqual(["limit.rows"]);
  });
});

test("a table and its settings are kept in the model, and print back", () => {
  const compiled = checked(
    "sweep key.distance over [1 m]",
    'show key.angular_size as deg "Size"',
    'worksheet: ["Size"]',
    'note: "Small."',
  );
  expect(compiled.recipe?.tables[0]).toMatchObject({ title: "Lesson", note: "Small.", worksheet: ["Size"] });
});
