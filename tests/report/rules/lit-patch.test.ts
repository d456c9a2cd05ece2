import { describe, expect, test } from "vitest";
import type { Vec3 } from "../../../src/core/vector.js";
import { distance, subtract } from "../../../src/math/vector.js";
import { belowFull, disc } from "../../../src/model/make/lamps.js";
import { at, left } from "../../../src/model/make/points.js";
import { volume } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { withSource } from "../../../src/report/change/move-source.js";
import { measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { fallOff } from "../../../src/report/light/fall-off.js";
import { readingAt } from "../../../src/report/light/reading.js";
import { mattersMost } from "../../../src/report/matters.js";
import { carriedBack } from "../../../src/report/rules/carry-back.js";
import { crossingNoses } from "../../../src/report/rules/crossing-noses.rule.js";
import { darkSockets } from "../../../src/report/rules/dark-sockets.rule.js";
import { keyDistanceWhere, keyLight } from "../../../src/report/rules/key-light.js";
import { lampNearCeiling } from "../../../src/report/rules/lamp-near-ceiling.rule.js";
import { nearField } from "../../../src/report/rules/near-field.rule.js";
import { noseOnLip } from "../../../src/report/rules/nose-on-lip.rule.js";
import type { Source } from "../../../src/scene/types.js";
import { cm, deg, m, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, finding, findings, numberAfter, person, planOf } from "../../helpers/plan.js";

/** The face of one who is 1.7 m tall: 0.933 h up, 0.057 h before the mark (proportions of the figure). */
const face: Vec3 = [0, -0.0969, 1.5861];

/** A head at a place that shines into a surface at another. */
const into = (surface: string, head: Vec3, aim: Vec3, more: object = {}, name = "key") =>
  dish(
    {
      distance: undefined as never,
      bearing: undefined as never,
      height: undefined as never,
      position: at(m(head[0]), m(head[1]), m(head[2])),
      aim: at(m(aim[0]), m(aim[1]), m(aim[2])),
      into: surface as never,
      ...more,
    },
    name,
  );

const hall = (high: number, wide = 5) => block("room", null, { size: volume(m(wide), m(12), m(high)) });

const rise = (place: Vec3): number =>
  (Math.atan2(place[2] - face[2], Math.hypot(place[0] - face[0], place[1] - face[1])) * 180) / Math.PI;

/** The same place so much further from the face along the floor. */
function further(place: Vec3, by: number): Vec3 {
  const way = subtract(place, face);
  const level = Math.hypot(way[0], way[1]);
  return [place[0] + (by * way[0]) / level, place[1] + (by * way[1]) / level, place[2]];
}

const sourceOf = (parts: Partial<Recipe>): Source => planOf(parts).scene.sources[0] as Source;

describe("a head that shines into a surface and is moved", () => {
  const from = { room: hall(2.6), lights: [into("ceiling", [-0.4, -0.6, 1.3], [-0.3, -0.4, 2.6])] };
  const to = { room: hall(2.6), lights: [into("ceiling", [-0.4, -0.6, 1.7], [-0.3, -0.4, 2.6])] };

  test("lights the patch that the recipe gives it there", () => {
    const plan = planOf(from);
    const [before, there] = [plan.scene.sources[0] as Source, sourceOf(to)];
    const { centre, axis, across, along } = there;
    const moved = withSource(plan, 0, { ...before, centre, axis, across, along }).scene.sources[0];
    expect(moved?.patch?.width).toBeCloseTo(there.patch?.width ?? 0, 9);
    expect(distance(moved?.patch?.centre ?? face, there.patch?.centre ?? face)).toBeLessThan(1e-9);
    expect(there.patch?.width).toBeLessThan(0.8 * (before.patch?.width ?? 0));
  });

  test("is off by its height as the recipe has it, with what the ceiling gives back", () => {
    const plan = planOf(from);
    const input = measuredInputs(plan).find(({ what }) => what === "key height");
    const off = planOf({ ...from, lights: [into("ceiling", [-0.4, -0.6, 1.33], [-0.3, -0.4, 2.6])] });
    const at = keyLight(off)?.station;
    if (input === undefined || at === undefined) throw new Error("no such input");
    expect(input.by).toBe("3 cm");
    const got = readingAt(input.moved, at).exposure;
    expect(Math.abs(Math.log2(got / readingAt(off, at).exposure))).toBeLessThan(0.005);
    // The patch hardly moves by 3 cm of the head, which itself would move by 2 deg.
    expect(mattersMost(plan)).not.toMatch(/height: 3 cm is [12]/);
  });
});

describe("what is judged by the patch and not by its head", () => {
  test("eyes under a lit ceiling: the aim is turned as far as it says, and nothing goes above the ceiling", () => {
    const aim: Vec3 = [-0.3, -0.4, 2.6];
    const lights = [into("ceiling", [-0.4, -0.6, 1.3], aim)];
    const { remedy, message } = finding(darkSockets, { room: hall(2.6), lights });
    expect(message).toContain("The patch of the ceiling that key lights");
    const patch = sourceOf({ room: hall(2.6), lights }).patch?.centre ?? face;
    expect(numberAfter(message, "at", "deg")).toBe(Math.round(rise(patch)));
    const by = numberAfter(remedy, "Aim key", "cm") / 100;
    const way = subtract(further(patch, by), patch);
    const turned = (share: number) => [
      into("ceiling", [-0.4, -0.6, 1.3], [aim[0] + share * way[0], aim[1] + share * way[1], 2.6]),
    ];
    expect(findings(darkSockets, { room: hall(2.6), lights: turned(1) })).toHaveLength(0);
    expect(findings(darkSockets, { room: hall(2.6), lights: turned(0.9) })).toHaveLength(1);
  });

  test("a wide ceiling throws no shadow of the nose, whatever the size of its head; a small patch does", () => {
    const wide = [into("ceiling", [-0.4, -0.6, 1.3], [-0.3, -0.4, 2.6])];
    expect(findings(noseOnLip, { room: hall(2.6), lights: wide })).toHaveLength(0);
    // A head 15 cm under a ceiling of 4.5 m: the patch is small from the face, 55 deg up.
    const small = [into("ceiling", [0, -1.8, 4.35], [0, -1.8, 4.5])];
    const { message, remedy } = finding(noseOnLip, { room: hall(4.5), lights: small });
    const patch = sourceOf({ room: hall(4.5), lights: small }).patch?.centre ?? face;
    // 25 mm tan(elevation), straight before the nose.
    const drop = 25 * Math.tan((rise(patch) * Math.PI) / 180);
    expect(numberAfter(message, "nose", "mm")).toBe(Math.round(drop));
    // So near to the ceiling a turn does little: the head is carried.
    const by = numberAfter(remedy, "with its aim by", "cm") / 100;
    const carried = (share: number) => [
      into("ceiling", [0, -1.8 - share * by, 4.35], [0, -1.8 - share * by, 4.5]),
    ];
    expect(findings(noseOnLip, { room: hall(4.5), lights: carried(1) })).toHaveLength(0);
    expect(findings(noseOnLip, { room: hall(4.5), lights: carried(0.95) })).toHaveLength(1);
  });

  test("a patch from the other side crosses the nose's shadows, though its head stands on the key's side", () => {
    // Patches of a metre and less on the right wall of a hall 9 m wide; the key from the left.
    const beside = (down: number) => [
      dish({ bearing: left(deg(40)), power: belowFull(stops(3.5)) }),
      into("wall_right", [3.9, -3, 2.2], [4.5, -3.2, 2.2], { power: belowFull(stops(down)) }, "second"),
    ];
    const found = findings(crossingNoses, { room: hall(2.8, 9), lights: beside(0) });
    expect(found).toHaveLength(1);
    expect(findings(crossingNoses, { room: hall(2.8, 9), lights: beside(4) })).toHaveLength(0);
  });

  test("the rule of the square fails for a near patch, though its head is small", () => {
    const lights = [into("ceiling", [-0.4, -0.6, 1.3], [-0.3, -0.4, 2.6], { shape: disc(cm(10)) })];
    const [found] = findings(nearField, { room: hall(2.6), lights });
    expect(found?.message).toContain("The patch of the ceiling that key lights");
    const { patch } = sourceOf({ room: hall(2.6), lights });
    expect(numberAfter(found?.message ?? "", "is", "m")).toBeCloseTo(
      distance(face, patch?.centre ?? face),
      1,
    );
  });

  test("falls off by receptors that look at the patch", () => {
    const plan = planOf({
      room: hall(2.6),
      lights: [into("ceiling", [-0.4, -0.6, 1.3], [-0.3, -0.4, 2.6])],
    });
    const key = plan.scene.sources[0] as Source;
    const shin = plan.scene.stations.find(({ name }) => name === "shin");
    const { station } = keyLight(plan) ?? {};
    if (shin === undefined || station === undefined) throw new Error("no shin");
    // Face and shin as the report reads them: by discs that look at the key.
    const read = Math.log2(readingAt(plan, station).exposure / readingAt(plan, shin).exposure);
    const place = shin.before?.at ?? shin.at;
    expect(fallOff(plan, key, station.before?.at ?? face, place).stops).toBeCloseTo(read, 2);
  });

  test("no remedy carries the head as if it were the light", () => {
    const plan = planOf({
      room: hall(2.6),
      lights: [into("ceiling", [-0.4, -0.6, 1.3], [-0.3, -0.4, 2.6])],
    });
    const key = keyLight(plan);
    if (key === null) throw new Error("no key");
    expect(keyDistanceWhere(plan, key, 0.2, 5, ({ scene }) => (scene.sources[0]?.centre[2] ?? 0) - 1.4)).toBe(
      null,
    );
    expect(carriedBack(plan, key, ({ centre }) => -centre[1] - 1)).toBe(null);
  });

  test("a cool head may stand close under the ceiling that it lights", () => {
    const near: Vec3 = [-0.4, -0.6, 2.4];
    const head = { head_height: cm(20) };
    const found = (aim: Vec3, surface: string, more = {}) =>
      findings(lampNearCeiling, {
        subjects: [person],
        room: hall(2.6),
        lights: [into(surface, near, aim, { ...head, ...more })],
      });
    expect(found([-0.3, -0.4, 2.6], "ceiling")).toHaveLength(0);
    expect(found([-2.5, -0.4, 2.2], "wall_left")).toHaveLength(1);
    expect(found([-0.3, -0.4, 2.6], "ceiling", { modelling_lamp: "hot" })[0]?.message).toContain(
      "heats the ceiling",
    );
  });
});

test("a light from behind the face does not light the eyes from below", () => {
  const steep = dish({
    distance: undefined as never,
    bearing: undefined as never,
    height: undefined as never,
    position: at(m(0), m(-0.7), m(2.6)),
  });
  const low = (y: number) =>
    dish(
      {
        distance: undefined as never,
        bearing: undefined as never,
        height: undefined as never,
        position: at(m(0.3), m(y), m(0.8)),
      },
      "low",
    );
  expect(findings(darkSockets, { lights: [steep, low(-2)] })).toHaveLength(0);
  expect(findings(darkSockets, { lights: [steep, low(1.5)] })).toHaveLength(1);
});

test("a lamp that is to be lowered ends under the ceiling", () => {
  // The ceiling hangs lower than what 50 deg would allow.
  const lights = [
    dish({
      distance: undefined as never,
      bearing: undefined as never,
      height: undefined as never,
      position: at(m(0), m(-1.2), m(3.2)),
    }),
  ];
  const { remedy } = finding(darkSockets, { room: hall(2.6), lights });
  expect(numberAfter(remedy, "key to", "m")).toBeLessThanOrEqual(2.6 - 0.25);
});
