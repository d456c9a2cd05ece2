import { describe, expect, it } from "vitest";
import {
  MAX_DEPTH,
  MAX_DIAGNOSTICS,
  MAX_OPERATORS,
  MAX_SOURCE_BYTES,
  MAX_TOKENS,
} from "../../src/core/limits.js";
import { formatText } from "../../src/format/format.js";
import { parseFile } from "../../src/syntax/parse.js";

const head = 'halfshade 1\nrecipe "r"\n';

function codes(text: string): readonly string[] {
  const found: string[] = [];
  parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic.code));
  return found;
}

const has = (text: string, code: string): boolean => codes(text).includes(code);

describe("caps", () => {
  it.each(["(", "[", "f(", "-("])("nesting of %s, one below, at and above the cap", (open) => {
    const close = open === "[" ? "]" : ")";
    const nested = (depth: number): string =>
      `${head}let a = ${open === "[" ? "f(" : ""}${open.repeat(depth)}1${close.repeat(depth)}${open === "[" ? ")" : ""}\n`;
    const extra = open === "[" ? 1 : 0;
    expect(codes(nested(MAX_DEPTH - 1 - extra))).toEqual([]);
    expect(codes(nested(MAX_DEPTH - extra))).toEqual([]);
    expect(codes(nested(MAX_DEPTH + 1 - extra))).toEqual(["limit.depth"]);
  });

  it("nesting of blocks", () => {
    const nested = (depth: number): string => `${head}${"a { ".repeat(depth)}${"} ".repeat(depth)}\n`;
    expect(codes(nested(MAX_DEPTH))).toEqual([]);
    expect(codes(nested(MAX_DEPTH + 1))).toEqual(["limit.depth"]);
  });

  it("operators of one value", () => {
    const chain = (count: number): string => `${head}let a = 1${" + 1".repeat(count)}\n`;
    expect(codes(chain(MAX_OPERATORS))).toEqual([]);
    expect(codes(chain(MAX_OPERATORS + 1))).toEqual(["limit.operators"]);
  });

  it("bytes, counted as UTF-8", () => {
    const full = (extra: number): string =>
      `${head}#${"é".repeat((MAX_SOURCE_BYTES - head.length - 2) / 2)}${"x".repeat(extra)}`;
    const room = MAX_SOURCE_BYTES - new TextEncoder().encode(full(0)).length;
    expect(codes(full(room))).toEqual([]);
    expect(codes(full(room + 1))).toEqual(["limit.size"]);
  });

  it("words and signs", () => {
    const tokens = (count: number): string => `${head}room{a:[${"1,".repeat(Math.floor((count - 12) / 2))}]}`;
    expect(has(tokens(MAX_TOKENS - 10), "limit.tokens")).toBe(false);
    expect(has(tokens(MAX_TOKENS + 10), "limit.tokens")).toBe(true);
  });

  it("findings", () => {
    const wrong = (count: number): string => head + "let 3\n".repeat(count);
    expect(codes(wrong(MAX_DIAGNOSTICS)).length).toBe(MAX_DIAGNOSTICS);
    expect(has(wrong(MAX_DIAGNOSTICS), "limit.findings")).toBe(false);
    expect(codes(wrong(MAX_DIAGNOSTICS + 1)).length).toBe(MAX_DIAGNOSTICS + 1);
    expect(codes(wrong(5000)).at(-1)).toBe("limit.findings");
  });

  it("numbers", () => {
    expect(codes(`${head}let a = ${"9".repeat(400)}\n`)).toEqual(["number.too-large"]);
    expect(codes(`${head}let a = ${"9".repeat(308)} 9/1\n`)).toEqual([]);
    expect(codes(`${head}let a = ${"9".repeat(308)}${".5"} ${"9".repeat(308)}/0.1\n`)).toEqual([
      "number.too-large",
    ]);
    expect(codes(`${head}let a = 3:${"9".repeat(400)}\n`)).toEqual(["number.too-large"]);
  });
});

/** Everything that once made a parser of this kind slow or fall over; the long run takes the largest size that is read. */
const size = process.env.FC_RUNS === undefined ? 100_000 : 240_000;
const filled = (unit: string, front = "", back = ""): string =>
  head + front + unit.repeat(Math.floor((size - front.length - back.length) / unit.length)) + back;

const hostile: readonly (readonly [string, string])[] = [
  ["open round brackets", filled("(", "let a = ")],
  ["open square brackets", filled("[", "let a = ")],
  ["open braces", filled("a{")],
  ["open braces on lines", filled("a {\n")],
  ["open braces with a mistake each", filled("a { b 1\n")],
  ["calls", filled("f(", "let a = ")],
  ["closed brackets", filled(")", "let a = 1")],
  ["closed braces", filled("}")],
  ["minus signs", filled("-", "let a = ")],
  ["spaced minus signs", filled("- ", "let a = ")],
  ["a flat sum", filled("1+", "let a = ", "1\n")],
  ["a flat product of names", filled("a * ", "let b = ", "a\n")],
  ["a flat path", filled("a.", "let b = ", "a\n")],
  ["numbers side by side", filled("1 m ", "let a = ")],
  ["sizes", filled("1 x ", "let a = ", "1")],
  ["quotation marks", filled('"')],
  ["open texts", filled('"a\n')],
  ["backslashes in a text", filled("\\", 'about { a: "')],
  ["escaped marks in a text", filled('\\"', 'about { a: "')],
  ["an open text block", filled('""\n', 'about { a: """')],
  ["backticks", filled("`")],
  ["single backticks", filled("`a\n")],
  ["apostrophes", filled("' ")],
  ["apostrophes and names", filled("'a")],
  ["curly quotation marks", filled("“")],
  ["comments", filled("#\n")],
  ["slashes", filled("/")],
  ["stars and slashes", filled("/*")],
  ["hidden characters", filled("\u0007 ")],
  ["hidden characters in a row", filled("\u200b")],
  ["hidden characters in a text", filled("\u200ba", 'about { a: "', '" }')],
  ["unknown characters", filled("@ ")],
  ["unknown characters in a row", filled("@")],
  ["digits", filled("9", "let a = ")],
  ["commas and digits", filled("1,", "let a = ")],
  ["points and digits", filled("1.", "let a = ")],
  ["ratios", filled("1:", "let a = ")],
  ["fractions", filled("1/", "let a = ")],
  ["underscores", filled("1_", "let a = ")],
  ["feet", filled("5'7\" ", "let a = ")],
  ["words", filled("a ")],
  ["words in a block", filled("a ", "light b {")],
  ["one long word", filled("a")],
  ["the word like", filled("like ")],
  ["the word with", filled("a with b: ", "light c {")],
  ["every joining word", filled("is within between and under over from ", "expect ")],
  ["commas", filled(",")],
  ["commas in a block", filled(",", "light a {")],
  ["commas in a list", filled(",", "let a = f([", "])")],
  ["colons", filled(":", "light a { b")],
  ["colons and names", filled("a:", "light b {")],
  ["question marks", filled("?,", "light a { b: [", "] }")],
  ["semicolons", filled(";")],
  ["semicolons with blanks between", filled("a: 1;", "light b {", "}")],
  ["line ends", filled("\n")],
  ["carriage returns", filled("\r")],
  ["blanks", filled(" \t")],
  ["small blocks on one line", filled("a{}", "b {", "}")],
  ["small blocks on one line, one brace missing", filled("a{}", "b { c {", "}")],
  ["small blocks on lines, one brace missing", filled(" a {\n}\n", "b {\n c {\n")],
  ["blocks at the edge, one brace missing", filled("a {\n b: 1\n}\n", "c {\n d: 1\n")],
  ["a wide block line with texts that are not closed", filled('"a)\n', `a { ${"( ".repeat(50)}`)],
  ["wrong settings", filled("b 1\n", "light a {\n")],
  ["wrong statements", filled("let 3\n")],
  ["wrong members", filled("1 =, ", "let a = f(", ")")],
  ["members of a bracket that is not closed", filled("1 =, ", "let a = f(")],
  ["readings", filled("a 3 (, ", "measured {")],
  ["expectations", filled("expect a is b\n")],
  ["letters of other alphabets", filled("λόγος ")],
  ["letters outside the basic plane", filled("𝒶 ")],
  ["lone halves of surrogate pairs", filled("\ud800 ")],
  ["nothing", ""],
  ["zero characters", "\0".repeat(1000)],
];

describe("hostile texts", () => {
  it.each(hostile)("%s: a result, findings inside the text, soon", (_name, text) => {
    const before = process.cpuUsage();
    let count = 0;
    const { file } = parseFile({ name: "a", text }, ({ place, fixes, related }) => {
      count++;
      for (const each of [
        place,
        ...fixes.flatMap((fix) => fix.edits.map((edit) => edit.place)),
        ...related.map((label) => label.place),
      ]) {
        expect(each.start >= 0 && each.start <= each.end && each.end <= text.length).toBe(true);
      }
    });
    const spent = process.cpuUsage(before);
    expect(count).toBeLessThanOrEqual(MAX_DIAGNOSTICS + 1);
    expect(() => JSON.stringify(file)).not.toThrow();
    expect(() => structuredClone(file)).not.toThrow();
    expect((spent.user + spent.system) / 1000).toBeLessThan(2000);
  });

  it.each(hostile)("%s: the formatter refuses or formats", (_name, text) => {
    const { fault } = formatText({ name: "a", text }, { canonicalUnit: () => null });
    expect(fault).toBe(false);
  });
});
