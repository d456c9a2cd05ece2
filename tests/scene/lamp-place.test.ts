import { describe, expect, test } from "vitest";
import { disc, output, rectangle, sphere } from "../../src/model/make/lamps.js";
import { at, left, named, offset, right, tape } from "../../src/model/make/points.js";
import { cm, deg, lmSeconds, m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, firstSource, shoot } from "../helpers/shoot.js";

const given = { output: output(lmSeconds(1000)), shape: disc(cm(20)) };
const person = block("subject", null, { height: m(1.7) });
/** The face of that person: 0.933 of the stature up, 0.057 of it ahead. */
const face = [0, -0.0969, 1.5861] as const;

const lamp = (fields: Parameters<typeof block<"light">>[2]) =>
  block("light", "lamp", { ...given, ...fields });
const away = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((x, i) => x - (b[i] ?? 0)));

describe("a slant tape", () => {
  test("starts at the first subject's face, with the bearing counted from the camera's side", () => {
    const { scene, found } = shoot({
      subjects: [person],
      lights: [lamp({ distance: tape(m(2.6)), bearing: left(deg(30)), height: m(2.4) })],
    });
    const { centre } = firstSource(scene);
    expect(found).toEqual([]);
    expect(away(centre, face)).toBeCloseTo(2.6, 12);
    expect(centre[2]).toBe(2.4);
    // 30 deg to camera-left of straight towards the camera: tan 30 = (-dx) / (-dy).
    expect(-(centre[0] - face[0]) / -(centre[1] - face[1])).toBeCloseTo(Math.tan(Math.PI / 6), 12);
    expect(centre[0]).toBeLessThan(0);
  });

  test("with an elevation puts the lamp at slant x sine above the tape's zero", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [lamp({ distance: tape(m(2)), bearing: right(deg(90)), elevation: deg(30) })],
    });
    const { centre } = firstSource(scene);
    expect(centre[0]).toBeCloseTo(2 * Math.cos(Math.PI / 6), 12);
    expect(centre[1]).toBeCloseTo(face[1], 12);
    expect(centre[2]).toBeCloseTo(face[2] + 1, 12);
  });

  test("starts where `from` says, and the lamp still looks at its aim", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [lamp({ distance: tape(m(2), at(m(1), m(0), m(1))), height: m(1), aim: named("chest") })],
    });
    const { centre, axis, aim } = firstSource(scene);
    expect(centre).toEqual([1, -2, 1]);
    const size = away(aim, centre);
    expect(axis.map((x) => x * size)).toEqual(aim.map((x, i) => expect.closeTo(x - (centre[i] ?? 0), 12)));
  });

  test("that is shorter than the difference in height is refused with both numbers", () => {
    const { found } = shoot({ subjects: [person], lights: [lamp({ distance: tape(m(1)), height: m(3) })] });
    expect(codes(found)).toEqual(["placement.too-near"]);
    expect(found[0]?.args).toMatchObject({ slant: "1", height: "3", gap: "1.414", zero: "1.586" });
  });

  test("without a subject starts at the mark on the floor", () => {
    const { scene } = shoot({ lights: [lamp({ distance: tape(m(2)), elevation: deg(90) })] });
    const { centre, axis, across } = firstSource(scene);
    expect(away(centre, [0, 0, 2])).toBeLessThan(1e-12);
    expect(away(axis, [0, 0, -1])).toBeLessThan(1e-9);
    expect(away(across, [1, 0, 0])).toBeLessThan(1e-9);
  });
});

describe("a tape along the floor", () => {
  test("runs from the mark along the bearing", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [lamp({ floor_distance: tape(m(3)), bearing: right(deg(40)), height: m(2) })],
    });
    const { centre } = firstSource(scene);
    expect(Math.hypot(centre[0], centre[1])).toBeCloseTo(3, 12);
    expect(Math.atan2(centre[0], -centre[1])).toBeCloseTo((40 * Math.PI) / 180, 12);
  });

  test("takes its elevation at the tape's zero, which is the aim", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [lamp({ floor_distance: tape(m(3)), bearing: left(deg(0)), elevation: deg(45) })],
    });
    const { centre } = firstSource(scene);
    expect(centre[1]).toBe(-3);
    expect(centre[2] - face[2]).toBeCloseTo(3 + face[1], 12);
  });

  test("from a point runs from below it", () => {
    const { scene } = shoot({
      lights: [
        lamp({ floor_distance: tape(m(2), at(m(0.5), m(1), m(1.6))), bearing: right(deg(90)), height: m(2) }),
      ],
    });
    expect(firstSource(scene).centre).toEqual([2.5, expect.closeTo(1, 12), 2]);
  });
});

describe("a bottom edge", () => {
  test("is where the lowest corner of the tilted opening hangs", () => {
    const { scene } = shoot({
      subjects: [person],
      lights: [
        lamp({
          shape: rectangle(cm(90), cm(120)),
          distance: tape(m(1.6)),
          bearing: left(deg(50)),
          bottom_edge: m(1.3),
          roll: deg(20),
        }),
      ],
    });
    const { centre, across, along } = firstSource(scene);
    const corners = [-1, 1].flatMap((a) =>
      [-1, 1].map((b) => centre[2] + a * 0.45 * across[2] + b * 0.6 * along[2]),
    );
    expect(Math.min(...corners)).toBeCloseTo(1.3, 10);
    expect(away(centre, face)).toBeCloseTo(1.6, 10);
  });

  test("of a sphere is one radius under its centre", () => {
    const { scene } = shoot({
      lights: [lamp({ shape: sphere(cm(30)), floor_distance: tape(m(1)), bottom_edge: m(2) })],
    });
    expect(firstSource(scene).centre[2]).toBeCloseTo(2.15, 12);
  });
});

describe("the direction of a head", () => {
  const base = { position: at(m(0), m(-2), m(1)), aim: at(m(0), m(0), m(1)) };

  test("feathered right swings the beam to camera-right, from in front and from behind", () => {
    const front = firstSource(shoot({ lights: [lamp({ ...base, feather: right(deg(20)) })] }).scene);
    expect(front.axis[0]).toBeCloseTo(Math.sin(Math.PI / 9), 12);
    expect(front.axis[1]).toBeCloseTo(Math.cos(Math.PI / 9), 12);
    const rear = firstSource(
      shoot({ lights: [lamp({ ...base, position: at(m(0), m(2), m(1)), feather: right(deg(20)) })] }).scene,
    );
    expect(rear.axis[0]).toBeCloseTo(Math.sin(Math.PI / 9), 12);
    expect(rear.axis[1]).toBeCloseTo(-Math.cos(Math.PI / 9), 12);
  });

  test("rolled a quarter turn lays a strip flat", () => {
    const { across, along, axis } = firstSource(shoot({ lights: [lamp({ ...base, roll: deg(90) })] }).scene);
    expect(Math.abs(across[2])).toBeCloseTo(1, 12);
    expect(Math.abs(along[2])).toBeCloseTo(0, 12);
    expect(axis).toEqual([0, 1, 0]);
  });

  test("needs another point than its own", () => {
    const { found } = shoot({ lights: [lamp({ position: at(m(0), m(0), m(0)) })] });
    expect(codes(found)).toEqual(["placement.on-aim"]);
  });

  test("a lamp that is placed nowhere is reported", () => {
    expect(codes(shoot({ lights: [lamp({})] }).found)).toEqual(["scene.incomplete"]);
  });
});

test("a place is the same whether its lengths are written in metres or in centimetres", () => {
  const one = shoot({ lights: [lamp({ position: offset({ left: m(1.25), up: m(2) }) })] });
  const two = shoot({ lights: [lamp({ position: offset({ left: cm(125), up: cm(200) }) })] });
  expect(firstSource(one.scene).centre).toEqual(firstSource(two.scene).centre);
});
