import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { sentence } from "../../src/diagnostics/create.js";

/** A recipe with one more line, and other words in it. */
function recipe(line: string, old = "", now = ""): string {
  return `halfshade 1
recipe "A slip of the pen"
subject { height: 1.7 m }
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m
}
light key { shape: disc(30 cm), calibration: metered(f/8, at: 2 m, ISO 100), distance: 2 m, bearing: left(40 deg), height: 2 m }
expect key.angular_size > 1 deg
${line}
`.replace(old, now);
}

/** The only finding of a text: its code, where it stands, and all that it says. */
function only(text: string): { readonly code: string; readonly at: string; readonly words: string } {
  const { diagnostics } = compile({ name: "slip.light", text });
  expect(diagnostics.map(({ code }) => code).length).toBe(1);
  const [found] = diagnostics;
  if (found === undefined) throw new Error("nothing found");
  const { code, place, help, fixes } = found;
  const ways = fixes.map(({ title }) => title).join(" ");
  return { code, at: text.slice(place.start, place.end), words: `${sentence(found)}. ${help} ${ways}` };
}

describe("a claim about what is set, not what follows", () => {
  test.each([
    [
      "expect camera.shutter < 1/60 s",
      "name.unknown",
      "camera.shutter",
      "`shutter` is a setting of `camera`",
    ],
    ["expect key.power > 1", "result.unknown", "key.power", "`power` is a setting of `key`"],
  ])("%s", (line, code, at, words) => {
    const found = only(recipe(line));
    expect(found).toMatchObject({ code, at });
    expect(found.words).toContain(words);
    expect(found.words).not.toContain("Perhaps");
  });

  test("what is written is never proposed in its own place", () => {
    expect(only(recipe("expect camera.nothing > 1")).words).not.toContain("Perhaps");
    expect(only(recipe("expect camra.shutter > 1")).words).toContain("camera.shutter");
  });
});

test.each([
  ["expect shadow_length(of: 1 m) > 1 m", "shadow_length(of: 1 m)"],
  ["expect angular_size > 1 deg", "angular_size"],
])("a result of a light without the light: %s", (line, at) => {
  const found = only(recipe(line));
  expect(found).toMatchObject({ code: "result.unknown", at });
  expect(found.words).toContain("It is asked of a light");
  expect(found.words).toMatch(/write `key\.(shadow_length|angular_size)`/);
});

test("a result of the whole set-up asked of a light", () => {
  expect(only(recipe("expect key.headroom > 1 cm")).words).toContain("without a light in front: `headroom");
});

test.each([
  ["expect key.shadow_edge(gpa: 20 cm) < 9 cm", "gpa", "perhaps `gap` is meant"],
  ["expect key.shadow_edge(gap: 20 cm, acros: width) < 9 cm", "acros", "perhaps `across` is meant"],
  ["expect key.angular_size(gap: 20 cm) > 1 deg", "gap", "takes no `gap`"],
])("a misspelt argument is told at its name: %s", (line, at, words) => {
  const found = only(recipe(line));
  expect(found).toMatchObject({ code: "result.argument", at });
  expect(found.words).toContain(words);
});

test("a share in per cent where a unit is wanted is no plain number", () => {
  const found = only(recipe("tolerances { meter: 50 % }"));
  expect(found).toMatchObject({ code: "unit.wrong", at: "50 %" });
  expect(found.words).toContain("wants a number of stops, not a share in per cent");
});

test.each([
  ["./examples", "it does not name a file that ends in .light"],
  ["/home/kit.light", "it does not start from this file"],
  ["C:/kit.light", "it does not start from this file"],
  [".\\\\kit.light", "it has backslashes"],
  ["https://a.example/kit.light", "it is an address of the web"],
  ["./con.light", "one of its parts cannot be the name of a file"],
  ["./k?.light", "it has a sign that no path may have"],
])("a path that cannot be used says why: %s", (path, words) => {
  const text = recipe("").replace("subject", `use lamp from "${path}"\nsubject`);
  expect(only(text).words).toContain(words);
});

test.each([
  ["subject { height: 1.7 m }", "subject { height: 1.7 m +- }", "behind `+-` stands how far"],
  ["subject { height: 1.7 m }", "subject { height: 1.7 m + }", "behind `+`"],
  ["distance: 3 m, height", "distance: 3 m *\n height", "behind `*`"],
])("what is missing at the end of a line is told by what it belongs behind: %s", (old, now, words) => {
  const found = only(recipe("", old, now));
  expect(found.code).toBe("line.unfinished");
  expect(found.words).toContain(words);
});

describe("a tolerance of the whole value or more is refused", () => {
  test.each(["100 %", "150 %"])("behind a value: %s", (share) => {
    const found = only(recipe("", "height: 1.7 m", `height: 1.7 m +- ${share}`));
    expect(found).toMatchObject({ code: "value.tolerance-whole", at: share });
  });

  test.each(["size", "lens", "reflectance", "assumed_reflectance"])("of the recipe: %s", (name) => {
    const found = only(recipe(`tolerances { ${name}: 100 % }`));
    expect(found).toMatchObject({ code: "value.range", at: "100 %" });
    expect(found.words).toContain("99 %");
  });

  test.each(["1.7 m +- 99 %", "1.7 m +- 2 m"])("less than that, or an amount, is taken: %s", (height) => {
    const { sound } = compile({ name: "a.light", text: recipe("", "height: 1.7 m", `height: ${height}`) });
    expect(sound).toBe(true);
  });
});

describe("a word in the wrong place, or one too few", () => {
  test.each([
    [
      'expect key.angular_size > 2 deg surely because "soft"',
      "line.surplus",
      "surely",
      "write `expect surely`",
      'expect surely key.angular_size > 2 deg because "soft"',
    ],
    [
      "expect key.distance > 1 m\nexpect key.height > 1 m and key.reserve > 0 stop surely",
      "line.surplus",
      "surely",
      "`surely` stands right behind `expect`",
      "expect key.distance > 1 m\nexpect surely key.height > 1 m and key.reserve > 0 stop",
    ],
    [
      "light fill { shape: disc(9 cm), calibration: metered(f/4, at 2 m, ISO 100), distance: 2 m, bearing: right(9 deg), height: 2 m }",
      "colon.missing",
      "at",
      "write `at: 2 m`",
      "light fill { shape: disc(9 cm), calibration: metered(f/4, at: 2 m, ISO 100), distance: 2 m, bearing: right(9 deg), height: 2 m }",
    ],
    [
      "expect lit_to_shadow(face) > 3",
      "claim.types",
      "lit_to_shadow(face) > 3",
      "write `3:1` write `3 stop`",
      "expect lit_to_shadow(face) > 3:1",
    ],
    [
      "expect kye.shadow_length(on: floor) > 1 m",
      "name.unknown",
      "kye",
      "There is no `kye` here",
      "expect key.shadow_length(on: floor) > 1 m",
    ],
  ])("%s", (line, code, at, words, mended) => {
    const text = recipe(line);
    const found = only(text);
    expect([found.code, found.at]).toEqual([code, at]);
    expect(found.words).toContain(words);
    const edits = compile({ name: "slip.light", text }).diagnostics[0]?.fixes[0]?.edits ?? [];
    const fixed = [...edits]
      .sort((a, b) => b.place.start - a.place.start)
      .reduce((now, { place, text: put }) => now.slice(0, place.start) + put + now.slice(place.end), text);
    expect(fixed).toBe(recipe(mended));
  });

  test("a number without a unit behind a word is still told to change places with it", () => {
    expect(only(recipe("", "at: 2 m", "m 2")).code).toBe("unit.order");
  });
});

describe("a variant that removes what a kept expectation asks of", () => {
  const rim =
    "light rim { shape: disc(9 cm), calibration: metered(f/4, at: 2 m, ISO 100), distance: 2 m, bearing: right(140 deg), height: 2 m }";
  test.each(["rim.shadow_length(on: floor) > 1 cm", "rim.reserve >= 0 stop"])("%s", (claim) => {
    const found = only(recipe(`${rim}\nexpect ${claim}\nvariant "Bare" { remove rim, keep expectations }`));
    expect([found.code, found.at]).toEqual(["name.unknown", "keep expectations"]);
    expect(found.words).toContain("The variant removes `rim`, and this asks for it.");
  });
});
