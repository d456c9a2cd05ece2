import { describe, expect, test } from "vitest";
import { areaVector, polygonArea } from "../../src/math/polygon.js";
import { dot, normalise } from "../../src/math/vector.js";
import { offset } from "../../src/model/make/points.js";
import { size, volume } from "../../src/model/make/sizes.js";
import { markFrom } from "../../src/model/make/surroundings.js";
import { cm, lx, m, percent } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { codes, shoot } from "../helpers/shoot.js";

const measures = { size: volume(m(5), m(7), m(3)) };

describe("a room", () => {
  test("lies round the mark by its tapes, and its front follows from its size", () => {
    const { scene } = shoot({
      room: block("room", null, {
        ...measures,
        mark: markFrom({ left: m(1.2), back: cm(70) }),
        ambient: lx(300),
      }),
    });
    expect(scene.room).toMatchObject({
      left: -1.2,
      right: expect.closeTo(3.8, 12),
      back: expect.closeTo(0.7, 12),
      front: expect.closeTo(-6.3, 12),
      ambient: 300,
    });
    expect(scene.landmarks.get("ceiling")?.at).toEqual([0, 0, 3]);
  });

  test("without a mark is centred, and says so", () => {
    const { scene } = shoot({ room: block("room", null, measures) });
    expect(scene.room).toMatchObject({ left: -2.5, right: 2.5, front: -3.5, back: 3.5 });
    expect(scene.assumed).toContainEqual({ what: "mark", value: "the middle of the room", matters: true });
  });

  test("is closed: its surfaces look inwards and their areas are those of a box", () => {
    const { scene } = shoot({ room: block("room", null, measures) });
    const middle = [0, 0, 1.5] as const;
    let area = 0;
    for (const polygon of scene.polygons) {
      const corner = polygon.vertices[0] ?? middle;
      area += polygonArea(polygon.vertices);
      expect(dot(normalise(areaVector(polygon.vertices)) ?? [0, 0, 0], polygon.normal)).toBeCloseTo(1, 12);
      expect(
        dot(polygon.normal, [middle[0] - corner[0], middle[1] - corner[1], middle[2] - corner[2]]),
      ).toBeGreaterThan(0);
    }
    expect(area).toBeCloseTo(2 * (5 * 7 + 5 * 3 + 7 * 3), 9);
  });

  test("has 80 / 50 / 20 per cent unless it says otherwise; one wall may differ", () => {
    const of = (parts: Parameters<typeof block<"room">>[2]["parts"]) => {
      const { scene } = shoot({ room: block("room", null, { ...measures, parts: parts ?? [] }) });
      return new Map(scene.polygons.map((p) => [p.name, p.frontReflectance]));
    };
    const plain = of([]);
    expect([plain.get("ceiling"), plain.get("wall left"), plain.get("floor")]).toEqual([0.8, 0.5, 0.2]);
    const painted = of([
      block("walls", null, { reflectance: percent(30) }),
      block("wall", "left", { reflectance: percent(4) }),
    ]);
    expect([painted.get("wall left"), painted.get("wall right"), painted.get("wall back")]).toEqual([
      0.04, 0.3, 0.3,
    ]);
  });

  test("with an opening has a wall with a hole of that size", () => {
    const window = block("opening", "window", {
      wall: "left",
      size: size(m(1.2), m(1.5)),
      at: offset({ left: m(2.5), up: cm(90) }),
    });
    const { scene, found } = shoot({ room: block("room", null, { ...measures, parts: [window] }) });
    const parts = scene.polygons.filter((polygon) => polygon.name.startsWith("wall left"));
    expect(found).toEqual([]);
    expect(parts).toHaveLength(4);
    expect(parts.reduce((sum, part) => sum + polygonArea(part.vertices), 0)).toBeCloseTo(
      7 * 3 - 1.2 * 1.5,
      9,
    );
    expect(scene.landmarks.get("window")?.at).toEqual([-2.5, 0, expect.closeTo(1.65, 12)]);
  });

  test("that contradicts itself is reported with the numbers", () => {
    const room = (mark: ReturnType<typeof markFrom>) =>
      codes(shoot({ room: block("room", null, { ...measures, mark }) }).found);
    expect(room(markFrom({ left: m(6) }))).toEqual(["room.mark-outside"]);
    expect(room(markFrom({ left: m(2), right: m(2) }))).toEqual(["room.mark-twice"]);
    expect(room(markFrom({ left: m(2), right: m(3) }))).toEqual([]);
    const window = block("opening", "window", {
      wall: "back",
      size: size(m(1), m(2)),
      at: offset({ up: m(1.5) }),
    });
    expect(codes(shoot({ room: block("room", null, { ...measures, parts: [window] }) }).found)).toEqual([
      "opening.outside",
    ]);
  });

  test("that is missing leaves open and black surroundings, and says so", () => {
    const { scene } = shoot({});
    expect(scene.room).toBeNull();
    expect(scene.polygons).toEqual([]);
    expect(scene.assumed.some((a) => a.what === "surroundings" && a.matters)).toBe(true);
  });
});
