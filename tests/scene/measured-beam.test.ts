import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { kitsAmong } from "../../src/check/kits/texts.js";
import { compile } from "../../src/compile.js";
import { readLm63 } from "../../src/photometry/index.js";
import { beamReading } from "../../src/physics/beam-reading.js";
import { beamTable, tableCosine, tableIntensity, tableLight } from "../../src/physics/beam-table.js";
import { run } from "../../src/pipeline.js";
import { readingAt } from "../../src/report/light/reading.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneToJson } from "../../src/scene/export.js";
import { sourceBeam, sourceShape } from "../../src/scene/lamp/optics.js";
import { directPerLumenSecond } from "../../src/transport/direct.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { gridFile, roundFile } from "../helpers/lm63.js";

const power = (n: number) => (away: number) => 1000 * Math.cos((away * Math.PI) / 180) ** n;

const recipeOf = (beam: string, more = "output: 900 lm"): string => `halfshade 1
recipe "Sail loft"
room { size: 5 x 6 x 3 m }
subject { height: 1.7 m }
light key {
  shape: rectangle(30 x 30 cm), beam: ${beam}, ${more}
  distance: 2 m, bearing: left(30 deg), height: 2.2 m
}
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/60 s, sensitivity: ISO 400, distance: 3 m, height: 1.4 m }
`;

function sceneOf(files: Readonly<Record<string, string>>, beam: string, more?: string) {
  const read = kitsAmong(new Map(Object.entries(files)));
  const { recipe, diagnostics } = compile({ name: "a.light", text: recipeOf(beam, more) }, { read });
  if (recipe === null) throw new Error("no recipe");
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene), diagnostics };
}

const key = (plan: ReturnType<typeof sceneOf>) => {
  const [source] = plan.scene.sources;
  if (source === undefined) throw new Error("no light");
  return source;
};

describe("a measured beam", () => {
  test("a file of cos^4 lights every place as the beam cosine_power(4) does, straight and bounced", () => {
    const measured = sceneOf({ "four.ies": roundFile(power(4)) }, 'measured("four.ies")');
    const formula = sceneOf({}, "cosine_power(4)");
    expect(measured.diagnostics).toEqual([]);
    for (const station of measured.scene.stations) {
      const [a, b] = [measured, formula].map((plan) => readingAt(plan, station).shares[0]);
      // Linear between whole degrees a cos^4 is right to 2e-4 of the axis.
      expect(Math.abs((a?.direct ?? 0) - (b?.direct ?? 0))).toBeLessThan(4e-4 * (b?.direct ?? 0) + 1e-6);
      const stops = Math.log2((a?.bounced ?? 1) / (b?.bounced ?? 1));
      const off = ((a?.error ?? 0) + (b?.error ?? 0)) / (b?.bounced ?? 1) / Math.LN2;
      expect(Math.abs(stops)).toBeLessThan(0.02 + off);
    }
  });

  test("far away it is the inverse square of its candelas, on the axis and beside it", () => {
    const text = readFileSync(new URL("../reference/ies/A1.ies", import.meta.url), "utf8");
    const plan = sceneOf({ "a1.ies": text }, 'measured("a1.ies")', "kind: steady");
    const source = key(plan);
    const { axis, along, centre } = source;
    for (const [away, candela] of [
      [0, 2000],
      [30, 1660],
      [45, (1400 + 1080) / 2],
      [60, 720],
    ] as const) {
      const [c, s] = [Math.cos((away * Math.PI) / 180), Math.sin((away * Math.PI) / 180)];
      const way = axis.map((x, i) => c * x + s * (along[i] ?? 0)) as [number, number, number];
      const at = centre.map((x, i) => x + 60 * (way[i] ?? 0)) as [number, number, number];
      const back = way.map((x) => -x) as [number, number, number];
      // The file's own light in 1/60 s, which stands for 1/64 s.
      const lux = directPerLumenSecond(source, at, back, "disc") * source.energy * 64;
      expect(lux * 3600).toBeCloseTo(candela, -1);
      expect(Math.abs((lux * 3600) / candela - 1)).toBeLessThan(1e-3);
    }
    expect(source.kind).toBe("steady");
    expect(source.known).toContain("a1.ies");
  });

  test("its output is the flux of the file: cos^n sends 2 pi I / (n + 1) into the front half (integral)", () => {
    const plan = sceneOf({ "x.ies": roundFile(power(4)) }, 'measured("x.ies")', "kind: steady");
    expect(key(plan).energy * 64).toBeCloseTo((2 * Math.PI * 1000) / 5, -1);
  });

  test("a flash may take its candela seconds along the axis from a file, whatever its beam", () => {
    const plan = sceneOf({ "x.ies": roundFile(power(4)) }, "lambertian", 'calibration: candelas("x.ies")');
    // A Lambertian source gives pi times its axial intensity.
    expect(key(plan).energy).toBeCloseTo(Math.PI * 1000, 6);
    expect(key(plan)).toMatchObject({ kind: "flash", known: "candela seconds of x.ies" });
    const dark = sceneOf(
      { "x.ies": roundFile((away) => away) },
      "lambertian",
      'calibration: candelas("x.ies")',
    );
    expect(dark.diagnostics.map(({ code }) => code)).toEqual(["beam.file"]);
  });

  test("type B: the horizontal angle runs along the width, the vertical angle up the height", () => {
    // Narrow to the sides, wide up and down; brighter above than below.
    const text = gridFile((h, v) => 1000 * Math.max(0, 1 - Math.abs(h) / 20) * (1 + v / 100));
    const { photometry } = readLm63(text);
    const table = photometry === null ? null : beamTable(photometry);
    if (table === null) throw new Error();
    const at = (x: number, y: number, z: number): number => tableIntensity(table, x, y, z) * table.axial;
    const ten = Math.tan((10 * Math.PI) / 180);
    expect(at(ten, 0, 1)).toBeCloseTo(500, 6);
    expect(at(0, ten, 1)).toBeCloseTo(1100, 6);
    expect(at(0, -ten, 1)).toBeCloseTo(900, 6);
    const source = key(sceneOf({ "b.ies": text }, 'measured("b.ies")', "kind: steady"));
    const beam = sourceBeam(source);
    const reading = (side: readonly number[], by: number): number => {
      const at = source.centre.map((x, i) => x + 20 * ((source.axis[i] ?? 0) + by * (side[i] ?? 0)));
      const point = at as [number, number, number];
      const facing = source.axis.map((x) => -x) as [number, number, number];
      const shape = sourceShape(source);
      if (shape.kind !== "polygon") throw new Error();
      return beamReading(shape, beam, point, facing, "disc").value;
    };
    expect(reading(source.along, ten) / reading(source.across, ten)).toBeCloseTo(2.2, 1);
    expect(reading(source.along, ten) / reading(source.along, -ten)).toBeCloseTo(1.1 / 0.9, 2);
  });

  test("rays are dealt out so that their light is right on average, whatever the beam", () => {
    const files = [
      roundFile(power(1)),
      roundFile(power(40)),
      gridFile((h, v) => 10 + Math.max(0, 500 - h * h - 3 * v * v)),
    ];
    for (const text of files) {
      const { photometry } = readLm63(text);
      const table = photometry === null ? null : beamTable(photometry);
      if (table === null) throw new Error();
      let sum = 0;
      const count = 200;
      for (let i = 0; i < count; i++) {
        const cosine = tableCosine(table, (i + 0.5) / count);
        const sine = Math.sqrt(1 - cosine * cosine);
        for (let k = 0; k < 64; k++) {
          const round = ((k + 0.5) / 64) * 2 * Math.PI;
          sum += tableLight(table, sine * Math.sin(round), sine * Math.cos(round), cosine);
        }
      }
      expect(sum / count / 64).toBeCloseTo(1, 2);
    }
  });

  test("the sum over the opening is right to a thousandth down to one width away", () => {
    const source = key(sceneOf({ "four.ies": roundFile(power(4)) }, 'measured("four.ies")'));
    const shape = sourceShape(source);
    const beam = sourceBeam(source);
    if (shape.kind !== "polygon") throw new Error();
    for (const away of [0.3, 0.6, 1.2, 3]) {
      const at = source.centre.map(
        (x, i) => x + away * ((source.axis[i] ?? 0) + 0.3 * (source.across[i] ?? 0)),
      );
      const point = at as [number, number, number];
      const facing = source.axis.map((x) => -x) as [number, number, number];
      const used = beamReading(shape, beam, point, facing, "disc", 8).value;
      const fine = beamReading(shape, beam, point, facing, "disc", 48).value;
      expect(Math.abs(used / fine - 1)).toBeLessThan(1e-3);
    }
  });

  test("the scene gives the whole table, so that another program can follow it", () => {
    const { scene } = sceneOf({ "x.ies": roundFile(power(2), 30) }, 'measured("x.ies")');
    const [source] = sceneToJson(scene).sources;
    expect(source?.beam.table).toMatchObject({
      file: "x.ies",
      type: "C",
      vertical: [0, 30, 60, 90],
      axial: 1000,
    });
    expect(source?.beam.table?.intensity[0]?.[1]).toBeCloseTo(750, 6);
  });

  test("light that the file sends behind the opening is left out and said", () => {
    const plan = sceneOf({ "x.ies": roundFile(() => 100, 5, 180) }, 'measured("x.ies")');
    expect(plan.scene.assumed.find(({ what }) => what.includes("behind"))?.value).toContain("50 %");
  });
});

describe("files that are refused", () => {
  const good = roundFile(power(2), 10);
  const codes = (text: string, beam = 'measured("x.ies")'): readonly string[] =>
    sceneOf({ "x.ies": text }, beam).diagnostics.map(({ code }) => code);

  test.each([
    ["no TILT line", "IESNA:LM-63-2002\nnothing"],
    ["nothing", ""],
    ["a number that is none", good.replace("1000.00000000", "NaN")],
    ["a negative candela", good.replace("1000.00000000", "-5")],
    ["a huge count of angles", good.replace("10 1 1 2 0.3", "1000000000 1 1 2 0.3")],
    ["numbers missing at the end", good.slice(0, -40)],
    ["type A", good.replace("10 1 1 2 0.3", "10 1 3 2 0.3")],
    ["a tilt file", good.replace("TILT=NONE", "TILT=other.tlt")],
    ["angles that fall", good.replace("10\n20\n", "20\n10\n")],
  ])("%s", (_, text) => {
    expect(codes(text)).toEqual(["beam.file"]);
  });

  test("line ends of other systems are no trouble", () => {
    expect(codes(good.replaceAll("\n", "\r\n"))).toEqual([]);
    expect(codes(good.replaceAll("\n", "\r"))).toEqual([]);
  });

  test.each([
    ['measured("../../x.txt")', "file.path"],
    ['measured("/etc/x.ies")', "file.path"],
    ['measured("https://example.org/x.ies")', "file.path"],
    ['measured("y.ies")', "file.not-found"],
    ["measured(3)", "value.argument"],
    ["measured", "value.argument"],
  ])("%s", (beam, code) => {
    expect(codes(good, beam)).toEqual([code]);
  });

  test("no way to read it", () => {
    const { diagnostics } = compile({ name: "a.light", text: recipeOf('measured("x.ies")') });
    expect(diagnostics.map(({ code }) => code)).toEqual(["use.alone"]);
  });

  test("a whole report of a lamp whose output comes from its file", () => {
    const read = kitsAmong(new Map([["x.ies", good]]));
    const { evaluated } = run(
      { name: "a.light", text: recipeOf('measured("x.ies")', "kind: steady") },
      { read },
    );
    expect(evaluated?.report.lights[0]?.axial_intensity).toBeCloseTo(1000 / 64, 6);
    expect(evaluated?.report.stations[0]?.exposure.total).toBeGreaterThan(0);
  });
});
