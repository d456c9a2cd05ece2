import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import { buildScene } from "../../../src/scene/build.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { day, metered, readingAt, shed } from "./days.js";

/** A small flat lamp straight before a face, in the open: what it gives falls with the square of its distance. */
const open = `halfshade 1
recipe "The open yard"
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
light key {
  shape: disc(4 cm)
  output: 400 lm s
  distance: 2 m
  bearing: left(20 deg)
  height: 1.9 m
}
camera {
  held: upright
  focal_length: 85 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 200
  distance: 3 m
  height: 1.5 m
}
`;
const disc = "face.disc(towards: key)";

/** A Lambertian disc gives Q / pi on its axis, lm s/sr: 400 / pi / 4 = 31.83 lx s at 2 m. */
const EXPOSURE = 400 / Math.PI / 4;
/** Of a meter with C = 250 at ISO 200: N = sqrt(H S / C) (ISO 2720). */
const NUMBER = Math.sqrt((EXPOSURE * 200) / 250);

describe("a session's thresholds", () => {
  const over = (stops: number, settings: readonly string[] = []) =>
    day(settings.length === 0 ? open : `${open}thresholds {\n${settings.join("\n")}\n}\n`, [
      `${disc} is ${(EXPOSURE * 2 ** stops).toFixed(6)} lx s`,
    ]);
  const verdict = (stops: number, ...settings: readonly string[]) =>
    readingAt(over(stops, settings), disc).verdict;

  test("are a tenth, two and three tenths of a stop", () => {
    expect([0.09, 0.11, 0.19, 0.21, 0.29, 0.31].map((stops) => verdict(stops))).toEqual([
      "same",
      "near",
      "near",
      "note",
      "note",
      "act",
    ]);
  });

  test("are the recipe's where it sets them", () => {
    expect(verdict(0.25, "session_act: 0.24 stop")).toBe("act");
    expect(verdict(0.25, "session_note: 0.26 stop")).toBe("near");
    expect(verdict(0.25, "session_note: 0.26 stop", "session_same: 0.26 stop")).toBe("same");
    expect(over(0.25, ["session_same: 0.26 stop"]).headline).toBe("Every reading is what was planned.");
    expect(over(0.25).headline).toContain("0.3 stop over the plan");
    expect(over(0.25, ["session_note: 0.26 stop"]).diagnosis).toContain(
      "what the set-up as built should give",
    );
    expect(over(0.25).diagnosis).not.toContain("what the set-up as built should give");
    expect(over(0.25).remedy).not.toBeNull();
    expect(over(0.25, ["session_note: 0.26 stop"]).remedy).toBeNull();
  });

  test("say from where on a lamp is dark or not told", () => {
    const [lamp] = over(-5).lamps;
    expect([lamp?.stops, lamp?.reason]).toEqual([expect.closeTo(-5, 1), null]);
    expect(over(-5, ["session_dark: 4 stop"]).lamps[0]?.reason).toContain("not fired");
    expect(over(-7).lamps[0]?.reason).toContain("not fired");
    expect(over(0.25, ["session_telling: 0.01 stop"]).lamps[0]?.reason).toContain("do not tell it");
  });
});

describe("how far a reading may be off", () => {
  test("is what stands behind it, else the meter's tolerance, and never nothing", () => {
    const of = (behind: string, recipe = open): number =>
      readingAt(day(recipe, [`${disc} is f/5.6${behind}`]), disc).tolerance;
    expect(of("")).toBe(0.1);
    expect(of("", `${open}tolerances { meter: 0.3 stop }\n`)).toBe(0.3);
    expect(of(" +- 0.25 stop")).toBe(0.25);
    expect(of(" +- 0 stop")).toBe(0.01);
  });

  test("and the error of the bounced light that was worked out for it, as squares", () => {
    const place = "shaded_cheek";
    const text = `halfshade 1\nrecipe "Truth"\n${shed.split("\n").slice(2).join("\n")}`;
    const { recipe } = compile({ name: "shed.light", text });
    if (recipe === null) throw new Error("no recipe");
    const scene = buildScene(recipe, () => undefined);
    const station = scene.stations.find(({ name }) => name === place);
    if (station === undefined) throw new Error("no station");
    const light = sceneLight(scene);
    let [exposure, error] = [0, 0];
    for (const source of scene.sources) {
      const reach = light.reach(source, station);
      exposure += source.energy * (reach.direct + reach.bounced);
      error += source.energy * reach.error;
    }
    const off = Math.log2(1 + error / exposure);
    expect(off).toBeGreaterThan(0.01);
    const { tolerance } = readingAt(day(shed, [`${place} is f/4 +- 0.02 stop`]), place);
    expect(tolerance).toBeCloseTo(Math.hypot(0.02, off), 6);
  });
});

describe("a reading against the plan", () => {
  test("in every unit that a meter shows", () => {
    // EV at ISO 100 of H over t: log2(H / t x 100 / C).
    const ev = Math.log2((EXPOSURE * 125 * 100) / 250);
    for (const shown of [`${EXPOSURE.toFixed(5)} lx s`, `${ev.toFixed(5)} EV`]) {
      const row = readingAt(day(open, [`${disc} is ${shown}`]), disc);
      expect(row.off_plan).toBeCloseTo(0, 1);
      expect(Math.abs(row.off_plan ?? 9)).toBeLessThan(0.04); // 1/125 s is exactly 1/128 s, 0.034 stop
      expect(row.planned.f_number).toBeCloseTo(NUMBER, 2);
    }
    // f/5.6 is exactly 2^2.5: 2 log2(2^2.5 / N).
    const row = readingAt(day(open, [`${disc} is f/5.6`]), disc);
    expect(row.off_plan).toBeCloseTo(5 - 2 * Math.log2(NUMBER), 2);
  });

  test("an f-number of a dome is one of the dome, whatever its constant", () => {
    const dome = "face.dome(towards: key)";
    const [line = ""] = metered(open, [dome]);
    const number = readingAt(day(open, [line]), dome).planned.f_number ?? 0;
    // C = 340 of a dome against 250 of a disc, both square to the lamp.
    expect(number).toBeCloseTo(NUMBER * Math.sqrt(250 / 340), 2);
    const shown = readingAt(day(open, [`${dome} is f/4`]), dome);
    expect(shown.off_plan).toBeCloseTo(4 - 2 * Math.log2(number), 2);
  });

  test("what was built otherwise is no surprise: a lamp at 2.2 m gives 2 log2(2.2 / 2) = 0.275 stop less", () => {
    const row = readingAt(
      day(open, [
        "key.distance: 2.2 m",
        ...metered(open.replace("distance: 2 m", "distance: 2.2 m"), [disc]),
      ]),
      disc,
    );
    expect(row.off_plan).toBeCloseTo(-2 * Math.log2(1.1), 3);
    expect(row.off_built).toBeCloseTo(0, 4);
  });

  test.each([
    [0.09, "same"],
    [0.11, "near"],
    [0.19, "near"],
    [0.21, "note"],
    [0.29, "note"],
    [0.31, "act"],
    [-0.31, "act"],
  ])("%d stop is %s", (off, verdict) => {
    expect(readingAt(day(open, metered(open, [disc], [off])), disc).verdict).toBe(verdict);
  });

  test("0.2 stop asks for nothing, more does", () => {
    expect(day(open, metered(open, [disc], [0.19])).remedy).toBeNull();
    const { remedy } = day(open, metered(open, [disc], [0.5]));
    expect(remedy?.turns).toMatchObject([{ light: "key", by: -0.5 }]);
    // Or farther by 2^(0.5 / 2): 2.378 m.
    expect(remedy?.carry).toMatchObject({ from: 2, to: 2.38 });
    expect(remedy?.carry?.worst).toBeLessThan(0.02);
  });
});

describe("patterns", () => {
  const dome = "face.dome(towards: key)";
  test("a dome that agrees beside a disc that does not is a meter that looked elsewhere", () => {
    const found = (off: number): readonly string[] =>
      day(open, metered(open, [disc, dome], [off, 0.1])).causes.map(({ kind }) => kind);
    expect(found(-0.5)).toContain("meter-aim");
    expect(found(-0.29)).not.toContain("meter-aim");
  });

  test("only the background is off", () => {
    const walled = `${open}set { flat back { size: 2 x 2 m, at: offset(behind: 2 m), reflectance: 80 % } }\n`;
    const places = [disc, dome, "back"];
    const found = (off: readonly number[]): readonly string[] =>
      day(walled, metered(walled, places, off)).causes.map(({ kind }) => kind);
    expect(found([0.1, -0.1, -0.6])).toContain("background");
    expect(found([0.3, -0.1, -0.6])).not.toContain("background");
    expect(found([0.1, -0.1, -0.29])).not.toContain("background");
  });
});
