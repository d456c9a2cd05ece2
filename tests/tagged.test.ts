import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cm,
  compile,
  deg,
  disc,
  fNumber,
  fractionOfFull,
  halfshade,
  halfshadeText,
  iso,
  isRecipeError,
  left,
  light,
  m,
  metered,
  named,
  number,
  plusMinus,
  printRecipe,
  type Recipe,
  recipeFrom,
  withoutOrigins,
} from "../src/index.js";

const lamp = light("key", {
  shape: disc(cm(60)),
  calibration: metered(fNumber(11), m(2), iso(100)),
  power: fractionOfFull(number(0.5)),
  distance: { length: m(2), from: null, written: "2 m" },
  bearing: left(deg(45)),
  height: m(2.1),
});
const plain = (recipe: Recipe | null): Recipe | null => recipe && withoutOrigins(recipe);

describe("a recipe as a template", () => {
  test("is the recipe that was written by hand", () => {
    const made = halfshade`
      halfshade 1
      recipe ${'The "wheel" \\ at noon'}
      about { tags: ${["soft", "one lamp"]} }
      subject { height: ${plusMinus(m(1.7), cm(2))} }
      ${lamp}
      expect key.angular_size is ${deg(17)} within ${deg(1)}
      variant "Far" { key.distance: ${m(4)}, key.bearing: ${left(deg(30))} }
      tolerances { dial: ${{ written: "0.2 stop" }} }
      table "Walk" {
        sweep ${named("key")}.distance over ${[m(1), m(2)]}
        show key.angular_size / ${2} as deg "Half"
      }
    `;
    const text = `halfshade 1
recipe "The \\"wheel\\" \\\\ at noon"
about { tags: ["soft", "one lamp"] }
subject { height: 1.7 m +- 2 cm }
light key {
  shape: disc(60 cm)
  calibration: metered(f/11, at: 2 m, ISO 100)
  power: 0.5
  distance: 2 m
  bearing: left(45 deg)
  height: 2.1 m
}
expect key.angular_size is 17 deg within 1 deg
variant "Far" { key.distance: 4 m, key.bearing: left(30 deg) }
tolerances { dial: 0.2 stop }
table "Walk" {
  sweep key.distance over [1 m, 2 m]
  show key.angular_size / 2 as deg "Half"
}
`;
    expect(plain(made)).toEqual(plain(recipeFrom({ name: "hand", text })));
    expect(made.variants).toHaveLength(1);
    expect(plain(recipeFrom({ name: "again", text: printRecipe(made) }))).toEqual(plain(made));
  });

  test("throws one error that holds the findings, or gives them as a result", () => {
    const source = halfshadeText`halfshade 1
recipe "x"
subject { height: ${170} }
`;
    expect(compile(source).diagnostics.map(({ code }) => code)).toEqual(["unit.missing"]);
    let thrown: unknown;
    try {
      recipeFrom(source);
    } catch (error) {
      thrown = error;
    }
    if (!isRecipeError(thrown)) throw thrown;
    expect(thrown.diagnostics).toEqual(compile(source).diagnostics);
    expect(thrown.sources).toEqual([source]);
    expect(thrown.message).toMatch(/^template:3:19 {2}error/);
    expect(isRecipeError(new Error("x"))).toBe(false);
    expect(() => halfshade`halfshade 1`).toThrow(/error/);
  });
});

describe("a hole", () => {
  const signs = fc.string({
    unit: fc.oneof(
      fc.constantFrom(..."\"\\`$}{()[],:#\n\t'x 1".split("")),
      fc.constantFrom('"""', "\\u{", "\r\n", "light evil {", "\u202e", "\u0000"),
    ),
    maxLength: 12,
  });

  test("with a text gives that text, whatever is in it", () => {
    fc.assert(
      fc.property(signs, (text) => {
        // Titles have rules of their own; a note may be any text.
        const made = compile(halfshadeText`halfshade 1
recipe "x"
about { by: ${text} }
`);
        expect(made.file.items).toHaveLength(1);
        const [about] = made.file.items;
        if (about?.kind !== "block") throw new Error("no block");
        const [by, ...more] = about.entries;
        expect(more).toEqual([]);
        expect(by?.kind === "property" && by.value.kind === "text" ? by.value.value : null).toBe(text);
      }),
      { numRuns: 300 },
    );
  });

  test("cannot hold more than one value, in its written form or in a name", () => {
    for (const written of [
      "1 m, power: off",
      "1 m }",
      "1 m\n  power: off",
      "1 m # ",
      '1 m because "x"',
      "",
      "1 m)",
      'disc("',
      "1 m {",
      "1 m and 2 m",
      "1 m #\n",
    ]) {
      const hole = { written };
      expect(
        () => halfshadeText`halfshade 1
light key { distance: ${hole} }`,
      ).toThrow(/not written as one value/);
    }
    expect(() => halfshadeText`let a = ${[{ written: "1 m #\n" }, m(2)]}`).toThrow(
      /not written as one value/,
    );
    expect(() => halfshadeText`${named("a` : b")}`).toThrow(TypeError);
    expect(() => halfshadeText`${{ ...m(1), written: "1 m\n}" }}`).toThrow(/not written as one value/);
    expect(() => halfshadeText`${light("x` {}\nlight evil", {})}`).toThrow(/not written as one block/);
    const evil = { ...m(1), written: "1 m\n  power: off" };
    expect(() => halfshadeText`${light("x", { height: evil })}`).toThrow(/not written as one block/);
  });

  test("inside quotation marks, in a comment or touching a word is refused", () => {
    const text = " light evil {} ";
    expect(
      () => halfshadeText`halfshade 1
recipe "${text}"`,
    ).toThrow(/Hole 1 stands inside quotation marks/);
    expect(() => halfshadeText`halfshade 1 # ${m(1)}`).toThrow(/comment/);
    expect(() => halfshadeText`let a = ${m(1)}m`).toThrow(/touches a word/);
    expect(() => halfshadeText`let a = 1${2} m`).toThrow(/touches a word/);
    expect(() => halfshadeText`let a = ${1} let b = "${2}"`).toThrow(/Hole 2/);
  });

  test("takes no other thing", () => {
    for (const thing of [undefined, null, Number.NaN, Number.POSITIVE_INFINITY, true, {}, { written: 3 }]) {
      expect(() => halfshadeText`${thing as unknown as string}`).toThrow(/Hole 1 holds/);
    }
  });

  test("leaves backslashes to the recipe and gives backticks back", () => {
    expect(halfshadeText`a "\n" \`key light\` \${x}`.text).toBe(`a "\\n" \`key light\` $${"{x}"}`);
  });
});
