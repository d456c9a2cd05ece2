import { describe, expect, test } from "vitest";
import { type Change, changeFile } from "../../src/check/change/change.js";
import { changesOf } from "../../src/check/variants/repeats.js";
import { compile } from "../../src/compile.js";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { printFile } from "../../src/format/print-node.js";
import type { File } from "../../src/syntax/ast.js";
import { parseFile } from "../../src/syntax/parse.js";
import { makePath, makeQuantity } from "../helpers/make-values.js";

const BASE = `halfshade 1
recipe "The glass blower's door"

let throw = 3 m

define light strobe {
  shape: disc(18 cm)
  calibration: metered(f/8, at: 2 m, ISO 100)
  distance: 2 m
  gel: warm(30 mired)
}
define room hall { walls { reflectance: 30 % } }

room like hall { size: 6 x 8 x 3 m }
set { flat back { size: 2 x 2.4 m, at: offset(behind: 1.5 m) } }
subject { height: 1.7 m, point hand { at: offset(up: 1.2 m) } }
light key like strobe {
  bearing: left(30 deg)
  height: 2.2 m
  power: 1/2
}
light fill like strobe { distance: throw, bearing: right(30 deg), elevation: 10 deg }
camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
`;

/** A file that uses no kits. */
const none = { find: () => null, gap: () => false };
const parse = (text: string): File => parseFile({ name: "door.light", text }, () => undefined).file;

/** The changes that the lines of a variant make, and what is found. */
function changed(lines: string): { readonly text: string; readonly findings: readonly Diagnostic[] } {
  const file = parse(`${BASE}variant "B" {\n${lines}\n}\n`);
  const variant = file.items.find((item) => item.kind === "variant");
  if (variant?.kind !== "variant") throw new Error("no variant");
  const findings: Diagnostic[] = [];
  const base = { ...file, items: file.items.filter((item) => item !== variant) };
  const after = changeFile(
    base,
    changesOf(variant),
    {
      file: "door.light",
      sink: (one) => findings.push(one),
    },
    none,
  );
  return { text: printFile(after), findings };
}

const canonical = (text: string): string => printFile(parse(text));
/** The base text with parts of it replaced, in canonical form: what the changed file has to be. */
const rewritten = (...pairs: readonly (readonly [was: string, is: string])[]): string =>
  canonical(
    pairs.reduce((text, [was, is]) => {
      if (!text.includes(was)) throw new Error(was);
      return text.replace(was, is);
    }, BASE),
  );

describe("a change is the file as if it had been written so", () => {
  test.each<[what: string, lines: string, wanted: string]>([
    ["a value", "key.power: 1/8", rewritten(["  power: 1/2\n", "  power: 1/8\n"])],
    [
      "a value the definition has",
      "key.distance: 4 m",
      rewritten(["  power: 1/2\n", "  power: 1/2\n  distance: 4 m\n"]),
    ],
    [
      "a sibling of a placement goes",
      "key.elevation: 40 deg",
      rewritten(["  height: 2.2 m\n  power: 1/2\n", "  power: 1/2\n  elevation: 40 deg\n"]),
    ],
    [
      "a position replaces all tapes",
      "fill.position: (1 m, -2 m, 2 m)",
      rewritten(["distance: throw, bearing: right(30 deg), elevation: 10 deg", "position: (1 m, -2 m, 2 m)"]),
    ],
    ["a let", "throw: 5 m", rewritten(["let throw = 3 m", "let throw = 5 m"])],
    [
      "a block without a name",
      "camera.aperture: f/11",
      rewritten(["aperture: f/8, ", ""], ["height: 1.5 m }\n", "height: 1.5 m, aperture: f/11 }\n"]),
    ],
    [
      "a piece by its name",
      "back.hinge: left_edge(other)",
      rewritten([", at: offset(behind: 1.5 m)", ", hinge: left_edge(other)"]),
    ],
    [
      "a piece by set and name",
      "set.back.front: black_cloth",
      rewritten(["1.5 m) }", "1.5 m), front: black_cloth }"]),
    ],
    [
      "a piece by kind and name",
      "flat.back.front: black_cloth",
      rewritten(["1.5 m) }", "1.5 m), front: black_cloth }"]),
    ],
    [
      "a part of a definition is taken over first",
      "walls.reflectance: 60 %",
      rewritten(["size: 6 x 8 x 3 m }", "size: 6 x 8 x 3 m\n walls { reflectance: 60 % } }"]),
    ],
    [
      "a part that stood at its default",
      "room.wall.left.reflectance: 5 %\nwall.left.reflectance: 6 %",
      rewritten([
        "size: 6 x 8 x 3 m }",
        "size: 6 x 8 x 3 m\n wall left { reflectance: 5 %, reflectance: 6 % } }",
      ]),
    ],
    [
      "a block that stood at its defaults",
      "tolerances.tape: 5 cm",
      canonical(`${BASE}tolerances { tape: 5 cm }\n`),
    ],
    [
      "a definition",
      "strobe.shape: disc(30 cm)",
      rewritten(
        ["  shape: disc(18 cm)\n", ""],
        ["warm(30 mired)\n", "warm(30 mired)\n  shape: disc(30 cm)\n"],
      ),
    ],
    ["a point of a subject", "subject.hand.at: offset(up: 1 m)", rewritten(["up: 1.2 m", "up: 1 m"])],
    [
      "remove a block",
      "remove fill",
      rewritten([
        "light fill like strobe { distance: throw, bearing: right(30 deg), elevation: 10 deg }\n",
        "",
      ]),
    ],
    [
      "remove a piece",
      "remove back",
      rewritten(["flat back { size: 2 x 2.4 m, at: offset(behind: 1.5 m) }", ""]),
    ],
    ["remove a property", "remove key.power", rewritten(["  power: 1/2\n", ""])],
    ["add a block", "point rail { up: 1 m }", canonical(`${BASE}point rail { up: 1 m }\n`)],
    [
      "add to the set",
      "set { card white { size: 1 x 1 m } }",
      rewritten(["1.5 m) } }", "1.5 m) }\n card white { size: 1 x 1 m } }"]),
    ],
    [
      "changes that contradict each other both stay, for the checker",
      "key.height: 2 m\nkey.elevation: 40 deg",
      rewritten(["  height: 2.2 m\n  power: 1/2\n", "  power: 1/2\n  height: 2 m\n  elevation: 40 deg\n"]),
    ],
  ])("%s", (_, lines, wanted) => {
    const { text, findings } = changed(lines);
    expect(findings).toEqual([]);
    expect(text).toBe(wanted);
  });
});

test("a change that leads nowhere is reported and leaves the file as it is", () => {
  const said = (lines: string): readonly unknown[] => {
    const { text, findings } = changed(lines);
    expect(text).toBe(canonical(BASE));
    return findings.map((one) => [one.code, one.place.start < one.place.end, one.help]);
  };
  expect(said("kye.distance: 3 m")).toEqual([["path.unknown", true, "Perhaps `key`?"]]);
  expect(said("meadow.distance: 3 m")).toEqual([
    ["path.unknown", true, expect.stringContaining("throw, strobe, hall, room")],
  ]);
  expect(said("light.distance: 3 m")).toEqual([["path.unknown", true, "Perhaps `key` or `fill`?"]]);
  expect(said("key.distnace: 3 m")).toEqual([["property.unknown", true, "Perhaps `distance`?"]]);
  expect(said("walls.reflectanse: 3 %")).toEqual([["property.unknown", true, "Perhaps `reflectance`?"]]);
  expect(said("key: 3 m")).toEqual([["path.short", true, expect.stringContaining("key.")]]);
  expect(said("key.distance.far: 3 m")).toEqual([["path.long", true, expect.any(String)]]);
  expect(said('throw: "far"')).toEqual([["path.let", true, expect.any(String)]]);
  expect(said("remove throw")).toEqual([["path.let", true, expect.any(String)]]);
  expect(said("remove rim")).toEqual([["path.unknown", true, expect.any(String)]]);
  expect(said("remove key.gel")).toEqual([["path.inherited", true, expect.any(String)]]);
  expect(said("remove walls")).toEqual([["path.inherited", true, expect.any(String)]]);
  expect(said("remove ceiling")).toEqual([["path.absent", true, expect.any(String)]]);
  expect(said("remove key.feather")).toEqual([["path.absent", true, expect.any(String)]]);
  expect(said("remove key.fether")).toEqual([["property.unknown", true, "Perhaps `feather`?"]]);
});

test("a made value reads as if it had been written", () => {
  const file = parse(BASE);
  const span = { start: 0, end: 0 };
  const set = (path: string[], value: number, unit: string): Change => ({
    kind: "set",
    path: makePath(path, span),
    value: makeQuantity(value, unit, span),
    companion: null,
    span,
  });
  const sink = (one: Diagnostic): void => expect(one).toBe(null);
  const after = changeFile(
    file,
    [set(["key", "distance"], 1 / 3, "m"), set(["key", "feather"], -2.5e-7, "deg")],
    {
      file: "door.light",
      sink,
    },
    none,
  );
  expect(printFile(after)).toContain("  distance: 0.3333333333333333 m\n  feather: -0.00000025 deg\n");
  expect(parse(printFile(after)).items.length).toBe(file.items.length);
});

test("the base itself is not touched", () => {
  const source = { name: "door.light", text: BASE };
  const { file } = compile(source);
  const before = printFile(file);
  changeFile(
    file,
    [{ kind: "remove", path: makePath(["key"], { start: 0, end: 0 }) }],
    {
      file: "door.light",
      sink: () => undefined,
    },
    none,
  );
  expect(printFile(file)).toBe(before);
});
