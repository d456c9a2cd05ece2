import { describe, expect, test } from "vitest";
import type { Drawing, LabelMark, Place } from "../../src/report/figures/drawing.js";
import { tableChart } from "../../src/tables/chart.js";
import type { TableCell, TableColumn, TableHead, TableRow } from "../../src/tables/types.js";

const column = (title: string, unit: string, swept = false): TableColumn => ({
  title,
  unit,
  asked: false,
  swept,
  blank: false,
});
const cell = (value: number | null, text: string | null, reason: string | null = null): TableCell => ({
  value,
  text,
  reason,
});
const head = (...columns: readonly TableColumn[]): TableHead => ({
  title: "The ladder",
  recipe: "The loft",
  note: null,
  columns,
  rows: 0,
});

const drawn = (table: TableHead, rows: readonly TableRow[]): Drawing => {
  const made = tableChart(table, rows);
  if (typeof made === "string") throw new Error(made);
  return made;
};
const curves = ({ marks }: Drawing): readonly (readonly Place[])[] =>
  marks.flatMap((mark) =>
    mark.kind === "line" && mark.ink !== "grid" && mark.ink !== "axis" ? [mark.through] : [],
  );
const dots = ({ marks }: Drawing): number => marks.filter((mark) => mark.kind === "area").length;
const labels = ({ marks }: Drawing): readonly LabelMark[] =>
  marks.filter((mark): mark is LabelMark => mark.kind === "label");
const texts = (drawing: Drawing): readonly string[] => labels(drawing).map(({ text }) => text);

const distance = column("key.distance", "m", true);
const walk = [1, 2, 4].map((d): TableRow => [cell(d, `${d} m`), cell(8 / d, null), cell(16 / (d * d), null)]);

describe("a chart of a table", () => {
  test("has every row where its two numbers say", () => {
    const drawing = drawn(head(distance, column("Size", "deg")), walk);
    const [curve = []] = curves(drawing);
    const [[x1, y1], [x2, y2], [x4, y4]] = curve as [Place, Place, Place];
    // 2 m to 4 m is twice as far as 1 m to 2 m; 8, 4 and 2 deg fall by 4 and by 2.
    expect((x4 - x2) / (x2 - x1)).toBeCloseTo(2, 12);
    expect((y1 - y2) / (y2 - y4)).toBeCloseTo(2, 12);
    expect(dots(drawing)).toBe(3);
    // Its ticks are the values as they were written, each below its dot.
    const ticks = labels(drawing).filter(({ text }) => / m$/.test(text));
    expect(ticks.map(({ text, at }) => [text, at[0]])).toEqual([
      ["1 m", x1],
      ["2 m", x2],
      ["4 m", x4],
    ]);
    // A grid line of the height axis stands where a dot of its value does.
    const tick = labels(drawing).find(({ text, anchor }) => text === "4" && anchor === "end");
    expect(tick?.at[1]).toBeCloseTo(y2, 12);
  });

  test("draws f-numbers by stops, with the whole stops of the trade beside them", () => {
    const rows = [4, Math.sqrt(32), 8].map((n, i): TableRow => [cell(i, String(i)), cell(n, null)]);
    const drawing = drawn(head(column("n", "1", true), column("Face", "f")), rows);
    const [curve = []] = curves(drawing);
    const [[, a], [, b], [, c]] = curve as [Place, Place, Place];
    expect((c - b) / (b - a)).toBeCloseTo(1, 12);
    for (const [text, y] of [
      ["f/4", a],
      ["f/5.6", b],
      ["f/8", c],
    ] as const)
      expect(labels(drawing).find((label) => label.text === text)?.at[1]).toBeCloseTo(y, 9);
  });

  test("has one chart for each unit, none over another", () => {
    const drawing = drawn(head(distance, column("Size", "deg"), column("Light", "lx s")), walk);
    const [upper = [], lower = []] = curves(drawing);
    expect(curves(drawing)).toHaveLength(2);
    expect(Math.max(...lower.map(([, y]) => y))).toBeLessThan(Math.min(...upper.map(([, y]) => y)));
    expect(upper.map(([x]) => x)).toEqual(lower.map(([x]) => x));
    expect(texts(drawing)).toEqual(expect.arrayContaining(["Size, deg", "Light, lx s"]));
    const one = drawn(head(distance, column("A", "m"), column("B", "m")), walk);
    expect(texts(one)).toEqual(expect.arrayContaining(["A; B, m", "A", "B"]));
  });

  test("of two sweeps has a curve for each value of the shorter one", () => {
    const rows = ["disc", "sphere"].flatMap((shape) =>
      walk.map((row): TableRow => [cell(null, shape), ...row]),
    );
    const drawing = drawn(head(column("key.shape", "text", true), distance, column("Size", "deg")), rows);
    expect(curves(drawing).map(({ length }) => length)).toEqual([3, 3]);
    expect(texts(drawing)).toEqual(expect.arrayContaining(["disc", "sphere", "1 m"]));
    expect(drawing.notes).toContain("One curve for each key.shape.");
  });

  test("is points over names where names are varied, and names without room get numbers and a key", () => {
    const named = (names: readonly string[]) =>
      drawn(
        head(column("variant", "text", true), column("Edge", "mm")),
        names.map((name, i): TableRow => [cell(null, name), cell(i, null)]),
      );
    const short = named(["base", "Higher"]);
    expect([curves(short).length, dots(short)]).toEqual([0, 2]);
    expect(texts(short)).toEqual(expect.arrayContaining(["base", "Higher"]));
    const long = named(["The lamp stands behind the screen of the weaver", "Higher"]);
    expect(texts(long)).toEqual(expect.arrayContaining(["1", "2"]));
    expect(long.notes).toContain("1: The lamp stands behind the screen of the weaver");
  });

  test("breaks a curve where a row has no value, and says why and what it leaves out", () => {
    const rows: TableRow[] = [1, 2, 3, 4, 5].map((d) => [
      cell(d, `${d} m`),
      d === 3 ? cell(null, null, "the face gets no light") : cell(d, null),
      cell(null, "full"),
    ]);
    const drawing = drawn(head(distance, column("Face", "lx"), column("key.power", "text")), rows);
    expect(curves(drawing).map(({ length }) => length)).toEqual([2, 2]);
    expect(drawing.notes).toContain("No value in 1 row, Face: the face gets no light");
    expect(drawing.notes).toContain("Not drawn, without numbers: key.power.");
  });

  test("is refused where there is nothing to draw, or too much", () => {
    expect(tableChart(head(distance, column("Face", "text")), [[cell(1, "1 m"), cell(null, "f/8")]])).toMatch(
      /has no column of numbers/,
    );
    expect(tableChart(head(distance, column("Face", "lx")), [])).toMatch(/no rows to draw/);
    const many = Array.from({ length: 12 }, (_, i) => `lamp ${i}`).flatMap((shape) =>
      walk.map((row): TableRow => [cell(null, shape), ...row]),
    );
    expect(
      tableChart(head(column("key.shape", "text", true), distance, column("Size", "deg")), many),
    ).toMatch(/holds 9 curves, and "The ladder" has 12 in deg/);
  });

  test("of one row, or of rows all alike, still has an axis", () => {
    for (const rows of [walk.slice(0, 1), [1, 2].map((d): TableRow => [cell(d, `${d} m`), cell(0, null)])]) {
      const drawing = drawn(head(distance, column("Size", "deg")), rows);
      const numbers = drawing.marks.flatMap((mark) => (mark.kind === "line" ? mark.through.flat() : []));
      expect(numbers.every(Number.isFinite)).toBe(true);
      expect(dots(drawing)).toBe(rows.length);
    }
  });
});
