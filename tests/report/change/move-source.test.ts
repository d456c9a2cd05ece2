import { describe, expect, test } from "vitest";
import { addScaled, distance, dot, length, subtract } from "../../../src/math/vector.js";
import { at, left, named, offset, tape } from "../../../src/model/make/points.js";
import { atDistance, atHeight, atPower, moveTo, withSource } from "../../../src/report/change/move-source.js";
import { measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { placeOf } from "../../../src/scene/places.js";
import { deg, m, ws } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, dishOnFloor, planOf } from "../../helpers/plan.js";
import { firstSource } from "../../helpers/shoot.js";

const face = [0, -0.0969, 1.5861] as const;

describe("a lamp that is carried elsewhere", () => {
  test("is what the recipe makes of the same lamp there, feathered and rolled as before", () => {
    const lamp = { feather: left(deg(12)), roll: deg(20) };
    const before = firstSource(planOf({ lights: [dishOnFloor({ ...lamp, height: m(2.2) })] }).scene);
    const after = firstSource(planOf({ lights: [dishOnFloor({ ...lamp, height: m(2.9) })] }).scene);
    const moved = atHeight(before, 2.9);
    for (const part of ["centre", "axis", "across", "along"] as const) {
      expect(distance(moved[part], after[part]), part).toBeLessThan(1e-12);
    }
    expect(length(moved.axis)).toBeCloseTo(1, 12);
    expect(dot(moved.axis, moved.across)).toBeCloseTo(0, 12);
  });

  test("without feather points at its aim to the last bit", () => {
    const before = firstSource(planOf().scene);
    const moved = moveTo(before, [1, 2, 3]);
    const sight = distance(moved.centre, moved.aim);
    expect(dot(moved.axis, [-1, -0.0969 - 2, 1.5861 - 3])).toBeCloseTo(sight, 12);
  });

  test("goes along its line of sight", () => {
    const moved = atDistance(firstSource(planOf().scene), face, 4.8);
    expect(distance(moved.centre, face)).toBeCloseTo(4.8, 12);
    expect(moved.centre[2] - face[2]).toBeCloseTo(2 * (2.2 - face[2]), 12);
  });
});

test("more power is more energy and fewer stops below full", () => {
  const source = firstSource(planOf({ lights: [dish({ full_power: ws(400) })] }).scene);
  const up = atPower(source, 0.5);
  expect(up.below).toBe(0.5);
  expect(up.energy / source.energy).toBeCloseTo(Math.SQRT2, 12);
  expect((up.wattSeconds ?? 0) / 200).toBeCloseTo(Math.SQRT2, 12);
});

test("a scene with a moved key turns the meters that look at it, and its name follows", () => {
  const plan = planOf();
  const { scene } = plan;
  const moved = withSource(plan, 0, moveTo(firstSource(scene), [2, -2, 2]));
  const station = moved.scene.stations.find((row) => row.name === "face" && row.receptor === "disc");
  // Held a hand's breadth (8 cm) out of the face, less what of that lies along the way to the lamp.
  const way = subtract([2, -2, 2], face);
  const share = dot(way, [0, -1, 0]) / dot(way, way);
  const place = addScaled(addScaled(face, [0, -1, 0], 0.08), way, -0.08 * share);
  expect(distance(station?.at ?? face, place)).toBeLessThan(1e-12);
  expect(dot(station?.facing ?? [0, 0, 0], subtract([2, -2, 2], place))).toBeCloseTo(
    distance([2, -2, 2], place),
    12,
  );
  expect(placeOf(moved.scene, named("key"))).toEqual([2, -2, 2]);
  expect(placeOf(scene, named("key"))).not.toEqual([2, -2, 2]);
});

describe("the stand of a lamp that is moved", () => {
  const at = (away: number, stand: object) =>
    planOf({
      lights: [
        dish({
          distance: tape(m(away)),
          height: m(face[2]),
          parts: [block("stand", null, stand as never)],
        } as never),
      ],
    });

  test.each([{}, { boom: m(1) }])(
    "goes with it: bodies and direct light are those of the lamp placed there (%o)",
    (stand) => {
      const near = at(1.5, stand);
      const moved = withSource(near, 0, atDistance(firstSource(near.scene), face, 3));
      const there = at(3, stand);
      expect(moved.scene.bodies.map(({ name }) => name)).toEqual(there.scene.bodies.map(({ name }) => name));
      for (const [i, body] of moved.scene.bodies.entries()) {
        const other = there.scene.bodies[i];
        if (body.kind !== "capsule" || other?.kind !== "capsule") continue;
        expect(distance(body.from, other.from), body.name).toBeLessThan(1e-9);
        expect(distance(body.to, other.to), body.name).toBeLessThan(1e-9);
      }
      for (const [i, station] of moved.scene.stations.entries()) {
        const other = there.scene.stations[i] ?? station;
        const direct = moved.light.direct(firstSource(moved.scene), station);
        expect(direct, station.name).toBeCloseTo(there.light.direct(firstSource(there.scene), other), 9);
      }
    },
  );

  test("no longer stands in its own light where it was: the shin is free behind it", () => {
    // From 3 m away at the face's height the way to the shin is 0.93 m up where the stand was, 1.5 m away; its column
    // ended 1.4 m up, 3 cm wide.
    const near = at(1.5, {});
    const moved = withSource(near, 0, atDistance(firstSource(near.scene), face, 3));
    const shin = moved.scene.stations.find(({ name }) => name === "shin");
    if (shin === undefined) throw new Error("no shin");
    const lamp = firstSource(moved.scene);
    const bare = planOf({ lights: [dish({ distance: tape(m(3)), height: m(face[2]) })] });
    expect(near.light.direct(lamp, shin)).toBeLessThan(0.95 * bare.light.direct(lamp, shin));
    expect(moved.light.direct(lamp, shin)).toBeCloseTo(bare.light.direct(lamp, shin), 9);
  });
});

describe("measured inputs", () => {
  const find = (what: string, lamp = dish()) => {
    const input = measuredInputs(planOf({ lights: [lamp] })).find((row) => row.what === what);
    if (input === undefined) throw new Error(`no ${what}`);
    return { input, source: firstSource(input.moved.scene) };
  };

  test("a slant tape that is 2 cm longer keeps the height and is 2 cm longer", () => {
    const { source, input } = find("key distance");
    expect(input.by).toBe("2 cm");
    expect(source.centre[2]).toBe(2.2);
    expect(distance(source.centre, face)).toBeCloseTo(2.42, 4);
  });

  // On a slant tape s with the height held, the way along the floor is sqrt(s^2 - rise^2).
  test("a slant tape and a height each keep the other's reading", () => {
    const higher = find("key height").source;
    expect(higher.centre[2]).toBeCloseTo(2.23, 12);
    expect(distance(higher.centre, face)).toBeCloseTo(2.4, 9);
    expect(distance(find("key distance").source.centre, face)).toBeCloseTo(2.42, 9);
  });

  test("a floor tape that is 2 cm longer moves the lamp 2 cm along the floor from the mark, not from the face", () => {
    const lamp = dishOnFloor({ height: m(2.2) });
    const before = firstSource(planOf({ lights: [lamp] }).scene).centre;
    const { source } = find("key distance", lamp);
    const flat = Math.hypot(before[0], before[1]);
    expect(Math.hypot(source.centre[0], source.centre[1]) - flat).toBeCloseTo(0.02, 12);
    expect(source.centre[0] / source.centre[1]).toBeCloseTo(before[0] / before[1], 12);
    expect(source.centre[2]).toBeCloseTo(2.2, 12);
  });

  test("with an elevation a floor tape rises along the line of sight: by over its cosine, from below its zero", () => {
    const start = offset({ from: named("face"), up: m(0) });
    const lamp = dish({
      distance: undefined,
      height: undefined,
      floor_distance: tape(m(2), start),
      elevation: deg(30),
    } as never);
    const before = firstSource(planOf({ lights: [lamp] }).scene).centre;
    const { source } = find("key distance", lamp);
    expect(distance(source.centre, before)).toBeCloseTo(0.02 / Math.cos(Math.PI / 6), 9);
    expect(source.centre[2] - before[2]).toBeCloseTo(0.02 * Math.tan(Math.PI / 6), 9);
    // An elevation that is off leaves the floor tape alone.
    const steeper = find("key elevation", lamp).source.centre;
    expect(Math.hypot(steeper[0] - before[0], steeper[1] - before[1])).toBeLessThan(1e-12);
    expect(steeper[2] - face[2]).toBeCloseTo(2 * Math.tan((32 * Math.PI) / 180), 9);
  });

  test("a tape from a point of its own moves the lamp along the line from that point", () => {
    const zero = at(m(1), m(0.5), m(1));
    const lamp = dish({ distance: tape(m(2), zero), elevation: deg(20), height: undefined } as never);
    const before = firstSource(planOf({ lights: [lamp] }).scene).centre;
    const { source } = find("key distance", lamp);
    expect(distance(source.centre, [1, 0.5, 1])).toBeCloseTo(2.02, 9);
    expect(distance(source.centre, before)).toBeCloseTo(0.02, 9);
    const turned = find("key bearing", lamp).source.centre;
    expect(distance(turned, [1, 0.5, 1])).toBeCloseTo(2, 9);
  });

  test("a bearing turns about the vertical, an elevation keeps the distance", () => {
    const turned = find("key bearing").source;
    expect(distance(turned.centre, face)).toBeCloseTo(2.4, 12);
    expect(turned.centre[2]).toBeCloseTo(2.2, 12);
    expect(distance(turned.centre, firstSource(planOf().scene).centre)).toBeGreaterThan(0.05);
    const lamp = dish({ height: undefined, elevation: deg(20) } as never);
    const lifted = find("key elevation", lamp).source;
    expect(distance(lifted.centre, face)).toBeCloseTo(2.4, 12);
    expect(lifted.centre[2] - face[2]).toBeCloseTo(2.4 * Math.sin((22 * Math.PI) / 180), 9);
  });
});
