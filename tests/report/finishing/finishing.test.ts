import { describe, expect, test } from "vitest";
import { dot, subtract } from "../../../src/math/vector.js";
import { fractionOfFull, metered, sphere } from "../../../src/model/make/lamps.js";
import { at, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { reportColour } from "../../../src/report/colour/build.js";
import { reportFinishing } from "../../../src/report/finishing/build.js";
import { linesWithin } from "../../../src/report/finishing/lines.js";
import { contrastSlopes, liftsOf, whiteBalance } from "../../../src/report/finishing/tones.js";
import { coverageOf } from "../../../src/report/frame/coverage.js";
import { isWithin } from "../../../src/report/frame/region.js";
import { seamsOf } from "../../../src/report/frame/seams.js";
import { around, criterion } from "../../../src/report/intent/criterion.js";
import type { ReportIntent } from "../../../src/report/schema/intent.js";
import { cm, fNumber, iso, kelvin, m, mm, number } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, person, planOf, setOf } from "../../helpers/plan.js";

/** An upright camera 4 m before the mark, 1.5 m high, 50 mm, focused far away: half of its frame is 0.96 x 1.44 m. */
const far = block("camera", null, {
  ...camera,
  focal_length: mm(50),
  distance: tape(m(4)),
  height: m(1.5),
  focus: at(m(0), m(1e9), m(1.5)),
  pixels: undefined,
} as never);

/** A bulb that shines alike to all sides, 1.5 m before the plane of the set and 2 m to the left. */
const bulbAt = block("light", "key", {
  shape: sphere(cm(8)),
  calibration: metered(fNumber(8), m(2), iso(100)),
  power: fractionOfFull({ ...number(1), written: "1" }),
  position: at(m(-2), m(-1.5), m(1.5)),
} as never);

const leaf = (width: number, height: number) =>
  block("flat", "back", { size: size(m(width), m(height)), at: at(m(0), m(0), m(0)) });

const bare = (parts: Partial<Recipe>) => planOf({ subjects: [], lights: [bulbAt], camera: far, ...parts });

const nothing = { colour: null, intent: null };

const wish = (name: string, value: number, wanted: number): ReportIntent => {
  const band = around(wanted, 0.3);
  const unit = name === "warmth" ? "mired" : "stop";
  const row = criterion({ wish: "pass_for", name, value, unit, wanted: band, still: band, say: String });
  return { passes_for: null, criteria: [row], summary: "" };
};

describe("what is to be added", () => {
  test("the light goes on as the inverse square and the cosine have it", () => {
    const found = reportFinishing(bare({ set: setOf(leaf(1, 10)) }), nothing);
    const left = found?.extensions.find(({ side }) => side === "left");
    expect(left?.depth).toBeCloseTo((0.96 - 0.5) / 1.92, 6);
    expect(left?.ramps.map(({ surface }) => surface)).toEqual(["back", "back"]);
    // A ball 1.5 m before a plane lights it as 1 / r^3; rows 4 / 9 of half the frame over and under its middle.
    [1, -1].forEach((sign, i) => {
      const ramp = left?.ramps[i];
      const z = sign * (4 / 9) * 1.44;
      const way = (x: number): number => Math.hypot(x + 2, 1.5, z);
      const outer = -0.5 + 0.01 * 0.96;
      const inner = outer + 0.3 * 0.96;
      const stops = 3 * Math.log2(way(inner) / way(outer));
      expect(ramp?.per_metre).toBeCloseTo(stops / (0.3 * 0.96), 4);
      expect(ramp?.at[1]).toBeCloseTo((1 - sign * (4 / 9)) / 2, 6);
      expect(ramp?.strip).toBeCloseTo(0.46, 4);
      expect(ramp?.across).toBeCloseTo((0.46 * stops) / (0.3 * 0.96), 3);
    });
    // The bulb stands at the left: outwards the light grows there and falls on the other side.
    expect(left?.ramps[0]?.per_metre).toBeGreaterThan(0);
    const right = found?.extensions.find(({ side }) => side === "right");
    expect(right?.ramps[0]?.per_metre).toBeLessThan(0);
  });

  test("above a low leaf it goes on upwards, on the frame's own line", () => {
    const found = reportFinishing(bare({ set: setOf(leaf(6, 2)) }), nothing);
    expect(found?.extensions.map(({ side }) => side)).toEqual(["top"]);
    const ramp = found?.extensions[0]?.ramps[0];
    // The leaf ends 0.5 m over the lens; half of the frame is 1.44 m high.
    expect(ramp?.at[1]).toBeCloseTo((1 - 0.5 / 1.44) / 2, 5);
    expect(ramp?.strip).toBeCloseTo(1.44 - 0.5, 4);
  });

  test("nothing where the set fills the picture, no light where the lamp is off", () => {
    expect(reportFinishing(bare({ set: setOf(leaf(6, 10)) }), nothing)).toBeNull();
    const dark = reportFinishing(bare({ set: setOf(leaf(1, 10)), lights: [] }), nothing);
    expect(dark?.extensions[0]?.ramps).toEqual([]);
    expect(dark?.extensions[0]?.reason).not.toBeNull();
  });
});

describe("lines within the set", () => {
  test("the edges of a leaf before a larger one are to go, those beside bare picture are not", () => {
    const small = block("panel", "small", { size: size(m(0.4), m(0.6)), at: at(m(0), m(-0.5), m(1.5)) });
    const { scene } = bare({ set: setOf(leaf(1, 10), small) });
    const coverage = coverageOf(scene);
    if (typeof coverage === "string") throw new Error(coverage);
    const names = linesWithin(seamsOf(scene), coverage.bare).map(({ name, side }) => `${name} ${side}`);
    expect(names.sort()).toEqual(["small bottom", "small left", "small right", "small top"]);
  });

  test("a place in a region, and in its hole", () => {
    const square = (s: number): readonly (readonly [number, number])[] => [
      [-s, -s],
      [s, -s],
      [s, s],
      [-s, s],
    ];
    const region = [square(1), [...square(0.5)].reverse()];
    expect(isWithin(region, [0.7, 0.1])).toBe(true);
    expect(isWithin(region, [0.1, 0.1])).toBe(false);
    expect(isWithin(region, [1.2, 0.1])).toBe(false);
  });
});

describe("tones", () => {
  test("a warm face asks for as many mired the other way, and the lamp's own temperature", () => {
    const plan = planOf({ lights: [dish({ colour: kelvin(3200) })] });
    const { balance } = plan.scene.camera ?? { balance: 0 };
    const found = whiteBalance(reportColour(plan), null);
    expect(found?.set).toBeCloseTo(3200, 3);
    // A mired is a millionth of a kelvin's inverse.
    expect(found?.shift).toBeCloseTo(1e6 / balance - 1e6 / 3200, 6);
    const same = planOf({ lights: [dish({ colour: kelvin(balance) })] });
    expect(whiteBalance(reportColour(same), null)).toBeNull();
  });

  test("a wish for warmth goes before a neutral face", () => {
    const colour = reportColour(planOf({ lights: [dish({ colour: kelvin(3200) })] }));
    const asked = colour === null ? null : { ...colour, wanted_from_balance: 30, set_balance: 3550 };
    const found = whiteBalance(asked, wish("warmth", 130, 30));
    expect(found?.set).toBe(3550);
    expect(found?.shift).toBeCloseTo(1e6 / 5600 - 1e6 / 3550, 9);
    expect(found?.from).toBe("intent.criteria: warmth");
    expect(whiteBalance(asked, wish("warmth", 30, 30))).toBeNull();
  });

  test("the slope is what is wanted over what is found, round the tone of the skin", () => {
    const skinned = planOf({ subjects: [block("subject", null, { height: m(1.7) })] });
    const [row] = contrastSlopes(skinned, wish("lit_to_shadow", 1.6, 2));
    expect(row?.slope).toBeCloseTo(1.25, 9);
    // 35 % by the curve of IEC 61966-2-1: 1.055 x 0.35^(1 / 2.4) - 0.055 = 0.6262 of 255.
    expect(row?.pivot).toBe(160);
    expect(contrastSlopes(skinned, wish("lit_to_shadow", 2.1, 2))).toEqual([]);
    // Under a clear sun 2.7 stops are wanted.
    expect(contrastSlopes(skinned, wish("shadow_depth", 1.5, 2.8))[0]?.slope).toBeCloseTo(1.8, 9);
  });

  test("lifts are noise: ISO times two for each stop", () => {
    const lens = { ...camera, focus: at(m(0), m(1e9), m(1.5)) };
    const plan = planOf({ camera: block("camera", null, { ...lens, aperture: fNumber(16) } as never) });
    // f/11 at 2 m and ISO 100 at full is f/11 at half power and ISO 200; a disc of 20 cm by the area formula, from where
    // the meter is held, a little beside the lamp's axis.
    const meter = plan.scene.stations.find(({ name, receptor }) => name === "face" && receptor === "disc");
    const lamp = plan.scene.sources[0];
    if (meter === undefined || lamp === undefined) throw new Error("no meter");
    const way = subtract(meter.at, lamp.centre);
    const square = dot(way, way);
    const beside = dot(way, lamp.axis) / Math.sqrt(square);
    const off = 7 + Math.log2(((2 * 2 + 0.01) / (square + 0.01)) * beside) - 8;
    expect(Math.sqrt(square)).toBeCloseTo(2.4, 2);
    const [row] = liftsOf(plan, null, []);
    expect(row?.stops).toBeCloseTo(-off, 3);
    expect(row?.as_iso).toBeCloseTo(200 * Math.pow(2, -off), 0);
    const right = planOf({ camera: block("camera", null, { ...lens, aperture: fNumber(9) } as never) });
    expect(liftsOf(right, null, [])).toEqual([]);
    // A background that is a stop too dark, and a face that is right.
    expect(liftsOf(right, wish("background", -3, -2), [])[0]?.as_iso).toBeCloseTo(400, 9);
    const deep = contrastSlopes(right, wish("lit_to_shadow", 4, 2));
    expect(liftsOf(right, null, deep)[0]?.stops).toBeCloseTo(2, 9);
  });
});

test("nobody and nothing to finish", () => {
  const plan = planOf({ subjects: [person] });
  const fits = { ...plan, scene: { ...plan.scene, camera: null } };
  expect(reportFinishing(fits, nothing)).toBeNull();
});
