import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { formatText } from "../../src/format/format.js";
import { run, tablesOf } from "../../src/pipeline.js";
import type { Table, TableRow } from "../../src/tables/types.js";
import { canonicalUnit } from "../../src/units/spellings.js";

const folder = new URL("../../examples/lessons/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".light"));
const textOf = (name: string): string => readFileSync(new URL(name, folder), "utf8");

const kept = new Map<string, { readonly table: Table; readonly rows: readonly TableRow[] }>();

/** The table of a lesson with its rows, worked out once. */
function lesson(name: string): { readonly table: Table; readonly rows: readonly TableRow[] } {
  const before = kept.get(name);
  if (before !== undefined) return before;
  const table = tablesOf(compile({ name, text: textOf(`${name}.light`) }))[0] as Table;
  const made = { table, rows: [...table.work()] };
  kept.set(name, made);
  return made;
}

/** The number in a column of the row whose first cells read so. */
function at(name: string, keys: readonly string[], title: string): number | null {
  const { table, rows } = lesson(name);
  const row = rows.find((cells) => keys.every((key, i) => cells[i]?.text === key));
  const column = table.columns.findIndex((one) => one.title === title);
  expect(row, `${name} has no row ${keys.join(", ")}`).toBeDefined();
  expect(column).toBeGreaterThanOrEqual(0);
  return row?.[column]?.value ?? null;
}

test("there are fourteen lessons, each with one table", () => {
  expect(names.length).toBe(14);
  for (const name of names) expect(tablesOf(compile({ name, text: textOf(name) })).length, name).toBe(1);
});

describe.each(names)("%s", (name) => {
  test("says what it teaches, is in its usual form, and is found without fault", () => {
    const text = textOf(name);
    expect(text).toMatch(/^# Lesson: /);
    const compiled = compile({ name, text });
    expect(compiled.diagnostics).toEqual([]);
    expect(formatText({ name, text }, { canonicalUnit }).text).toBe(text);
  });

  test("every cell has a value, or a reason", () => {
    const { rows, table } = lesson(name.replace(".light", ""));
    expect(rows.length).toBe(table.rows);
    for (const cell of rows.flat()) expect(cell.text ?? cell.reason).not.toBeNull();
    const empty = rows.flat().filter((cell) => cell.text === null).length;
    // Only sharpness without an end has no number.
    expect(empty).toBe(name === "depth-of-field.light" ? 1 : 0);
  });
});

describe("figures from outside", () => {
  // Inverse square, by hand: f/11 at 2 m is f/22 at 1 m, f/8 at 2.83 m, f/4 at 5.66 m. What the sitter throws back adds
  // the same share at every distance, 0.03 stop.
  test.each([
    ["1 m", 2],
    ["2.83 m", -2 * Math.log2(1.415)],
    ["4 m", -2],
    ["5.66 m", -2 * Math.log2(2.83)],
  ])("the meter at %s is %f stops over the one at 2 m", (place, wanted) => {
    const [found, first] = [place, "2 m"].map((one) => at("inverse-square", [one], "Meter") ?? 0);
    expect(Math.abs(2 * Math.log2((first ?? 0) / Math.sqrt(128)))).toBeLessThan(0.05);
    expect(Math.abs(2 * Math.log2((found ?? 0) / (first ?? 0)) - wanted)).toBeLessThan(0.005);
  });

  // By hand: angle 2 atan(s / 2D), edge s g / D with the gap g of 0.5 m.
  test.each([
    ["sphere(8 cm)", "5 m", 0.917, 8],
    ["disc(18 cm)", "3 m", 3.437, 30],
    ["disc(60 cm)", "1.5 m", 22.62, 200],
    ["disc(120 cm)", "2 m", 33.4, 300],
  ])("%s at %s looks %f deg wide and makes an edge of %f mm", (shape, place, degrees, edge) => {
    expect(at("edge-width", [shape, place], "Looks")).toBeCloseTo(degrees, 1);
    expect(at("edge-width", [shape, place], "Edge on the wall")).toBeCloseTo(edge, 2);
  });

  // By hand: h D / (H - h) for a person of 1.72 m.
  test.each([
    ["5 m", "3 m", (1.72 * 5) / (3 - 1.72)],
    ["2 m", "2.2 m", (1.72 * 2) / (2.2 - 1.72)],
  ])("a lamp %s off and %s up throws a shadow of %f m", (off, up, wanted) => {
    expect(at("shadow-length", [off, up], "Shadow")).toBeCloseTo(wanted, 9);
  });

  // By hand: atan((H - 0.25 - zf) / D), zf = 0.933 x 1.715 m; the face is 0.057 statures before the mark (figure.md).
  test.each([
    [2.7, 3],
    [4, 1.5],
    [2.35, 5],
  ])("under beams at %f m a lamp %f m off comes from where trigonometry says", (beams, off) => {
    const ahead = 0.057 * 1.715;
    const side = off * Math.sin(Math.PI / 6);
    const front = off * Math.cos(Math.PI / 6) - ahead;
    const level = Math.sqrt(side * side + front * front);
    const wanted = (Math.atan2(beams - 0.25 - 0.933 * 1.715, level) * 180) / Math.PI;
    expect(at("ceiling", [`${beams} m`, `${off} m`], "Highest sun")).toBeCloseTo(wanted, 1);
  });

  // Depth of field s(H - f)/(H + s - 2f) to s(H - f)/(H - s), blur circle 0.03 mm; the figures are a handbook's, from memory.
  test("50 mm at f/8 and 3 m is sharp from 2.34 to 4.19 m", () => {
    expect(at("depth-of-field", ["50 mm", "f/8"], "Sharp from")).toBeCloseTo(2.34, 2);
    expect(at("depth-of-field", ["50 mm", "f/8"], "Sharp to")).toBeCloseTo(4.19, 2);
    expect(at("depth-of-field", ["35 mm", "f/16"], "Sharp to")).toBeNull();
  });

  test("2 m a second for 1/200 s is 10 mm, 5 m a second for 1/5000 s 1 mm (by hand)", () => {
    expect(at("motion", ["1/200 s"], "Skirt")).toBeCloseTo(10, 9);
    expect(at("motion", ["1/5000 s"], "Thrown cloth")).toBeCloseTo(1, 9);
  });

  test("40 mired make 4508 K of 5500 K (1e6 / T adds up; by hand)", () => {
    expect(at("mired", ["40 mired"], "A flash behind it")).toBeCloseTo(1e6 / (1e6 / 5500 + 40), 6);
  });

  test("equal lamps at equal distances: each stop less doubles key to fill", () => {
    // Each is metered towards its own lamp; what the sitter throws back differs by some hundredths of a stop.
    const full = at("ratios", ["full"], "Key to fill") ?? 9;
    expect(Math.abs(full)).toBeLessThan(0.1);
    expect((at("ratios", ["1/8"], "Key to fill") ?? 0) - full).toBeCloseTo(3, 6);
  });

  test("in rooms the edge stays and the shadow fills: darker rooms have deeper shadows", () => {
    const depth = ["base", "Grey plaster", "Whitewash"].map(
      (room) => at("rooms", [room], "Lit to shaded cheek") ?? 0,
    );
    const edges = ["base", "Grey plaster", "Whitewash"].map((room) => at("rooms", [room], "Edge"));
    expect(new Set(edges).size).toBe(1);
    expect(depth[0]).toBeGreaterThan((depth[1] ?? 0) + 0.5);
    expect(depth[1]).toBeGreaterThan((depth[2] ?? 0) + 0.3);
  });

  test("walked back at the same stop: two stops more power for twice the distance, less what the loft gives", () => {
    const reserve = ["1 m", "2 m"].map((place) => at("same-exposure", [place], "In hand") ?? 0);
    const turned = (reserve[0] ?? 0) - (reserve[1] ?? 0);
    expect(turned).toBeGreaterThan(1.6);
    expect(turned).toBeLessThan(2);
  });
});

test("the patterns that a lesson names are those that the report finds, and rows that it does not name have none", () => {
  const text = textOf("patterns.light");
  const named = new Map([
    ["5 10", "flat"],
    ["5 30", "butterfly"],
    ["5 45", "butterfly"],
    ["35 30", "loop"],
    ["50 45", "rembrandt"],
    ["90 10", "split"],
  ]);
  for (const bearing of [5, 35, 50, 90]) {
    for (const elevation of [10, 30, 45]) {
      const row = text
        .replace("bearing: left(30 deg)", `bearing: left(${bearing} deg)`)
        .replace("elevation: 30 deg", `elevation: ${elevation} deg`);
      const [face] = run({ name: "row.light", text: row }).evaluated?.report.faces ?? [];
      expect(face?.pattern ?? null, row).toBe(named.get(`${bearing} ${elevation}`) ?? null);
    }
  }
});
