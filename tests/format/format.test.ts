import { describe, expect, it } from "vitest";
import { formatText } from "../../src/format/format.js";
import { canonicalUnit } from "../../src/units/spellings.js";
import { recipeTexts } from "../helpers/recipe-texts.js";

const head = "halfshade 1\n";
const format = (text: string) => formatText({ name: "a", text: head + text }, { canonicalUnit });
const formatted = (text: string): string => format(text).text?.slice(head.length) ?? "refused";

describe("the usual form", () => {
  it.each([
    ["blanks", "light   key{\n\tdistance :2   m\n}", "light key {\n  distance: 2 m\n}\n"],
    ["blanks in one line", "room{size:7x9×4.4m,walls:white}", "room { size: 7 x 9 x 4.4 m, walls: white }\n"],
    [
      "no blanks in brackets",
      "let a = f( 1 m , [ 2,3 ] , ( 4 m,5 m ) )",
      "let a = f(1 m, [2, 3], (4 m, 5 m))\n",
    ],
    ["operators", "let a=b+c*2-d / 3", "let a = b + c * 2 - d / 3\n"],
    ["a minus that belongs to its value", "let a = - b - -2 m", "let a = -b - -2 m\n"],
    [
      "calls and brackets after words",
      "expect stops (a) between (1 stop) and f (x)",
      "expect stops(a) between (1 stop) and f(x)\n",
    ],
    [
      "spellings",
      "camera { aperture: F/8, b: ƒ/4, c: −3°, d: 5 m±5 cm }",
      "camera { aperture: f/8, b: f/4, c: -3 deg, d: 5 m +- 5 cm }\n",
    ],
    ["signs of comparison", "expect a≤3 m\nexpect a≥3 m", "expect a <= 3 m\nexpect a >= 3 m\n"],
    ["units in full", "let a = 2 metres + 3 feet 2 inches", "let a = 2 m + 3 ft 2 in\n"],
    [
      "numbers as they were written",
      "let a = 2.70 m + 007 m + 7 1/2 in",
      "let a = 2.70 m + 007 m + 7 1/2 in\n",
    ],
    ["per cent", "flat a{reflectance:18%}", "flat a { reflectance: 18 % }\n"],
    [
      "a block broken anywhere is broken at both ends",
      "light key { distance: 2 m,\nheight: 1 m }",
      "light key {\n  distance: 2 m\n  height: 1 m\n}\n",
    ],
    [
      "a block in a block",
      "set { flat a { b: 1 }\nflat c { d: 2 } }",
      "set {\n  flat a { b: 1 }\n  flat c { d: 2 }\n}\n",
    ],
    [
      "settings that share a line",
      "light key {\n  a: 1, b: 2,\n  c: 3,\n}",
      "light key {\n  a: 1, b: 2\n  c: 3\n}\n",
    ],
    ["empty blocks", "room {  }\nset {\n\n}", "room {}\nset {}\n"],
    ["a block with only a remark", "room {\n# nothing yet\n}", "room {\n  # nothing yet\n}\n"],
    ["empty lines", "\n\nlet a = 1\n\n\n\nlet b = 2\nlet c = 3\n\n", "\nlet a = 1\n\nlet b = 2\nlet c = 3\n"],
    [
      "empty lines at the edges of a block",
      "light key {\n\n  a: 1\n\n\n  b: 2\n\n}",
      "light key {\n  a: 1\n\n  b: 2\n}\n",
    ],
    ["remarks behind a line", "let a = 1 #one\nlet b = 2      # two", "let a = 1  # one\nlet b = 2  # two\n"],
    [
      "remarks on lines of their own",
      "light key {\n# one\na: 1 \n      #two\n}",
      "light key {\n  # one\n  a: 1\n  # two\n}\n",
    ],
    ["lists over several lines", 'about { tags: ["a",\n"b", ] }', 'about {\n  tags: ["a",\n    "b"]\n}\n'],
    ["lists with a line each", "let a = f([\n1,\n2,\n])", "let a = f([\n    1,\n    2,\n  ])\n"],
    ["reasons on the next line", 'expect a > 1 m\nbecause "so"', 'expect a > 1 m\n  because "so"\n'],
    [
      "columns over several lines",
      'table "t" {\nshow\na, b as metres "B",\nc\nsweep a over [1] }',
      'table "t" {\n  show\n    a, b as m "B",\n    c\n  sweep a over [1]\n}\n',
    ],
    ["text of several lines", 'about { note: """a\r\n   b""" }', 'about {\n  note: """a\n   b"""\n}\n'],
    [
      "a session",
      'session "s" of "./a.light"{measured{a is f/8}}',
      'session "s" of "./a.light" { measured { a is f/8 } }\n',
    ],
  ])("%s", (_name, text, right) => {
    expect(formatted(text)).toBe(right);
    expect(formatted(right)).toBe(right);
  });

  it("is what the texts of the tests are in", () => {
    for (const text of recipeTexts) {
      expect(formatText({ name: "a", text }, { canonicalUnit })).toMatchObject({
        text,
        changed: false,
        fault: false,
      });
    }
  });

  it("ends lines with a line feed and drops the mark at the head", () => {
    expect(
      formatText({ name: "a", text: "\ufeffhalfshade 1\r\nlet a = 1\r\n" }, { canonicalUnit }).text,
    ).toBe("halfshade 1\nlet a = 1\n");
  });
});

describe("a text with errors", () => {
  it("is refused with its findings and left alone", () => {
    const { text, diagnostics, changed, fault } = format("light key { distance 2 m }");
    expect(text).toBeNull();
    expect(diagnostics.map((diagnostic) => diagnostic.code)).toEqual(["colon.missing"]);
    expect(changed).toBe(false);
    expect(fault).toBe(false);
  });
});

describe("a formatter that would change the meaning", () => {
  it("gives no text", () => {
    const spoilt = formatText(
      { name: "a", text: "halfshade 1\nlet a = 2 m\n" },
      { canonicalUnit: (unit) => (unit === "m" ? "1 + m" : unit) },
    );
    expect(spoilt.text).toBeNull();
    expect(spoilt.fault).toBe(true);
  });
});
