import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import { plain } from "../../../src/diagnostics/print-paint.js";
import { differences } from "../../../src/model/differences.js";
import {
  renderComparisonCsv,
  renderComparisonMarkdown,
  renderComparisonText,
} from "../../../src/render/comparison.js";
import { type Comparison, compare } from "../../../src/report/compare/compare.js";
import { evaluateSetUps } from "../../../src/set-ups.js";

const TEXT = `halfshade 1
recipe "The glass blower's door"
let throw = 2 m
subject { height: 1.75 m }
light key { role: key, shape: sphere(10 cm), calibration: metered(f/16, at: 2 m, ISO 100), power: 1/2, distance: throw, bearing: left(40 deg), elevation: 20 deg }
light fill { shape: disc(1 m), calibration: metered(f/5.6, at: 2 m, ISO 100), distance: 2 m, bearing: right(30 deg), elevation: 10 deg }
camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
`;

function comparisonOf(lines: string): Comparison {
  const { recipe, diagnostics } = compile({
    name: "a.light",
    text: `${TEXT}variant "B" { ${lines}\n keep expectations }\n`,
  });
  expect(diagnostics.filter((one) => one.severity === "error")).toEqual([]);
  if (recipe === null) throw new Error("no recipe");
  const [a, b] = evaluateSetUps(recipe, { holdRecipe: true });
  if (a === undefined || b === undefined) throw new Error("no set-ups");
  return compare(
    { label: "the recipe", report: a.report, held: a.held },
    { label: '"B"', report: b.report, held: b.held },
    differences(a.recipe, b.recipe),
  );
}

const changeOf = ({ light }: Comparison, what: string): number | null =>
  light.find((row) => row.what === what)?.change ?? null;

describe("two set-ups", () => {
  test("half the distance of a bulb alone: two stops, twice the size, twice the edge", () => {
    // Inverse square of a sphere: 2 log2(2) = 2 stop. Angle 2 asin(r/d). Edge w = s 2r / sqrt(d^2 - r^2).
    const found = comparisonOf("throw: 1 m\n fill.power: off");
    expect(found.changes).toEqual([
      { path: "throw", before: "2 m", after: "1 m" },
      { path: "key.distance", before: "2 m", after: "1 m" },
      { path: "fill.power", before: null, after: "off" },
    ]);
    const key = comparisonOf("throw: 1 m\n remove fill");
    expect(changeOf(key, "key: angular size")).toBeCloseTo(Math.asin(0.05) / Math.asin(0.025) - 1, 6);
    const edge = Math.sqrt((4 - 0.0025) / (1 - 0.0025)) - 1;
    expect(changeOf(key, "key: shadow edge, 10 cm behind")).toBeCloseTo(edge, 6);
    expect(changeOf(key, "key: elevation")).toBeCloseTo(0, 9);
  });

  test("a stop of power is a stop of every reading that the lamp makes alone", () => {
    const found = comparisonOf("key.power: 1/4\n fill.power: full - 1 stop");
    const readings = found.light.filter((row) => row.what.startsWith("face") && row.scale === "stops");
    expect(readings.length).toBeGreaterThan(0);
    for (const row of readings) expect(row.change).toBeCloseTo(-1, 9);
    expect(found.light.filter((row) => row.what === "lit_to_shadow(face)").map((row) => row.matters)).toEqual(
      [false],
    );
  });

  test("what only one of them has stands beside nothing", () => {
    const found = comparisonOf("remove fill");
    expect(found.changes).toEqual([
      { path: "fill", before: expect.stringContaining("light: shape: disc(1 m)"), after: null },
    ]);
    const row = found.light.find(({ what }) => what === "fill: angular size");
    expect(row).toMatchObject({ after: null, change: null, shown: null, matters: true });
  });

  test("noise is marked and not shown, unless all is asked for", () => {
    const found = comparisonOf("key.distance: 2.005 m");
    expect(found.light.some((row) => row.matters)).toBe(false);
    const view = { width: 100, paint: plain };
    expect(renderComparisonText(found, { ...view, all: false })).toContain("The light is the same.");
    expect(renderComparisonText(found, { ...view, all: true })).toContain("key: angular size");
  });

  test("warnings that come and go, and what was turned", () => {
    const found = comparisonOf("key.distance: 0.9 m\n hold face.disc(towards: key) by key.power");
    expect(found.held).toEqual([
      expect.objectContaining({
        in: '"B"',
        by: "key.power",
        setting: expect.stringMatching(/^full - \d\.\d stop$/),
        reason: null,
      }),
    ]);
    // So near, the bulb stands before the camera's side of the face and looks into the lens.
    expect(found.appeared.map((row) => row.code)).toContain("flare");
    const back = comparisonOf("key.distance: 2 m");
    expect([back.gone, back.appeared, back.changes]).toEqual([[], [], []]);
  });
});

test("every form holds the same rows, and a text of a user does no harm in it", () => {
  const found = comparisonOf("throw: 1 m\n hold face.disc(towards: key) by key.power");
  const hostile: Comparison = { ...found, after: "\u001b[31m|=1+1" };
  const text = renderComparisonText(hostile, { width: 60, paint: plain, all: false });
  const markdown = renderComparisonMarkdown(hostile, false);
  const csv = renderComparisonCsv([hostile], false);
  const shown = found.light.filter((row) => row.matters);
  expect(shown.length).toBeGreaterThan(3);
  const flat = (form: string): string => form.replace(/\\/g, "").replace(/\s+/g, " ");
  for (const { shown: change } of shown)
    for (const form of [text, markdown]) expect(flat(form)).toContain(change);
  expect(csv.split("\r\n").filter((line) => line.startsWith('"light"')).length).toBe(shown.length);
  for (const form of [text, markdown]) expect(form).not.toContain("\u001b");
  // A spreadsheet would run a cell that starts with a sign as a formula.
  expect(renderComparisonCsv([{ ...found, after: "=1+1" }], false)).toContain(`"'=1+1"`);
  expect(text.split("\n").every((line) => line.length <= 60)).toBe(true);
});
