import { describe, expect, test } from "vitest";
import { output, sphere } from "../../src/model/make/lamps.js";
import { at, between, left, midpoint, named, offset, tape, towards } from "../../src/model/make/points.js";
import { size } from "../../src/model/make/sizes.js";
import type { PointValue } from "../../src/model/values.js";
import { placeOf, stationIndex, stationPoint } from "../../src/scene/places.js";
import { cm, deg, lmSeconds, m } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, shoot } from "../helpers/shoot.js";

const bulb = { shape: sphere(cm(8)), output: output(lmSeconds(1000)) };
const ana = block("subject", "ana", {
  height: m(1.7),
  facing: { kind: "bearing", bearing: left(deg(90)), written: "left(90 deg)" },
});
const set = block("set", null, {
  parts: [block("flat", "back", { size: size(m(1.8), m(2.4)), at: offset({ behind: m(1.5) }) })],
});
const { scene } = shoot({
  subjects: [ana],
  set,
  lights: [block("light", "sun", { ...bulb, position: at(m(-2), m(-3), m(2.5)) })],
  camera: block("camera", null, { held: "upright", distance: tape(m(3)), height: m(1.4) }),
});
const place = (point: PointValue) => placeOf(scene, point)?.map((x) => expect.closeTo(x, 12));

describe("a point", () => {
  test("by offset from the mark: left and right are the camera's, behind is away from it", () => {
    expect(placeOf(scene, offset({ left: cm(40), behind: m(1), up: cm(50) }))).toEqual([-0.4, 1, 0.5]);
    expect(placeOf(scene, offset({ right: cm(40), ahead: m(1), down: cm(5) }))).toEqual([0.4, -1, -0.05]);
  });

  test("by offset from a subject's place: ahead runs along its facing, left stays the camera's", () => {
    const face = stationPoint(scene, "face") ?? [0, 0, 0];
    const ahead = placeOf(scene, offset({ ahead: cm(30), from: named("face") }));
    expect(ahead).toEqual([expect.closeTo(face[0] - 0.3, 12), expect.closeTo(face[1], 12), face[2]]);
    const aside = placeOf(
      scene,
      offset({ left: cm(10), from: offset({ ahead: cm(30), from: named("ana", "face") }) }),
    );
    expect(aside?.[0]).toBeCloseTo(face[0] - 0.4, 12);
  });

  test("between and midpoint lie on the line", () => {
    const a = at(m(0), m(0), m(0));
    const b = at(m(0), m(3), m(4));
    expect(place(between(a, b, m(1), "a"))).toEqual([0, 0.6, 0.8]);
    expect(placeOf(scene, between(a, b, m(1), "b"))).toEqual([
      0,
      expect.closeTo(2.4, 12),
      expect.closeTo(3.2, 12),
    ]);
    expect(placeOf(scene, midpoint(a, b))).toEqual([0, 1.5, 2]);
  });

  test("by name is a lamp, the camera, the mark, a flat's parts, a station", () => {
    expect(placeOf(scene, named("sun"))).toEqual([-2, -3, 2.5]);
    expect(placeOf(scene, named("camera"))).toEqual([0, -3, 1.4]);
    expect(placeOf(scene, named("mark"))).toEqual([0, 0, 0]);
    expect(placeOf(scene, named("back"))).toEqual([0, 1.5, 1.2]);
    expect(placeOf(scene, named("back", "left"))).toEqual([expect.closeTo(-0.6, 12), 1.5, 1.2]);
    expect(placeOf(scene, named("back", "right"))).toEqual([expect.closeTo(0.6, 12), 1.5, 1.2]);
    expect(placeOf(scene, named("back", "top"))).toEqual([0, 1.5, 2.4]);
    expect(placeOf(scene, named("subject", "face"))).toEqual(placeOf(scene, named("ana", "face")));
    expect(stationIndex(scene, "ana.lit_cheek")).toBe(stationIndex(scene, "lit_cheek"));
    expect(scene.stations[stationIndex(scene, "face", "dome") ?? -1]?.receptor).toBe("dome");
    expect(placeOf(scene, named("nobody"))).toBeNull();
  });

  test("may name what is written later", () => {
    const { scene: later, found } = shoot({
      lights: [
        block("light", "a", { ...bulb, position: offset({ up: m(1), from: named("b") }) }),
        block("light", "b", { ...bulb, position: at(m(1), m(1), m(1)) }),
      ],
    });
    expect(found).toEqual([]);
    expect(later.sources.map((source) => source.centre)).toEqual([
      [1, 1, 2],
      [1, 1, 1],
    ]);
  });

  test("may be a cheek, which is on the key's side before the light is known", () => {
    const key = block("light", "key", { ...bulb, role: "key", position: at(m(-2), m(-1), m(2)) });
    const kicker = block("light", "kicker", {
      ...bulb,
      position: at(m(1), m(1), m(2)),
      aim: named("lit_cheek"),
    });
    for (const lights of [
      [key, kicker],
      [kicker, key],
    ]) {
      const { scene: built, found } = shoot({ subjects: [block("subject", null, {})], lights });
      const cheek = built.stations[stationIndex(built, "lit_cheek") ?? -1];
      expect(found).toEqual([]);
      expect(cheek?.at[0]).toBeLessThan(0);
      expect(built.sources.find((source) => source.name === "kicker")?.aim).toEqual(cheek?.at);
    }
  });

  test("may be a part of a card, left and right as the camera sees it from in front or behind", () => {
    for (const angle of [0, 160]) {
      const card = block("card", "board", {
        size: size(cm(60), cm(90)),
        at: offset({ up: m(1) }),
        faces: { kind: "bearing", bearing: left(deg(angle)), written: "" },
      });
      const { scene: built } = shoot({ set: block("set", null, { parts: [card] }) });
      expect(stationPoint(built, "board.left")?.[0]).toBeCloseTo(
        -0.2 * Math.abs(Math.cos((angle * Math.PI) / 180)),
        12,
      );
      expect(stationPoint(built, "board.top")?.[2]).toBeCloseTo(1.45, 12);
    }
  });

  test("in a ring is reported, and building ends", () => {
    const { scene: ring, found } = shoot({
      lights: [
        block("light", "a", { ...bulb, position: offset({ up: m(1), from: named("b") }) }),
        block("light", "b", { ...bulb, position: offset({ up: m(1), from: named("a") }) }),
      ],
    });
    expect(codes(found)).toEqual(["point.circular"]);
    expect(ring.sources).toHaveLength(2);
  });

  test("a subject may turn to a lamp that is aimed at its face, as long as the lamp's place does not need it", () => {
    const turned = block("subject", null, { facing: towards(named("key")) });
    for (const order of [0, 1]) {
      const fixed = block("light", order === 0 ? "key" : "sun", {
        ...bulb,
        role: "key",
        position: at(m(-2), m(0), m(2)),
      });
      const { scene: built, found } = shoot({ subjects: [turned], lights: [fixed] });
      expect(found).toEqual([]);
      expect(built.subjects[0]?.facing[0]).toBeCloseTo(-1, 12);
    }
    const slant = block("light", "key", { ...bulb, distance: tape(m(2)), height: m(2) });
    expect(codes(shoot({ subjects: [turned], lights: [slant] }).found)).toContain("point.circular");
  });

  test("with a name that nothing has is reported; so is a tape longer than its line", () => {
    const lamp = (point: PointValue) => [block("light", "a", { ...bulb, position: point })];
    expect(codes(shoot({ lights: lamp(named("sofa")) }).found)).toEqual(["point.unknown"]);
    const long = between(at(m(0), m(0), m(1)), at(m(0), m(0), m(2)), m(3), "a");
    const { found } = shoot({ lights: lamp(long) });
    expect(codes(found)).toEqual(["point.beyond"]);
    expect(found[0]?.args).toEqual({ tape: "3", apart: "1" });
  });

  test("names of things cannot be confused with members of objects", () => {
    expect(placeOf(scene, named("__proto__"))).toBeNull();
    expect(placeOf(scene, named("constructor"))).toBeNull();
  });
});

test("points of a subject stand on its place and along its facing", () => {
  const ben = block("subject", "ben", {
    at: offset({ right: m(1) }),
    facing: { kind: "bearing", bearing: left(deg(90)), written: "left(90 deg)" },
    parts: [block("point", "brow", { up: m(1.6), ahead: cm(9), faces: towards(named("mark")) })],
  });
  const { scene: two } = shoot({ subjects: [ana, ben] });
  const brow = two.stations.find((station) => station.name === "ben.brow");
  expect(brow?.at).toEqual([expect.closeTo(0.91, 12), expect.closeTo(0, 12), 1.6]);
  expect(brow?.subject).toBe("ben");
  expect(placeOf(two, named("ben", "brow"))).toEqual(brow?.at);
});
