import { describe, expect, test } from "vitest";
import { cells } from "../../src/diagnostics/print-width.js";
import { htmlText } from "../../src/render/html-escape.js";
import { inForm } from "../../src/render/tables/form.js";
import { tablesJson } from "../../src/render/tables/json.js";
import type { Table, TableCell } from "../../src/tables/types.js";
import { answersOf, withBlank, worksheetOf } from "../../src/tables/worksheet.js";

const cell = (value: number | null, text: string | null, reason: string | null = null): TableCell => ({
  value,
  text,
  reason,
});

/** A table of made-up cells, hostile texts among them. */
const table: Table = {
  title: '=cmd|<b>"Walk"</b>',
  recipe: "The loft",
  note: "<script>alert(1)</script> & more",
  rows: 3,
  columns: [
    { title: "key.shape", unit: "text", asked: false, swept: true, blank: false },
    { title: "Edge", unit: "mm", asked: true, swept: false, blank: true },
    { title: "+Face", unit: "f", asked: false, swept: false, blank: false },
    { title: "over", unit: "stop", asked: true, swept: false, blank: false },
  ],
  *work() {
    yield [cell(null, "disc(18 cm)"), cell(29.96, "30.0 mm"), cell(8, "f/8"), cell(-0.04, "0.0 stop")];
    yield [
      cell(null, "=2+3"),
      cell(0.5, "0.5 mm"),
      cell(null, null, "the face gets no light"),
      cell(-2, "-2.0 stop"),
    ];
    yield [cell(null, "`a|b`"), cell(1234.5, "1234 mm"), cell(11.3137, "f/11"), cell(1, "1.0 stop")];
  },
};

const whole = (form: string, width = 80, one: Table = table): string =>
  [...inForm(form, [one], width)].join("");

describe("text", () => {
  test("columns are aligned, numbers to the right, and a dash is explained", () => {
    expect(whole("text").split("\n").slice(2, 6)).toEqual([
      "key.shape    Edge (mm)  +Face  over (stop)",
      "disc(18 cm)       30.0    f/8          0.0",
      "=2+3             0.500      -         -2.0",
      "`a|b`             1230   f/11          1.0",
    ]);
    expect(whole("text")).toContain("- where the face gets no light (+Face; key.shape =2+3)");
  });

  test.each([40, 60, 100])("no line is wider than %i cells", (width) => {
    for (const line of whole("text", width).split("\n")) expect(cells(line)).toBeLessThanOrEqual(width);
  });

  test("too narrow for columns: a block for each row, nothing lost", () => {
    const narrow = whole("text", 20);
    expect(narrow).toContain("key.shape:");
    expect(narrow).toContain("f/11");
    expect(narrow.match(/Edge/g)?.length).toBe(3);
  });
});

test("csv writes numbers as numbers and takes the fuse out of formulas (RFC 4180; CWE-1236)", () => {
  expect(whole("csv").split("\r\n")).toEqual([
    `"key.shape","Edge (mm)","'+Face (f)","over (stop)"`,
    `"disc(18 cm)",29.96,8,-0.04`,
    `"'=2+3",0.5,,-2`,
    `"\`a|b\`",1234.5,11.3137,1`,
    "",
  ]);
});

test("html holds one table and only elements of our own", () => {
  const html = whole("html");
  const names = [...html.matchAll(/<\/?([a-z]+)/g)].map((found) => found[1] ?? "");
  expect(new Set(names)).toEqual(new Set(["table", "caption", "thead", "tbody", "tfoot", "tr", "th", "td"]));
  expect(html).toContain("<caption>=cmd|&lt;b&gt;&quot;Walk&quot;&lt;/b&gt;</caption>");
  expect(html).toContain('<td colspan="4">&lt;script&gt;alert(1)&lt;/script&gt; &amp; more</td>');
  for (const name of ["table", "caption", "tr", "td", "tbody"]) {
    const opened = [...html.matchAll(new RegExp(`<${name}[ >]`, "g"))].length;
    expect(opened).toBe(html.split(`</${name}>`).length - 1);
  }
  expect(htmlText("a\0\u0007\ud800\u0085'\"")).toBe("a\ufffd\ufffd\ufffd\ufffd&#39;&quot;");
});

test("markdown keeps borders and texts apart", () => {
  const lines = whole("markdown").split("\n");
  expect(lines[0]).toMatch(/^## /);
  const bars = (line: string): number => line.replaceAll("\\|", "").split("|").length - 1;
  for (const line of lines.slice(2, 7)) expect(bars(line)).toBe(5);
  expect(lines[4]).toContain("30.0");
  expect(whole("markdown")).not.toContain("<script>");
});

test("json is format 1, a row a line, null with its reason", () => {
  const data = JSON.parse([...tablesJson("The loft", [table, table])].join(""));
  expect(data.format).toBe(1);
  expect(data.tables.length).toBe(2);
  expect(data.tables[1].rows[1][2]).toEqual({ value: null, shown: null, reason: "the face gets no light" });
  expect(data.tables[0].columns[1]).toEqual({ title: "Edge", unit: "mm", swept: false, blank: true });
});

test("a worksheet hides its columns and its key holds just those", () => {
  const sheet = whole("csv", 80, worksheetOf(table));
  expect(sheet).not.toContain("29.96");
  expect(sheet).toContain('1,"disc(18 cm)","",8');
  const key = whole("csv", 80, answersOf(table));
  expect(key.split("\r\n")[1]).toBe('1,"disc(18 cm)",29.96');
  expect(whole("csv", 80, worksheetOf(withBlank(table, ["+Face"])))).toContain("29.96");
});
