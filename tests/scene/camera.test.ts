import { describe, expect, test } from "vitest";
import { at, named, offset, right, tape } from "../../src/model/make/points.js";
import { pixels, size } from "../../src/model/make/sizes.js";
import { cm, deg, fNumber, iso, m, mm, shutterOneOver } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, shoot } from "../helpers/shoot.js";

type Fields = Parameters<typeof block<"camera">>[2];
const base = { held: "upright", distance: tape(m(3)), height: m(1.4) } as const;
const shot = (fields: Fields, subject = false) =>
  shoot({
    camera: block("camera", null, fields),
    subjects: subject ? [block("subject", null, { height: m(1.7), at: offset({ right: cm(20) }) })] : [],
  });
const camera = (fields: Fields, subject = false) => {
  const built = shot(fields, subject).scene.camera;
  if (built === null) throw new Error("no camera");
  return built;
};

describe("the camera", () => {
  test("stands on a tape along the floor from the mark and looks level at it", () => {
    const plain = camera(base);
    expect(plain.at).toEqual([0, -3, 1.4]);
    expect(plain.forward.map((x) => x + 0)).toEqual([0, 1, 0]);
    expect(plain.right.map((x) => x + 0)).toEqual([1, 0, 0]);
    expect(plain.up.map((x) => x + 0)).toEqual([0, 0, 1]);
    const turned = camera({ ...base, bearing: right(deg(30)) });
    expect(turned.at[0]).toBeCloseTo(1.5, 12);
    expect(turned.at[1]).toBeCloseTo(-3 * Math.cos(Math.PI / 6), 12);
    expect(turned.forward[0]).toBeCloseTo(-0.5, 12);
  });

  test("may start its tape at another point, or be placed by one", () => {
    expect(camera({ ...base, distance: tape(m(2), at(m(1), m(1), m(1))) }).at).toEqual([1, -1, 1.4]);
    const { held } = base;
    expect(camera({ held, position: at(m(0.3), m(-4), m(1.2)) }).at).toEqual([0.3, -4, 1.2]);
  });

  test("aimed down looks down, with the picture's top turned away and its right hand level", () => {
    const aimed = camera({ ...base, aim: at(m(0), m(0), m(0)) });
    const slant = Math.hypot(3, 1.4);
    expect(aimed.forward[2]).toBeCloseTo(-1.4 / slant, 12);
    expect(aimed.up[2]).toBeCloseTo(3 / slant, 12);
    expect(aimed.up[1]).toBeCloseTo(1.4 / slant, 12);
    expect(aimed.right[0]).toBeCloseTo(1, 12);
  });

  test("holds its frame upright or level, whichever way the frame is written", () => {
    const upright = camera(base);
    expect([upright.frameWidth, upright.frameHeight]).toEqual([0.024, 0.036]);
    const level = camera({ ...base, held: "level", frame: size(mm(44), mm(33)), pixels: pixels(8000, 6000) });
    expect([level.frameWidth, level.frameHeight]).toEqual([0.044, 0.033]);
    expect(level.pixels).toEqual({ width: 8000, height: 6000 });
    const turned = camera({ ...base, frame: size(mm(33), mm(44)), pixels: pixels(8000, 6000) });
    expect([turned.frameWidth, turned.frameHeight]).toEqual([0.033, 0.044]);
    expect(turned.pixels).toEqual({ width: 6000, height: 8000 });
  });

  test("focuses on the first subject's face, or where it is told", () => {
    expect(camera(base).focus).toBeNull();
    expect(camera(base, true).focus?.[0]).toBeCloseTo(0.2, 12);
    expect(camera({ ...base, focus: named("mark") }, true).focus).toEqual([0, 0, 0]);
  });

  test("keeps its settings; what is not set is null, and the blur that counts as sharp is diagonal / 1500", () => {
    const set = camera({
      ...base,
      aperture: fNumber(11),
      shutter: shutterOneOver(60),
      sensitivity: iso(200),
      focal_length: mm(85),
    });
    expect(set).toMatchObject({ shutter: 1 / 64, iso: 200, focalLength: 0.085, sync: null, balance: 5600 });
    // f/11 of the series is the square root of 128.
    expect(set.aperture).toBeCloseTo(Math.sqrt(128), 12);
    expect(set.circleOfConfusion).toBeCloseTo(Math.hypot(0.036, 0.024) / 1500, 15);
    expect(camera(base)).toMatchObject({ aperture: null, shutter: null, iso: null });
  });

  test("that cannot be placed or directed is reported", () => {
    expect(codes(shot({ held: "level" }).found)).toEqual(["scene.incomplete"]);
    expect(codes(shot({ distance: tape(m(3)), height: m(1) }).found)).toEqual(["scene.incomplete"]);
    expect(codes(shot({ ...base, aim: named("camera") }).found)).toEqual(["placement.on-aim"]);
  });
});
