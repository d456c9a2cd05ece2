import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { parseFile } from "../../src/syntax/parse.js";

function read(text: string) {
  const found: Diagnostic[] = [];
  const parsed = parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic));
  return { ...parsed, codes: found.map((diagnostic) => diagnostic.code), found };
}

describe("the first lines", () => {
  it.each([
    ['halfshade 1\nkit "k"\n', []],
    ['\ufeffhalfshade 1\r\nkit "k"\r\n', []],
    ['# a remark\n\n  halfshade   1 # one\n\n\nkit "k"', []],
    ["halfshade 1", []],
    ["", ["header.missing"]],
    ["\n\n# nothing\n", ["header.missing"]],
    ['recipe "r"\n', ["header.missing"]],
    ['halfshde 1\nrecipe "r"\n', ["header.word"]],
    ['lights 1\nrecipe "r"\n', ["header.word"]],
    ['halfshade\nrecipe "r"\n', ["header.version"]],
    ['halfshade 1.0\nrecipe "r"\n', ["header.version"]],
    ['halfshade 1/2\nrecipe "r"\n', ["header.version"]],
    ['halfshade 0\nrecipe "r"\n', ["header.version"]],
    ['halfshade one\nrecipe "r"\n', ["header.version"]],
    ['halfshade 1 2\nrecipe "r"\n', ["line.surplus"]],
    ['halfshade 1 recipe "r"\n', ["line.surplus"]],
    ['halfshade 1\nrecipe "r" light a { b: 1 }\n', ["line.surplus"]],
    ["halfshade 1\nrecipe Morning\nlet a = 1\n", ["title.text"]],
    ['halfshade 1\nrecpe "r"\nlet a = 1\n', []],
    ['halfshade 1\nsession "s"\n{ measured { a: 1 } }\n', ["line.unreadable"]],
  ])("%j gives %j", (text, codes) => {
    expect(read(text).codes).toEqual(codes);
  });

  it("reads nothing else of a newer file", () => {
    const { codes, file, complete } = read('halfshade 2\nrecipe "r"\nlight key { distance 2 m }\n');
    expect(codes).toEqual(["header.newer"]);
    expect(file.items).toEqual([]);
    expect(complete).toBe(false);
  });

  it("offers the header as a fix that is certain", () => {
    const { found } = read('\ufeffrecipe "r"\n');
    expect(found[0]?.fixes[0]).toEqual({
      title: "write `halfshade 1`",
      certain: true,
      edits: [{ place: { file: "a", start: 1, end: 1 }, text: "halfshade 1\n" }],
    });
  });

  it("puts what stands in a session's braces among the items", () => {
    const { file, complete } = read(
      'halfshade 1\nsession "s" of "./a.light" {\n  measured { key.distance: 2 m }\n}\n',
    );
    expect(complete).toBe(true);
    expect(file.title?.of?.value).toBe("./a.light");
    expect(file.items.map((item) => item.kind)).toEqual(["measured"]);
  });
});
