import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readOrder } from "../../src/markdown/order.js";

const plain = {
  view: "report",
  title: null,
  figure: null,
  light: null,
  gap: null,
  file: null,
  variant: null,
  level: null,
  code: false,
};

describe("an order", () => {
  test.each([
    ["", plain],
    ["  report ", plain],
    ["headline", { ...plain, view: "headline" }],
    ["table", { ...plain, view: "table" }],
    ['table "Walk the lamp in"', { ...plain, view: "table", title: "Walk the lamp in" }],
    [
      `table 'The "near" lamp' of "a/b.light"`,
      { ...plain, view: "table", title: 'The "near" lamp', file: "a/b.light" },
    ],
    [
      'report variant "Farther out" headings 3 code',
      { ...plain, variant: "Farther out", level: 3, code: true },
    ],
    ["chart", { ...plain, view: "chart" }],
    ['chart "Walk the lamp in" headings 3', { ...plain, view: "chart", title: "Walk the lamp in", level: 3 }],
    ["figure plan", { ...plain, view: "figure", figure: "plan" }],
    [
      'figure throw light "key" of "a.light"',
      { ...plain, view: "figure", figure: "throw", light: "key", file: "a.light" },
    ],
    [
      'figure edge gap 25cm light "key"',
      { ...plain, view: "figure", figure: "edge", light: "key", gap: 0.25 },
    ],
    ['report code of "a.light"', { ...plain, code: true, file: "a.light" }],
  ])("%j", (text, order) => {
    expect(readOrder(text)).toEqual({ order });
  });

  test.each([
    ["reprot", /no view "reprot".*`report`, `headline`, `table`, `chart` and `figure`/],
    ['"report"', /no view "report"/],
    ['table "Walk', /never closed/],
    ['report "Walk"', /"Walk" stands where an option is wanted/],
    ["report of plan.light", /`of` takes a text in quotation marks/],
    ["report of", /`of` takes a text/],
    ["report headings 7", /from 1 to 6/],
    ["report headings", /from 1 to 6/],
    ["figure", /Say which figure: .*`plan`/],
    ["figure plna", /no figure "plna": .*`plan`/],
    ['figure "plan"', /no figure "plan"/],
    ['figure plan light "key"', /belongs to `figure throw`/],
    ["figure plan gap 25cm", /`gap` belongs to `figure edge`/],
    ["figure edge gap wide", /takes a length up to 50 m/],
    ["figure edge gap 51m", /takes a length up to 50 m/],
    ["report code code", /`code` is said twice/],
    ["report colour", /no option "colour"/],
    ["report constructor", /no option "constructor"/],
  ])("%j is refused with what to write", (text, words) => {
    expect(readOrder(text).problem).toMatch(words);
  });

  test("any text gives an order or a sentence", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(..."ab \"'\\7\n", "report", " of ", "table") }),
        (text) => {
          const { order, problem } = readOrder(text);
          expect((order === undefined) !== (problem === undefined)).toBe(true);
        },
      ),
    );
  });
});
