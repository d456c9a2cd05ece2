import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { withoutOrigins } from "../../src/model/plain.js";
import { run } from "../../src/pipeline.js";

const recipe = `halfshade 1
recipe "A boat builder"

let gap = 40 cm

subject { height: 1.7 m }
set {
  flat back { size: 2 x 2.4 m, at: offset(behind: gap) }
}
light key {
  shape: disc(18 cm)
  full_power: 400 Ws
  calibration: metered(f/8, at: 2 m, ISO 100)
  floor_distance: 2.4 m
  bearing: left(35 deg)
  height: 2.2 m
}
camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 100
  distance: 3.2 m
  height: 1.5 m
}
`;

const compiled = (text: string, ...settings: readonly string[]) =>
  compile({ name: "a.light", text }, { settings: { name: "--set", text: settings.join("\n") } });

/** Findings as their code and the part of the settings that they point at. */
function found(...settings: readonly string[]): readonly string[] {
  const all = settings.join("\n");
  return compiled(recipe, ...settings).diagnostics.map(
    ({ code, place }) =>
      `${code} ${place.file === "--set" ? `"${all.slice(place.start, place.end)}"` : place.file}`,
  );
}

describe("values from outside", () => {
  test.each<readonly [string, string, string]>([
    ["key.floor_distance=3m", "floor_distance: 2.4 m", "floor_distance: 3 m"],
    // The tape in another way takes the place of the one that is written.
    ["key.distance = 2.6 m", "floor_distance: 2.4 m", "distance: 2.6 m"],
    ["key.power=1/4", "  bearing", "  power: 1/4\n  bearing"],
    ["camera.aperture=f/5.6", "aperture: f/8", "aperture: f/5.6"],
    ["gap=1 m", "gap = 40 cm", "gap = 1 m"],
    ["back.at=offset(behind: 2 m)", "at: offset(behind: gap)", "at: offset(behind: 2 m)"],
    ["subject.height=gap + 1 m", "height: 1.7 m", "height: gap + 1 m"],
  ])("%s is the recipe with that value written in it", (setting, written, instead) => {
    expect(recipe).toContain(written);
    const there = compiled(recipe, setting);
    expect(there.diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
    const direct = compile({ name: "a.light", text: recipe.replace(written, instead) });
    const plain = (model: typeof there.recipe) =>
      model === null ? null : { ...(withoutOrigins(model) as object), title: "", lets: [] };
    expect(plain(there.recipe)).toEqual(plain(direct.recipe));
  });

  test("several hold together, and the title of the report says them", () => {
    const { evaluated } = run(
      { name: "a.light", text: recipe },
      { settings: { name: "--set", text: "key.power=1/4\ncamera.aperture=f/4" } },
    );
    expect(evaluated?.report.title).toBe("A boat builder, with key.power=1/4, camera.aperture=f/4");
    expect(evaluated?.report.lights[0]?.power.below_full).toBe(2);
  });

  test.each<readonly [readonly string[], readonly string[]]>([
    [["kye.power=1/4"], ['path.unknown "kye"']],
    [["key.pwoer=1/4"], ['property.unknown "pwoer"']],
    [["key=1/4"], ['path.short "key"']],
    [["key.power=1 mt"], ['unit.unknown "mt"']],
    [["key.power=50 %"], ['power.percent "50 %"']],
    [["key.floor_distance=3"], ['unit.missing "3"']],
    [["gap=2 mt"], ['unit.unknown "mt"']],
    [["key.power=1/4", "camera.aperture=8"], ['unit.missing "8"']],
    [["key.power"], ['path.setting "key.power"']],
    [["=3 m"], ['path.setting "=3 m"']],
    [["key.power=1/4, key.height=3 m"], ['path.setting "key.power=1/4, key.height=3 m"']],
    [["key.power=1/4 } light x {"], ["line.surplus"]],
    [["key.floor_distance=2,4 m"], ['number.comma "2,4"']],
    [["key.power="], ["value.missing"]],
    [["key.power=1/4\u2028light x {"], ["path.setting"]],
  ])("%j: the finding points at the option", (settings, codes) => {
    const said = found(...settings);
    expect(said.map((one, index) => one.slice(0, codes[index]?.length ?? 0))).toEqual(codes);
  });

  test.each(["camera.sensitivity=ISO400", "camera.sensitivity=iso 400", "camera.sensitivity=ISO 400"])(
    "%s is clear enough",
    (setting) => {
      const { recipe: model, diagnostics } = compiled(recipe, `${setting}\ncamera.aperture=f4`);
      expect(diagnostics).toEqual([]);
      expect(model?.camera?.sensitivity).toEqual(
        compiled(recipe, "camera.sensitivity=ISO 400").recipe?.camera?.sensitivity,
      );
      expect(model?.camera?.aperture).toEqual(
        compiled(recipe, "camera.aperture=f/4").recipe?.camera?.aperture,
      );
    },
  );

  test("nothing but a value comes in, whatever is written", () => {
    for (const hostile of [
      "key.power=1/4 }\nlight x { shape: disc(1 m)",
      'key.power=1/4} variant "y" {',
      "key.power=1/4 # }",
      "x}light y{shape=disc(1 m)",
      'key.power="""',
      "a=".repeat(400),
      "key.power=((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((((1",
      "__proto__.x=1 m",
      "key.__proto__=1 m",
    ]) {
      const { recipe: model, diagnostics } = compiled(recipe, hostile);
      expect(model?.lights.map(({ name }) => name) ?? []).toEqual(["key"]);
      const [line = ""] = hostile.split("\n");
      for (const { place } of diagnostics) {
        expect(place.start).toBeLessThanOrEqual(place.end);
        if (place.file === "--set")
          expect(place.end).toBeLessThanOrEqual(Math.max(hostile.length, line.length));
      }
    }
  });

  test("a kit is left as it is", () => {
    const { diagnostics, recipe: model } = compiled('halfshade 1\nkit "K"\n', "key.power=1/4");
    expect([diagnostics, model?.title]).toEqual([[], "K"]);
  });
});
