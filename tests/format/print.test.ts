import { expect, it } from "vitest";
import { printExpression, printName, printText } from "../../src/format/print-value.js";
import type { Expression } from "../../src/syntax/ast.js";

const span = { start: 0, end: 0 };
const name = (text: string): Expression => ({
  kind: "reference",
  span,
  path: { kind: "path", span, parts: [{ kind: "name", span, text, quoted: false }] },
  args: null,
});
const sum: Expression = {
  kind: "sum",
  span,
  terms: [
    { sign: "+", value: name("a") },
    { sign: "-", value: name("b") },
  ],
};
const product: Expression = {
  kind: "product",
  span,
  factors: [
    { sign: "*", value: sum },
    { sign: "/", value: name("c") },
  ],
};

it.each<[Expression, string]>([
  [product, "(a - b) / c"],
  [
    {
      kind: "sum",
      span,
      terms: [
        { sign: "+", value: name("c") },
        { sign: "-", value: sum },
      ],
    },
    "c - (a - b)",
  ],
  [
    {
      kind: "product",
      span,
      factors: [
        { sign: "*", value: name("c") },
        { sign: "/", value: product },
      ],
    },
    "c / ((a - b) / c)",
  ],
  [{ kind: "negation", span, operand: sum }, "-(a - b)"],
  [{ kind: "negation", span, operand: { kind: "negation", span, operand: name("a") } }, "-(-a)"],
  [
    { kind: "toleranced", span, value: sum, tolerance: { kind: "negation", span, operand: name("b") } },
    "(a - b) +- (-b)",
  ],
])("a tree made by code keeps its meaning %#", (node, text) => {
  expect(printExpression(node)).toBe(text);
});

it.each([
  ["plain", "plain"],
  ["two words", "`two words`"],
  ["2nd", "`2nd`"],
  ["key-light", "`key-light`"],
  ["Größe", "Größe"],
])("the name %s", (text, written) => {
  expect(printName({ kind: "name", span, text, quoted: false })).toBe(written);
});

it.each([
  ['a "b" \\ c\nd\t\u202e\r', '"a \\"b\\" \\\\ c\\nd\\t\\u{202e}\\u{d}"'],
  ["\ud800", '"\ufffd"'],
])("the text %j", (value, written) => {
  expect(printText({ kind: "text", span, value, block: false })).toBe(written);
});

it("a text of several lines, indented", () => {
  expect(printText({ kind: "text", span, value: 'a\n  b\n\n"""', block: true }, "  ")).toBe(
    '"""\n    a\n      b\n\n    \\"\\"\\"\n    """',
  );
});
