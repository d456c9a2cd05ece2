import { describe, expect, it } from "vitest";
import { lineStarts, positionAt } from "../../src/core/source.js";
import { lexFindings } from "../../src/diagnostics/catalogue/lex.js";
import { parseFindings } from "../../src/diagnostics/catalogue/parse.js";
import type { Diagnostic, Fix } from "../../src/diagnostics/diagnostic.js";
import { parseFile } from "../../src/syntax/parse.js";
import * as groups from "./broken-texts.js";

const head = 'halfshade 1\nrecipe "r"\n';
const texts = Object.values(groups).flat();

function findings(text: string): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic));
  return found;
}

/** Code, line and column from the third line on, and the text at the place. */
function told(text: string, diagnostic: Diagnostic): string {
  const { line, column } = positionAt(lineStarts(text), diagnostic.place.start);
  const slice = JSON.stringify(text.slice(diagnostic.place.start, diagnostic.place.end)).slice(1, -1);
  return `${diagnostic.code} ${line - 2}:${column} ${slice}`.trimEnd();
}

function applied(text: string, fix: Fix): string {
  const edits = [...fix.edits].sort((a, b) => b.place.start - a.place.start);
  return edits.reduce(
    (before, { place, text: insert }) => before.slice(0, place.start) + insert + before.slice(place.end),
    text,
  );
}

describe("broken texts", () => {
  it.each(texts)("$text", ({ text, found }) => {
    const whole = head + text;
    expect(findings(whole).map((diagnostic) => told(whole, diagnostic))).toEqual(found);
  });
});

describe("fixes of broken texts", () => {
  const fixes = texts.flatMap(({ text }) =>
    findings(head + text).flatMap((diagnostic) => diagnostic.fixes.map((fix) => ({ text, diagnostic, fix }))),
  );

  it.each(fixes)("$diagnostic.code: $fix.title in $text", ({ text, diagnostic, fix }) => {
    const before = findings(head + text);
    const after = findings(applied(head + text, fix));
    const count = (list: readonly Diagnostic[]): number =>
      list.filter((each) => each.code === diagnostic.code).length;
    expect(count(after)).toBeLessThan(count(before));
    if (fix.certain) expect(after.length).toBeLessThan(before.length);
  });
});

describe("codes of letters and lines", () => {
  const elsewhere = ["header.missing", "header.word", "header.version", "header.newer", "title.text"];
  const limits = [
    "limit.size",
    "limit.tokens",
    "limit.depth",
    "limit.operators",
    "limit.findings",
    "number.too-large",
  ];

  it("all occur in a broken text", () => {
    const codes = new Set(texts.flatMap(({ found }) => found.map((line) => line.split(" ")[0])));
    const all = [...Object.keys(lexFindings), ...Object.keys(parseFindings)];
    expect(
      all.filter((code) => !codes.has(code) && !elsewhere.includes(code) && !limits.includes(code)),
    ).toEqual([]);
  });
});
