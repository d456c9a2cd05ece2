import { describe, expect, test } from "vitest";
import { belowFull, rectangle } from "../../../src/model/make/lamps.js";
import { left, named, right, tape } from "../../../src/model/make/points.js";
import { overcast } from "../../../src/model/make/surroundings.js";
import { sizeFrom } from "../../../src/report/light/size.js";
import { crossingNoses } from "../../../src/report/rules/crossing-noses.rule.js";
import { darkSockets } from "../../../src/report/rules/dark-sockets.rule.js";
import { notOvercast } from "../../../src/report/rules/not-overcast.rule.js";
import type { RuleFinding } from "../../../src/report/rules/rule.js";
import { softTooFar } from "../../../src/report/rules/soft-too-far.rule.js";
import { deg, m, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, dishOnFloor, finding, findings, numberAfter, planOf } from "../../helpers/plan.js";

const box = (away: number, height: number, side = 1.2) =>
  dish({ shape: rectangle(m(side), m(side)), distance: tape(m(away)), height: m(height) });

describe("not-overcast", () => {
  const intent = block("intent", null, { pass_for: overcast });
  const bySize = (parts: Parameters<typeof findings>[1]): readonly RuleFinding[] =>
    findings(notOvercast, parts).filter((row) => row.message.includes("wide from the face"));
  const at = (away: number, height: number, side = 1.2) => ({ intent, lights: [box(away, height, side)] });

  test("speaks below 60 deg", () => {
    // A square of 1.2 m square on has the solid angle of a 60 deg cone, 2 pi (1 - cos 30), near 1.1 m.
    const wide = (away: number): number => {
      const a = (0.6 * 0.6) / ((0.36 + away * away) * 1);
      return 4 * Math.asin(a);
    };
    const cone = 2 * Math.PI * (1 - Math.cos(Math.PI / 6));
    let low = 0.5;
    let high = 2;
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (wide(middle) > cone) low = middle;
      else high = middle;
    }
    expect(bySize(at(low - 0.02, 1.9))).toHaveLength(0);
    expect(bySize(at(low + 0.02, 1.9))).toHaveLength(1);
    expect(bySize({ ...at(2, 1.9), intent: null })).toHaveLength(0);
  });

  test("the place it names is wide enough", () => {
    const { remedy } = bySize(at(2, 2))[0] as RuleFinding;
    const away = numberAfter(remedy, "Come to", "m");
    expect(bySize(at(away, numberAfter(remedy, "face,", "m high")))).toHaveLength(0);
    const larger = numberAfter(remedy, "about", "m");
    const { scene } = planOf({ lights: [box(2, 2, larger)] });
    const source = scene.sources[0];
    const size = source === undefined ? null : sizeFrom(source, [0, -0.0969, 1.5861]);
    expect(size?.equivalent).toBeGreaterThan(58);
  });
});

describe("soft-too-far", () => {
  const intent = block("intent", null, { edges: "soft" });
  const limit = 2 * 1.2 * Math.SQRT2;

  test("speaks beyond twice the diagonal", () => {
    expect(findings(softTooFar, { intent, lights: [box(limit + 0.01, 2)] })).toHaveLength(1);
    expect(findings(softTooFar, { intent, lights: [box(limit - 0.01, 2)] })).toHaveLength(0);
    expect(findings(softTooFar, { lights: [box(5, 2)] })).toHaveLength(0);
  });

  test("the place it names is near enough and has the angle it says", () => {
    const { remedy } = finding(softTooFar, { intent, lights: [box(5, 2)] });
    const there = box(numberAfter(remedy, "Come to", "m"), numberAfter(remedy, "face,", "m high"));
    expect(findings(softTooFar, { intent, lights: [there] })).toHaveLength(0);
    const source = planOf({ lights: [there] }).scene.sources[0];
    const size = source === undefined ? null : sizeFrom(source, [0, -0.0969, 1.5861]);
    expect(numberAfter(remedy, "for", "deg")).toBe(Math.round(size?.equivalent ?? 0));
  });
});

describe("crossing-noses", () => {
  const pair = (down: number, bearing = right(deg(35))) => ({
    lights: [dish(), dish({ bearing, power: belowFull(stops(1 + down)) }, "second")],
  });

  test("speaks for lights on both sides less than a stop apart", () => {
    expect(findings(crossingNoses, pair(0.95))).toHaveLength(1);
    expect(findings(crossingNoses, pair(1.05))).toHaveLength(0);
    expect(findings(crossingNoses, pair(0.5, left(deg(50))))).toHaveLength(0);
    expect(findings(crossingNoses, pair(0.5, right(deg(150))))).toHaveLength(0);
    expect(finding(crossingNoses, pair(0)).severity).toBe("check");
  });

  test("turned down as it says, it is silent", () => {
    const { remedy } = finding(crossingNoses, pair(0.4));
    expect(findings(crossingNoses, pair(0.4 + numberAfter(remedy, "down by", "stop")))).toHaveLength(0);
    expect(numberAfter(remedy, "leaves", "stop")).toBeCloseTo(1.5, 1);
  });
});

describe("dark-sockets", () => {
  const at = (elevation: number) => ({
    lights: [
      dishOnFloor({
        floor_distance: tape(m(1), named("face")),
        height: m(1.5861 + Math.tan((elevation * Math.PI) / 180)),
      }),
    ],
  });

  test("speaks above 50 deg, unless another light comes from low down", () => {
    expect(findings(darkSockets, at(50.2))).toHaveLength(1);
    expect(findings(darkSockets, at(49.8))).toHaveLength(0);
    const low = dish({ height: m(1.2), distance: tape(m(1.5)) }, "low");
    expect(findings(darkSockets, { lights: [...at(55).lights, low] })).toHaveLength(0);
  });

  test("lowered as it says, it is silent", () => {
    const { remedy } = finding(darkSockets, at(60));
    const height = numberAfter(remedy, "key to", "m");
    const lights = [dishOnFloor({ floor_distance: tape(m(1), named("face")), height: m(height) })];
    expect(findings(darkSockets, { lights })).toHaveLength(0);
  });
});
