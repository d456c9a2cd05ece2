import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../src/core/vector.js";
import { areaVector, polygonArea } from "../../src/math/polygon.js";
import { dot, normalise } from "../../src/math/vector.js";
import { at, left, offset, right, straight } from "../../src/model/make/points.js";
import { size, volume } from "../../src/model/make/sizes.js";
import { edgeOf, reflecting, surface } from "../../src/model/make/surroundings.js";
import type { PartModel } from "../../src/model/types.js";
import type { BearingValue } from "../../src/model/values.js";
import { cm, deg, m, percent } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, shoot } from "../helpers/shoot.js";

const bearing = (b: BearingValue) => ({ kind: "bearing", bearing: b, written: b.written }) as const;
const build = (...parts: PartModel<"set">[]) => shoot({ set: block("set", null, { parts }) });
const polygonsOf = (...parts: PartModel<"set">[]) => build(...parts).scene.polygons;
const close = (v: Vec3 | undefined, w: readonly number[]) => {
  expect(v?.map((x) => Math.round(x * 1e9) / 1e9 + 0)).toEqual(w.map((x) => Math.round(x * 1e9) / 1e9 + 0));
};
const back = block("flat", "back", { size: size(m(2), m(2.4)), at: offset({ behind: m(1) }) });

describe("every polygon of the set", () => {
  const { scene } = build(
    back,
    block("flat", "side", { size: size(m(1.2), m(2.4)), hinge: edgeOf("right", "back"), opening: deg(110) }),
    block("paper", "roll", {
      width: m(2.7),
      run: m(3),
      hangs: m(2.6),
      curve: cm(40),
      at: offset({ behind: m(2) }),
    }),
    block("card", "board", {
      size: size(cm(60), cm(90)),
      at: at(m(1), m(0), m(1)),
      faces: { kind: "straight", word: "up", written: "up" },
    }),
    block("table", "top", { size: size(m(1.2), cm(80)), at: at(m(-2), m(0), m(0)) }),
    block("box", "crate", {
      size: volume(cm(40), cm(30), cm(60)),
      at: at(m(2), m(0), m(0)),
      faces: bearing(left(deg(25))),
    }),
    block("disc", "round", { diameter: cm(60), at: at(m(0), m(-1), m(1)), faces: bearing(right(deg(70))) }),
  );

  test("runs counter-clockwise about its normal, which has length 1", () => {
    for (const polygon of scene.polygons) {
      const own = normalise(areaVector(polygon.vertices)) ?? [0, 0, 0];
      expect(dot(own, polygon.normal), polygon.name).toBeCloseTo(1, 12);
    }
  });

  test("has a name of its own", () => {
    const names = scene.polygons.map((polygon) => polygon.name);
    expect(new Set(names).size).toBe(names.length);
  });

  test("keeps the size it was given", () => {
    const area = (name: string): number =>
      scene.polygons
        .filter((p) => p.name === name || p.name.startsWith(`${name}.`))
        .reduce((sum, p) => sum + polygonArea(p.vertices), 0);
    expect(area("back")).toBeCloseTo(4.8, 12);
    expect(area("side")).toBeCloseTo(2.88, 12);
    expect(area("crate")).toBeCloseTo(2 * (0.4 * 0.3 + 0.4 * 0.6 + 0.3 * 0.6), 12);
    expect(area("round")).toBeCloseTo(Math.PI * 0.09, 12);
    // Hanging 2.6 - 0.4, run 3 - 0.4, and a sweep of six chords of a quarter circle of 0.4 m.
    const chords = 12 * 0.4 * Math.sin(Math.PI / 24);
    expect(area("roll")).toBeCloseTo(2.7 * (2.2 - 0.0005 + 2.6 + chords), 9);
  });

  test("of a box looks outwards", () => {
    const faces = scene.polygons.filter((polygon) => polygon.kind === "box");
    expect(faces).toHaveLength(6);
    const middle: Vec3 = [2, 0, 0.3];
    for (const { normal, vertices } of faces) {
      const corner = vertices[0] as Vec3;
      expect(
        dot(normal, [corner[0] - middle[0], corner[1] - middle[1], corner[2] - middle[2]]),
      ).toBeGreaterThan(0.1);
    }
  });
});

describe("a hinged flat", () => {
  test("at 90 degrees to the left edge runs towards the camera and looks to the right", () => {
    const [, side] = polygonsOf(
      back,
      block("flat", "side", { size: size(m(1.2), m(2)), hinge: edgeOf("left", "back"), opening: deg(90) }),
    );
    close(side?.normal, [1, 0, 0]);
    const xs = side?.vertices.map((v) => v[0]) ?? [];
    const ys = side?.vertices.map((v) => v[1]) ?? [];
    expect(Math.max(...xs.map((x) => Math.abs(x + 1)))).toBeLessThan(1e-12);
    expect(Math.min(...ys)).toBeCloseTo(-0.2, 12);
    expect(Math.max(...ys)).toBeCloseTo(1, 12);
  });

  test("opened to 180 degrees goes on straight", () => {
    const [, side] = polygonsOf(
      back,
      block("flat", "side", { size: size(m(1), m(2)), hinge: edgeOf("right", "back"), opening: deg(180) }),
    );
    close(side?.normal, [0, -1, 0]);
    const xs = side?.vertices.map((v) => v[0]) ?? [];
    expect(Math.min(...xs)).toBeCloseTo(1, 12);
    expect(Math.max(...xs)).toBeCloseTo(2, 12);
  });

  test("has the inside angle between the two fronts", () => {
    for (const opening of [60, 115, 150]) {
      const [a, b] = polygonsOf(
        back,
        block("flat", "side", {
          size: size(m(1), m(2)),
          hinge: edgeOf("left", "back"),
          opening: deg(opening),
        }),
      );
      // The normals of two leaves with the inside angle o make 180 - o.
      const angle = (Math.acos(dot(a?.normal ?? [0, 0, 0], b?.normal ?? [0, 0, 0])) * 180) / Math.PI;
      expect(angle).toBeCloseTo(180 - opening, 9);
    }
  });

  test("may be written before the flat it hangs on, and hang on a hinged one", () => {
    const { scene, found } = build(
      block("flat", "c", { size: size(m(1), m(2)), hinge: edgeOf("left", "b"), opening: deg(120) }),
      block("flat", "b", { size: size(m(1), m(2)), hinge: edgeOf("left", "back"), opening: deg(120) }),
      back,
    );
    expect(found).toEqual([]);
    expect(scene.polygons.map((polygon) => polygon.name)).toEqual(["c", "b", "back"]);
  });

  test("on something else is reported, and so is a ring of hinges", () => {
    const card = block("card", "back", { size: size(m(1), m(1)), at: offset({}) });
    const side = block("flat", "side", { size: size(m(1), m(2)), hinge: edgeOf("left", "back") });
    expect(codes(build(card, side).found)).toEqual(["flat.hinge"]);
    const other = block("flat", "back", { size: size(m(1), m(2)), hinge: edgeOf("left", "side") });
    expect(codes(build(other, side).found)).toContain("point.circular");
  });
});

describe("surfaces", () => {
  test("front and back of a flat, the back as the front where it is not said", () => {
    const [one] = polygonsOf(
      block("flat", "one", {
        size: size(m(1), m(2)),
        at: offset({}),
        front: surface("white_board") ?? reflecting(percent(0)),
        back: surface("black_cloth") ?? reflecting(percent(0)),
      }),
    );
    expect([one?.frontReflectance, one?.backReflectance]).toEqual([0.85, 0.012]);
    const { scene } = build(
      block("flat", "two", { size: size(m(1), m(2)), at: offset({}), reflectance: reflecting(percent(18)) }),
    );
    expect([scene.polygons[0]?.frontReflectance, scene.polygons[0]?.backReflectance]).toEqual([0.18, 0.18]);
    expect(scene.assumed.map((a) => a.what)).not.toContain("surface of two");
  });

  test("a default is listed with a star", () => {
    const { scene } = build(back);
    expect(scene.assumed).toContainEqual({
      what: "surface of back",
      value: "white board, 85 %",
      matters: true,
    });
  });
});

describe("stations on the set", () => {
  test("of a flat behind the subject look to it, left to right as the camera sees them", () => {
    const { scene } = build(back);
    const own = scene.stations.filter((station) => station.name.startsWith("back"));
    expect(own.map((station) => station.name)).toEqual(["back.left", "back", "back.right"]);
    expect(own.map((station) => Math.sign(station.at[0]))).toEqual([-1, 0, 1]);
    for (const station of own) close(station.facing, [0, -1, 0]);
  });

  test("of a flat that turns its back to the mark lie on its back", () => {
    const turned = block("flat", "back", {
      size: size(m(2), m(2)),
      at: offset({ behind: m(1) }),
      faces: bearing(left(deg(180))),
    });
    const { scene } = build(turned);
    close(scene.polygons[0]?.normal, [0, 1, 0]);
    close(scene.stations.find((station) => station.name === "back")?.facing, [0, -1, 0]);
    expect(scene.stations.find((station) => station.name === "back.left")?.at[0]).toBeLessThan(0);
  });

  test("of a table looks up from its middle", () => {
    const { scene } = build(
      block("table", "top", { size: size(m(1), m(1)), height: cm(80), at: at(m(0.5), m(0), m(0)) }),
    );
    const station = scene.stations.find((candidate) => candidate.name === "top");
    expect(station?.at).toEqual([0.5, 0, 0.8]);
    expect(station?.facing).toEqual([0, 0, 1]);
  });
});

test("what cannot be built is reported", () => {
  const paper = { width: m(2.7), run: cm(30), hangs: m(2), curve: cm(40) };
  expect(codes(build(block("paper", "roll", paper)).found)).toEqual(["paper.short"]);
  expect(codes(build(block("flat", "x", { at: offset({}) })).found)).toEqual(["scene.incomplete"]);
  const up = straight("up");
  expect(
    codes(build(block("flat", "x", { size: size(m(1), m(1)), at: offset({}), faces: up })).found),
  ).toEqual(["direction.none"]);
});
