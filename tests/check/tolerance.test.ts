import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { printRecipe } from "../../src/model/print.js";
import type { Quantity } from "../../src/units/quantity.js";

const recipe = (more: string): string => `halfshade 1
recipe "Tolerances"
let far = 3 m +- 3 cm
subject { height: 1.7 m }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: far, height: 1 m }
light key { shape: disc(20 cm), output: 900 lm s, distance: 2 m, height: 2 m }
${more}`;

/** The value of a property of a point called p, or of the set-up's only flat, as read. */
function quantityOf(up: string): Quantity {
  const { recipe: model, diagnostics } = compile({ name: "t.light", text: recipe(`point p { up: ${up} }`) });
  const point = model?.points[0];
  if (point?.up === undefined || diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics));
  return point.up;
}

const spreadOf = ({ plusMinus }: Quantity) =>
  plusMinus === undefined ? null : [plusMinus.value, plusMinus.unit];

describe("the tolerance of a value that is worked out", () => {
  test.each([
    ["far", 3, 0.03],
    ["far - 1 m", 2, 0.03],
    // 3 and 4 cm, independent: 5 cm.
    ["far - (1 m +- 4 cm)", 2, 0.05],
    ["far / 2", 1.5, 0.015],
    ["0.5 * far", 1.5, 0.015],
    // 1 % and 2 %: sqrt(5) % of 1.5 m.
    ["far * (0.5 +- 2 %)", 1.5, 1.5 * Math.sqrt(0.01 * 0.01 + 0.04 * 0.04)],
    ["-far + 4 m", 1, 0.03],
    ["(2 m +- 5 %) + 1 m", 3, 0.1],
    // One name is one measured length: twice it is off by twice as much, and it less itself by nothing.
    ["far + far", 6, 0.06],
    ["far - far / 3 + 1 m", 3, 0.02],
    ["far - far + 1 m", 1, 0],
    ["2 m * far / far", 2, 0],
    ["far * far / (3 m)", 3, 0.06],
    ["-far + far + (2 m +- 1 cm)", 2, 0.01],
  ])("%s", (written, value, off) => {
    const found = quantityOf(written);
    expect(found.value).toBeCloseTo(value, 12);
    expect(found.plusMinus?.unit).toBe("m");
    expect(found.plusMinus?.value).toBeCloseTo(off, 9);
  });

  test("prints, and is read again, as it was", () => {
    const first = compile({ name: "t.light", text: recipe("point p { up: far - (1 m +- 4 cm) }") }).recipe;
    if (first === null) throw new Error("no recipe");
    const text = printRecipe(first);
    expect(text).toContain("up: 2 m +- 5 cm");
    expect(compile({ name: "t.light", text }).recipe?.points[0]?.up?.plusMinus).toEqual(
      first.points[0]?.up?.plusMinus,
    );
  });

  test("an f-number closed by stops is off by those of both, as squares", () => {
    const text = recipe("").replace("f/8", "closed(f/8 +- 0.3 stop, 1 stop +- 0.4 stop)");
    const { recipe: model } = compile({ name: "t.light", text });
    const { aperture } = model?.camera ?? {};
    if (aperture === undefined) throw new Error("no aperture");
    expect(aperture.value).toBeCloseTo(8 * Math.SQRT2, 3);
    expect(spreadOf(aperture)).toEqual([0.5, "stop"]);
    const again = compile({ name: "t.light", text: printRecipe(model as NonNullable<typeof model>) }).recipe;
    expect(again?.camera?.aperture?.plusMinus).toEqual(aperture.plusMinus);
  });
});

test("a tolerance behind a name takes the place of the name's own, and is off by itself", () => {
  const found = quantityOf("far +- 1 cm");
  expect(spreadOf(found)).toEqual([0.01, "m"]);
  expect(found.origin).toBeUndefined();
  expect(quantityOf("far").origin).toMatchObject([{ name: "far", share: 1 }]);
  expect(quantityOf("4 m - far").origin).toMatchObject([{ name: "far", share: -1 }]);
  // 3 cm of the name's, 4 cm of its own.
  expect(quantityOf("far - (1 m +- 4 cm)").origin?.[0]?.share).toBeCloseTo(0.6, 12);
});

describe("the tolerance of amounts of light, of settings and of surfaces", () => {
  const read = (before: string, after: string) => {
    expect(recipe("point p { up: far }")).toContain(before);
    return compile({ name: "t.light", text: recipe("point p { up: far }").replace(before, after) });
  };

  test("may be in stops, and prints and reads again", () => {
    const made = read("output: 900 lm s", "output: 900 lm s +- 0.3 stop, power: 1/16 +- 1/3 stop");
    expect(made.diagnostics).toEqual([]);
    const [key] = made.recipe?.lights ?? [];
    expect(key?.output?.amount.plusMinus).toMatchObject({ value: 0.3, unit: "stop" });
    expect(key?.power?.kind === "fraction" && key.power.fraction.plusMinus).toMatchObject({ unit: "stop" });
    const text = printRecipe(made.recipe as NonNullable<typeof made.recipe>);
    expect(text).toContain("power: 1/16 +- 1/3 stop");
    const again = compile({ name: "t.light", text }).recipe?.lights[0];
    expect([again?.power, again?.output]).toEqual([key?.power, key?.output]);
  });

  test("of a surface by its name is one of its reflectance", () => {
    const made = compile({
      name: "t.light",
      text: recipe(
        "point p { up: far }\nset { card board { size: 60 x 90 cm, at: offset(right: 1 m, up: 1 m), front: white_board +- 4 % } }",
      ),
    });
    expect(made.diagnostics).toEqual([]);
    const [board] = made.recipe?.set?.parts ?? [];
    if (board?.block !== "card" || board.front === undefined) throw new Error("no card");
    expect(board.front).toMatchObject({ name: "white_board", written: "white_board +- 4 %" });
    expect(board.front.reflectance.plusMinus).toMatchObject({ value: 0.04, unit: "1" });
    const text = printRecipe(made.recipe as NonNullable<typeof made.recipe>);
    const again = compile({ name: "t.light", text }).recipe?.set?.parts[0];
    expect(again?.block === "card" && again.front).toEqual(board.front);
  });

  test("without its unit is refused, with the unit of the value", () => {
    const found = (before: string, after: string) => read(before, after).diagnostics[0];
    expect(found("distance: 2 m", "distance: 2 m +- 3")?.fixes[0]?.title).toBe("write `3 m`");
    expect(found("height: 2 m", "height: 200 cm +- 3")?.fixes[0]?.title).toBe("write `3 cm`");
    expect(found("f/8", "f/8 +- 1/3")?.fixes[0]?.title).toBe("write `1/3 stop`");
    expect(found("distance: 2 m", "distance: 2 m, power: 1/4 +- 2")?.code).toBe("value.tolerance");
  });
});

describe("the tolerance of a size", () => {
  const flat = (size: string) =>
    compile({
      name: "t.light",
      text: recipe(`set { flat back { size: ${size}, at: offset(behind: 1 m) } }`),
    });

  test("stands behind the last number and counts for each side", () => {
    const { recipe: model, diagnostics } = flat("1.2 x 2.2 m +- 1 cm");
    expect(diagnostics).toEqual([]);
    const back = model?.set?.parts[0];
    if (back?.block !== "flat" || back.size === undefined) throw new Error("no flat");
    expect(spreadOf(back.size.width)).toEqual([0.01, "m"]);
    expect(spreadOf(back.size.height)).toEqual([0.01, "m"]);
    expect(back.size.written).toBe("1.2 x 2.2 m +- 1 cm");
  });

  test("may be a share of each", () => {
    const back = flat("1.2 x 2.2 m +- 2 %").recipe?.set?.parts[0];
    if (back?.block !== "flat" || back.size === undefined) throw new Error("no flat");
    expect(spreadOf(back.size.height)).toEqual([0.02, "%"]);
  });

  test("behind one side is refused, with the way it is written", () => {
    const [finding] = flat("1.2 m +- 1 cm x 2.2 m").diagnostics;
    expect(finding?.code).toBe("value.tolerance-side");
    expect(finding?.fixes[0]?.title).toBe("write `1.2 x 2.2 m +- 1 cm`");
  });

  test("is a length or a share, not an angle", () => {
    expect(flat("1.2 x 2.2 m +- 2 deg").diagnostics[0]?.code).toBe("value.tolerance");
  });
});

test.each([
  "room { size: 4 x 5 x 3 m, ambient: 100 lx +- 10 lx }",
  "intent { pass_for: sunlight(elevation: 30 deg +- 2 deg) }",
  "tolerances { tape: 2 cm +- 1 cm }",
])("a tolerance that nothing follows from is noted: %s", (more) => {
  const { diagnostics } = compile({ name: "t.light", text: recipe(more) });
  expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
    ["value.tolerance-idle", "note"],
  ]);
});
