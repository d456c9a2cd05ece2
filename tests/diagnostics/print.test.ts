import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MAX_DIAGNOSTICS } from "../../src/core/limits.js";
import { placeIn } from "../../src/core/span.js";
import { catalogue } from "../../src/diagnostics/catalogue/index.js";
import { sentence } from "../../src/diagnostics/create.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { inOrder, printDiagnostic, printDiagnostics } from "../../src/diagnostics/print.js";
import { diagnosticJson } from "../../src/diagnostics/print-json.js";
import { plain } from "../../src/diagnostics/print-paint.js";
import { asSentence } from "../../src/diagnostics/print-sentence.js";
import { cells } from "../../src/diagnostics/print-width.js";

const text = "light key {\n  distance: 2.4 mt\n\tbearing: left(30 deg)\n}\n";
const file = "plan.light";
const textOf = (name: string) => (name === file ? text : null);
const options = { textOf, width: 80, paint: plain };

/** The place of some words of the text. */
const at = (words: string) => {
  const start = text.indexOf(words);
  return placeIn(file, { start, end: start + words.length });
};

const found = (changes: Partial<Diagnostic> = {}): Diagnostic => ({
  code: "file.not-found",
  severity: "error",
  place: at("mt"),
  args: { path: "a.light" },
  label: "",
  related: [],
  help: "check the spelling",
  fixes: [],
  ...changes,
});

describe("a finding as text", () => {
  test("says where and what, shows the line with the place marked, says what to do, and ends with the code", () => {
    expect(printDiagnostic(found(), options)).toBe(
      [
        "plan.light:2:17  error  There is no file `a.light`.",
        "    distance: 2.4 mt",
        "                  ~~",
        `    Check the spelling.${" ".repeat(41)}(file.not-found)`,
        "",
      ].join("\n"),
    );
  });

  test("puts a label behind the marks, and one that is too long below them", () => {
    expect(printDiagnostic(found({ label: "no unit" }), options)).toContain(
      `\n${" ".repeat(18)}~~  no unit\n`,
    );
    const long = "this is no unit at all and never was one in this world";
    const lines = printDiagnostic(found({ label: long }), { ...options, width: 60 }).split("\n");
    expect(lines[2]).toBe(`${" ".repeat(18)}~~`);
    expect(lines[3]).toBe(`    ${long}`);
  });

  test("shows other places, and the line that a fix leaves", () => {
    const place = at("mt");
    const printed = printDiagnostic(
      found({
        related: [{ place: at("key"), text: "this light" }],
        fixes: [{ title: "say metres", certain: false, edits: [{ place, text: "m" }] }],
      }),
      options,
    );
    expect(printed).toContain("    see plan.light:1:7\n        light key {\n              ~~~  this light\n");
    expect(printed).toContain("    Perhaps: say metres\n        distance: 2.4 m\n".slice(0, -1));
  });

  test("does not show the line of a fix whose title says it already", () => {
    const fixes = [
      { title: "write `2.4 m`", certain: true, edits: [{ place: at("2.4 mt"), text: "2.4 m" }] },
    ];
    const printed = printDiagnostic(found({ fixes }), options);
    expect(printed).toContain("Safe fix: write `2.4 m`");
    expect(printed).not.toMatch(/distance: 2\.4 m\n/);
  });

  test("names the last line of a place of several lines and marks the first", () => {
    const place = placeIn(file, { start: text.indexOf("light"), end: text.indexOf("}") + 1 });
    expect(printDiagnostic(found({ place }), options)).toContain(
      "    light key {\n    ~~~~~~~~~~~  to line 4\n",
    );
  });

  test("marks one cell at the end of a line for a place of no length", () => {
    const end = text.indexOf("mt") + 2;
    const printed = printDiagnostic(found({ place: placeIn(file, { start: end, end }) }), options);
    expect(printed).toContain(`    distance: 2.4 mt\n${" ".repeat(20)}~\n`);
  });

  test("marks the right cells behind tabs, wide letters and letters with marks on them", () => {
    for (const [line, shown, before] of [
      ['a\tb: "x" mt', 'a   b: "x" mt', 11],
      ['b: "光線" mt', 'b: "光線" mt', 10],
      ['b: "e\u0301" mt', 'b: "e\u0301" mt', 7],
      ['b: "😀" mt', 'b: "😀" mt', 8],
    ] as const) {
      const start = line.indexOf("mt");
      const place = placeIn("x", { start, end: start + 2 });
      const printed = printDiagnostic(found({ place }), { ...options, textOf: () => line });
      expect(printed).toContain(`    ${shown}\n    ${" ".repeat(before)}~~\n`);
    }
  });

  test("shows hidden and obeyed characters instead of sending them to the terminal", () => {
    const line = 'title: "\u001b[31mred\u202eabc\u200b\u0007"';
    const place = placeIn("a\u001b.light", { start: 7, end: line.length });
    const printed = printDiagnostic(found({ place, args: { path: "\u009b2J" }, label: "\u2066" }), {
      ...options,
      textOf: () => line,
    });
    expect(printed).toContain("a\\u{1b}.light:1:8");
    expect(printed).toContain("\\u{9b}2J");
    expect(printed).toContain("\\u{1b}[31mred\\u{202e}abc\\u{200b}\\u{07}");
    expect(printed).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2066]/);
  });

  test("does not count a byte order mark as a column", () => {
    const printed = printDiagnostic(found({ place: placeIn("x", { start: 1, end: 5 }) }), {
      ...options,
      textOf: () => "\ufeffabcd\n",
    });
    expect(printed).toContain("x:1:1  error");
    expect(printed).toContain("    abcd\n    ~~~~\n");
  });

  test("has no line and column where there is no text", () => {
    const printed = printDiagnostic(found({ place: placeIn("gone.light", { start: 0, end: 0 }) }), options);
    expect(printed).toMatch(/^gone\.light {2}error {2}There is no file/);
  });
});

const words = fc.string({ unit: "binary", maxLength: 60 });
const anyPlace = fc
  .tuple(fc.constantFrom(file, "other"), fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 90 }))
  .map(([name, a, b]) => placeIn(name, { start: Math.min(a, b), end: Math.max(a, b) }));
const codes = Object.keys(catalogue);
const finding: fc.Arbitrary<Diagnostic> = fc.record({
  code: fc.constantFrom(...codes, "no.such", "__proto__"),
  severity: fc.constantFrom("error" as const, "note" as const),
  place: anyPlace,
  args: fc.constant({ path: "p", size: 1, limit: 2, reason: "r" }),
  label: words,
  related: fc.array(fc.record({ place: anyPlace, text: words }), { maxLength: 2 }),
  help: words,
  fixes: fc.array(
    fc.record({
      title: words,
      certain: fc.boolean(),
      edits: fc.array(fc.record({ place: anyPlace, text: words }), { minLength: 1, maxLength: 2 }),
    }),
    { maxLength: 2 },
  ),
});

describe("any finding", () => {
  test("keeps to the width, whatever it holds", () => {
    fc.assert(
      fc.property(finding, fc.integer({ min: 40, max: 120 }), (item, width) => {
        const place = `${item.place.file}:`.length + 12;
        for (const line of printDiagnostic(item, { ...options, width }).split("\n")) {
          expect(cells(line)).toBeLessThanOrEqual(Math.max(width, place));
        }
      }),
    );
  });

  test("sends no control character to the terminal", () => {
    fc.assert(
      fc.property(finding, (item) => {
        expect(printDiagnostic(item, options)).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
      }),
    );
  });
});

describe("text and JSON", () => {
  const both: Diagnostic = found({
    label: "a label here",
    related: [{ place: at("key"), text: "a related place" }],
    fixes: [
      { title: "put metres", certain: false, edits: [{ place: at("mt"), text: "m" }] },
      { title: "put feet", certain: true, edits: [{ place: at("mt"), text: "ft" }] },
    ],
  });
  const printed = printDiagnostic(both, options);
  const json = diagnosticJson(both, textOf);

  test("everything in JSON stands in the text form", () => {
    expect(printed).toContain(`${json.file}:${json.line}:${json.column}  ${json.severity}  ${json.message}`);
    expect(printed).toContain(`(${json.code})`);
    expect(printed).toContain(json.label);
    expect(printed).toContain(json.help);
    expect(printed).toContain("~".repeat((json.end_column ?? 0) - (json.column ?? 0)));
    for (const item of json.related) {
      expect(printed).toContain(`see ${item.file}:${item.line}:${item.column}`);
      expect(printed).toContain(item.text);
    }
    for (const fix of json.fixes) {
      expect(printed).toContain(`${fix.certain ? "Safe fix" : "Perhaps"}: ${fix.title}`);
      for (const edit of fix.edits) expect(printed).toContain(`distance: 2.4 ${edit.text}`);
    }
  });

  test("every word of the text form comes from JSON or from the line itself", () => {
    const lines = text.split("\n").map((line) => line.trim());
    const known = [
      JSON.stringify(json),
      ...lines,
      "see Perhaps Safe fix",
      "2.4 m 2.4 ft",
      `${json.line}:${json.column}`,
      "1:7",
    ];
    const all = known.join(" ").replaceAll('\\"', '"');
    for (const word of printed.split(/\s+/)) {
      const bare = word.replace(/^\(|\)$|:$/g, "").replace(`${file}:`, "");
      if (bare !== "" && !/^~+$/.test(bare)) expect(all).toContain(bare);
    }
  });

  test("JSON is plain: what it says is what it holds", () => {
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
    expect(json.message).toBe(asSentence(sentence(both)));
  });
});

describe("many findings", () => {
  test("come in the order of the text, the same from any order", () => {
    fc.assert(
      fc.property(fc.array(finding, { maxLength: 8 }), (items) => {
        const one = items.map((item) => ({ ...item, place: { ...item.place, file } }));
        const keys = (list: readonly Diagnostic[]) =>
          inOrder(list).map(({ place, code }) => `${place.start} ${place.end} ${code}`);
        expect(keys([...one].reverse())).toEqual(keys(one));
        const starts = inOrder(one).map((item) => item.place.start);
        expect(starts).toEqual([...starts].sort((a, b) => a - b));
      }),
    );
  });

  test("are cut at 100, and the rest is counted", () => {
    const printed = printDiagnostics(
      Array.from({ length: MAX_DIAGNOSTICS + 3 }, () => found()),
      options,
    );
    expect(printed.match(/\(file\.not-found\)/g)).toHaveLength(MAX_DIAGNOSTICS);
    expect(printed).toMatch(/\n3 more findings are not shown\.\n$/);
    expect(printDiagnostics([], options)).toBe("");
  });

  test("are not coloured unless they are asked to be, and colour changes no word", () => {
    const painted = printDiagnostic(found(), {
      ...options,
      paint: (tone, part) => `\u001b[1m<${tone}>${part}\u001b[0m`,
    });
    expect(painted).toContain("<error>error");
    const bare = painted.replace(/\u001b\[[0-9]m(<[a-z]+>)?/g, "");
    expect(bare).toBe(printDiagnostic(found(), options));
  });
});
