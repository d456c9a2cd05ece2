import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";

/** The wish of a recipe and the codes of its findings. */
function wished(text: string) {
  const { recipe, diagnostics } = compile({
    name: "a.light",
    text: `halfshade 1\nrecipe "a"\nintent { pass_for: ${text} }\n`,
  });
  return {
    wish: recipe?.intent?.pass_for ?? null,
    codes: diagnostics.filter(({ severity }) => severity === "error").map(({ code }) => code),
    said: diagnostics.flatMap(({ args }) => Object.values(args)).join(" "),
  };
}

describe("an overcast sky", () => {
  test.each([
    ["overcast", { kind: "overcast", written: "overcast" }],
    ["overcast(elevation: 25 deg)", { sun: { kind: "sunlight", elevation: { value: 25 } } }],
    ["overcast(metered: 6 klx)", { metered: { value: 6000, unit: "lx" } }],
    [
      'overcast(at: [south(34 deg), east(151 deg)], on: "2026-05-02", time: "09:00 +10:00")',
      { sun: { kind: "sun_at", latitude: { value: -34 } } },
    ],
    [
      "window(size: 1 x 2 m, distance: 1.5 m, sky: overcast(elevation: 25 deg))",
      { kind: "window", sky: { sun: { kind: "sunlight" } } },
    ],
  ])("%s is read, and written as it stands", (text, like) => {
    const { wish, codes } = wished(text);
    expect(codes).toEqual([]);
    expect(wish).toMatchObject(like);
    if (!text.includes("klx")) expect(wish?.written).toBe(text);
  });

  test.each([
    ["overcast(metered: 9000 lx, elevation: 30 deg)", "value.argument", "not both"],
    ["overcast(elevation: 120 deg)", "value.range", "elevation"],
    ["overcast(elevation: 30)", "unit.missing", "elevation"],
    ["overcast(metered: 30 deg)", "unit.wrong", "metered"],
    ['overcast(on: "2026-05-02")', "value.argument", "place with a date"],
    ["overcast(clouds: 8)", "value.argument", "it may have elevation"],
    ["window(size: 1 x 2 m, distance: 1.5 m, sky: sunlight(elevation: 30 deg))", "value.type", "sky"],
    ["window(size: 1 x 2 m, distance: 1.5 m, sky: grey)", "value.type", "sky"],
  ])("%s is refused with %s", (text, code, words) => {
    const { wish, codes, said } = wished(text);
    expect(wish).toBeNull();
    expect(codes).toEqual([code]);
    expect(said).toContain(words);
  });
});
