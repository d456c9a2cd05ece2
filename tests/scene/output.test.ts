import { describe, expect, test } from "vitest";
import {
  belowFull,
  capsule,
  cosinePower,
  dial,
  dialNumber,
  disc,
  efficacy,
  fractionOfFull,
  gel,
  gels,
  guideNumber,
  metered,
  off,
  output,
  rectangle,
  setTo,
  sphere,
} from "../../src/model/make/lamps.js";
import { at } from "../../src/model/make/points.js";
import type { LightModel } from "../../src/model/types.js";
import {
  cd,
  cdSeconds,
  cm,
  deg,
  fNumber,
  iso,
  kelvin,
  lm,
  lmPerWatt,
  lmSeconds,
  m,
  mired,
  number,
  shutterOneOver,
  stops,
  ws,
} from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, firstSource, shoot } from "../helpers/shoot.js";

type Fields = Parameters<typeof block<"light">>[2];
const place = { position: at(m(0), m(-2), m(1.5)), aim: at(m(0), m(0), m(1.5)) };
const lamp = (fields: Fields): LightModel =>
  block("light", "lamp", { shape: disc(cm(20)), ...place, ...fields });
const source = (fields: Fields) => firstSource(shoot({ lights: [lamp(fields)] }).scene);

describe("the luminous energy of a lamp", () => {
  test("from one reading by the area formula of a disc on its axis (Foote 1915)", () => {
    // E = pi L r^2 / (r^2 + d^2), Q = pi L A: Q = E pi (r^2 + d^2) with E = 250 x 64 / 100.
    const q = source({ calibration: metered(fNumber(8), m(2), iso(100)) }).energy;
    expect(q).toBeCloseTo(160 * Math.PI * (0.01 + 4), 9);
  });

  test("from one reading of a sphere: E = Q / (4 pi d^2), whatever its size", () => {
    const q = source({ shape: sphere(cm(30)), calibration: metered(fNumber(5.6), m(1.5), iso(200)) }).energy;
    expect(q).toBeCloseTo(((250 * 32) / 200) * 4 * Math.PI * 2.25, 9);
  });

  test("from a guide number: GN^2 x 250 / 100 cd s on the axis, pi times that from a flat opening (ISO 1230)", () => {
    expect(source({ calibration: guideNumber(m(40), iso(100)) }).energy).toBeCloseTo(1600 * 2.5 * Math.PI, 8);
    expect(source({ calibration: guideNumber(m(40), iso(200)) }).energy).toBeCloseTo(800 * 2.5 * Math.PI, 8);
    expect(source({ shape: sphere(cm(5)), calibration: guideNumber(m(40), iso(100)) }).energy).toBeCloseTo(
      1600 * 10 * Math.PI,
      8,
    );
  });

  test("from a guide number of a tube, square to it: surface over its shadow's area", () => {
    const r = 0.01;
    const straight = 0.06;
    const surface = 2 * Math.PI * r * straight + 4 * Math.PI * r * r;
    const shadow = 2 * r * straight + Math.PI * r * r;
    const q = source({ shape: capsule(cm(8), cm(2)), calibration: guideNumber(m(20), iso(100)) }).energy;
    expect(q).toBeCloseTo((1000 * Math.PI * surface) / shadow, 7);
  });

  test("from watt-seconds and an efficacy", () => {
    const found = source({
      full_power: ws(400),
      calibration: efficacy(lmPerWatt(25)),
      power: fractionOfFull(number(0.25)),
    });
    expect(found).toMatchObject({ energy: 2500, fullEnergy: 10_000, wattSeconds: 100, uncertainty: 1 });
  });

  test("from a stated output of a flash and of a lamp that burns", () => {
    expect(source({ output: output(lmSeconds(1234)) })).toMatchObject({
      energy: 1234,
      kind: "flash",
      uncertainty: 0,
    });
    expect(source({ output: output(cdSeconds(100)) }).energy).toBeCloseTo(100 * Math.PI, 10);
    const camera = block("camera", null, {
      held: "level",
      shutter: shutterOneOver(60),
      position: at(m(0), m(-4), m(1)),
    });
    const burning = (fields: Fields) => firstSource(shoot({ lights: [lamp(fields)], camera }).scene);
    expect(burning({ output: output(lm(900)) })).toMatchObject({ energy: 900 / 64, kind: "steady" });
    expect(burning({ output: output(cd(640)) }).energy).toBeCloseTo(10 * Math.PI, 10);
  });

  test("of a burning lamp without a shutter counts one second, and says so", () => {
    const { scene } = shoot({ lights: [lamp({ output: output(lm(900)) })] });
    expect(firstSource(scene).energy).toBe(900);
    expect(scene.assumed.some((a) => a.what.includes("lamp counts") && a.matters)).toBe(true);
  });

  test("the beam of a flat opening that says none is assumed; of one estimated from watt-seconds it matters", () => {
    const beamOf = (fields: Fields) =>
      shoot({ lights: [lamp(fields)] }).scene.assumed.filter((row) => row.what === "beam of lamp");
    const reading = { calibration: metered(fNumber(8), m(2), iso(100)) };
    const row = { what: "beam of lamp", value: "lambertian" };
    expect(beamOf(reading)).toEqual([{ ...row, matters: false }]);
    expect(beamOf({ full_power: ws(400), calibration: efficacy(lmPerWatt(25)) })).toEqual([
      { ...row, matters: true },
    ]);
    expect(beamOf({ ...reading, beam: cosinePower(number(1)) })).toEqual([]);
    expect(beamOf({ ...reading, grid: deg(40) })).toEqual([]);
    expect(beamOf({ ...reading, shape: sphere(cm(10)) })).toEqual([]);
  });

  test("of a narrow beam with the same reading is smaller by 2 / (n + 1)", () => {
    const beam = { calibration: guideNumber(m(40), iso(100)) };
    const wide = source(beam).energy;
    expect(source({ ...beam, beam: cosinePower(number(4)) }).energy).toBeCloseTo((wide * 2) / 5, 8);
  });
});

describe("what is lost", () => {
  const one = { output: output(lmSeconds(1000)) };

  test("gels and losses multiply by powers of two, and never touch the calibration", () => {
    const warm = gel("warm", mired(60), stops(0.5));
    expect(source({ ...one, gel: gels(warm), loses: stops(0.5) }).fullEnergy).toBeCloseTo(500, 10);
    expect(source({ ...one, gel: gels(warm, warm), loses: stops(0) }).energy).toBeCloseTo(500, 10);
  });

  test("a grid costs its axis what it says, and keeps only what its angle lets through", () => {
    const open = source(one);
    const found = source({ ...one, grid: deg(40), grid_loses: stops(1) });
    const c = Math.PI / 9;
    // The half sphere of cos theta (1 - tan theta / tan c) against that of cos theta: 1 - c cot c.
    expect(found.energy / open.energy).toBeCloseTo(0.5 * (1 - c / Math.tan(c)), 12);
    expect(found.beam).toEqual({ kind: "grid", cutoff: expect.closeTo(2 * c, 12) });
  });

  test("a grid whose loss is not said is assumed to cost its axis nothing, with a star", () => {
    const { scene } = shoot({ lights: [lamp({ ...one, grid: deg(40) })] });
    expect(scene.assumed).toContainEqual({
      what: "loss of the grid of lamp",
      value: "0 stop",
      matters: true,
    });
  });

  // On the axis of a disc seen under the tangent a, behind a grid that ends at the tangent t, with luminance 1 - x / t:
  // 2 pi (a^2 / (2 (1 + a^2)) - (atan a - a / (1 + a^2)) / (2 t)) per unit of the luminance on the axis.
  test("a lamp metered with its grid on, since no loss of it is said, gives that reading through the grid", () => {
    const fields = { shape: disc(cm(60)), grid: deg(30), calibration: metered(fNumber(8), m(2), iso(100)) };
    const { scene } = shoot({ lights: [lamp(fields)] });
    const [a, c] = [0.15, Math.PI / 12];
    const t = Math.tan(c);
    const seen = 2 * Math.PI * ((a * a) / (2 * (1 + a * a)) - (Math.atan(a) - a / (1 + a * a)) / (2 * t));
    const luminance = 160 / seen;
    const energy = luminance * Math.PI * Math.PI * 0.09 * (1 - c / t);
    expect(firstSource(scene).energy / energy).toBeCloseTo(1, 6);
    expect(scene.assumed).toContainEqual({
      what: "loss of the grid of lamp",
      value: "held in the meter reading",
      matters: true,
    });
    // With its loss said, the reading is that of the head without the grid: pi a^2 / (1 + a^2) in place of `seen`.
    const bare = (160 / (Math.PI * (0.0225 / 1.0225))) * Math.PI * Math.PI * 0.09 * (1 - c / t);
    expect(source({ ...fields, grid_loses: stops(1) }).energy / bare).toBeCloseTo(0.5, 6);
  });

  test("a grid on a bare bulb does nothing and is noted", () => {
    const { scene, found } = shoot({
      lights: [lamp({ ...one, shape: sphere(cm(5)), grid: deg(40), grid_loses: stops(0) })],
    });
    expect(codes(found)).toEqual(["light.beam-of-bulb"]);
    expect(firstSource(scene).energy).toBe(1000);
  });
});

describe("power", () => {
  const head = { full_power: ws(400), output: output(lmSeconds(1000)) };
  const below = (fields: Fields) => source({ ...head, ...fields }).below;

  test("as a fraction, as stops below full, in watt-seconds, as a number on the dial", () => {
    expect(below({})).toBe(0);
    expect(below({ power: fractionOfFull(number(0.25)) })).toBe(2);
    expect(below({ power: belowFull(stops(2)) })).toBe(2);
    expect(below({ power: setTo(ws(100)) })).toBe(2);
    expect(below({ power: dialNumber(number(8)), dial: dial(number(10), number(1)) })).toBe(2);
    expect(below({ power: dialNumber(number(9)), dial: dial(number(10), number(0.5)) })).toBe(2);
  });

  test("off gives no light and keeps the lamp", () => {
    expect(source({ ...head, power: off })).toMatchObject({
      energy: 0,
      fullEnergy: 1000,
      below: null,
      wattSeconds: 0,
    });
  });

  test("above full is reported", () => {
    const { scene, found } = shoot({ lights: [lamp({ ...head, power: setTo(ws(800)) })] });
    expect(firstSource(scene).energy).toBe(1000);
    expect(codes(found)).toEqual(["light.over-full"]);
    expect(found[0]?.args).toMatchObject({ over: "1" });
  });

  test("that needs a full power or a dial says so", () => {
    const { output: light } = head;
    expect(codes(shoot({ lights: [lamp({ output: light, power: setTo(ws(100)) })] }).found)).toEqual([
      "scene.incomplete",
    ]);
    expect(codes(shoot({ lights: [lamp({ output: light, power: dialNumber(number(3)) })] }).found)).toEqual([
      "scene.incomplete",
    ]);
  });
});

test("gels shift the colour in mired, by their direction", () => {
  const light = { output: output(lmSeconds(1)), colour: kelvin(5000) };
  expect(source({ ...light, gel: gels(gel("warm", mired(50), stops(0))) }).colour).toBeCloseTo(4000, 9);
  expect(source({ ...light, gel: gels(gel("cool", mired(75), stops(0))) }).colour).toBeCloseTo(8000, 9);
  expect(source({ ...light, gel: gels(gel("cool", mired(500), stops(0))) }).colour).toBe(50_000);
});

test("a calibration inside the bulb is reported", () => {
  const { scene, found } = shoot({
    lights: [lamp({ shape: sphere(m(1)), calibration: metered(fNumber(8), cm(30), iso(100)) })],
  });
  expect(codes(found)).toEqual(["light.meter-inside"]);
  expect(firstSource(scene).energy).toBe(0);
});

test("the height of a head is that of its hanging opening unless it is said", () => {
  const light = { output: output(lmSeconds(1)), shape: rectangle(cm(60), cm(90)) };
  expect(source(light).headHeight).toBeCloseTo(0.9, 12);
  expect(source({ ...light, roll: deg(90) }).headHeight).toBeCloseTo(0.6, 12);
  expect(source({ ...light, head_height: m(1.1) }).headHeight).toBe(1.1);
});
