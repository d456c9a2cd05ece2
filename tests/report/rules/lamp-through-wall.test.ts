import { describe, expect, test } from "vitest";
import { at, left, offset, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { elevationOf } from "../../../src/report/geometry/directions.js";
import { faceReading } from "../../../src/report/rules/key-light.js";
import { lampThroughWall as rule } from "../../../src/report/rules/lamp-through-wall.rule.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, dishOnFloor, finding, findings, numberAfter, planOf, room } from "../../helpers/plan.js";

/** The left wall is 2.5 m from the mark. */
const leftwards = (away: number, more: object = {}) => ({
  room,
  lights: [dishOnFloor({ bearing: left(deg(90)), floor_distance: tape(m(away)), ...more })],
});

test("speaks when the stand has less than 50 cm of floor, or the lamp is beyond the wall", () => {
  expect(findings(rule, leftwards(2.01))).toHaveLength(1);
  expect(findings(rule, leftwards(1.99))).toHaveLength(0);
  expect(finding(rule, leftwards(2.7)).message).toContain("20 cm beyond the left wall");
  expect(finding(rule, leftwards(2.2)).message).toContain("30 cm from the left wall");
});

test("on a boom only the lamp counts, and a wall with a window lets a lamp stand outside", () => {
  const boom = { parts: [block("stand", null, { boom: m(1.5) })] };
  expect(findings(rule, leftwards(2.4, boom))).toHaveLength(0);
  expect(findings(rule, leftwards(2.6, boom))).toHaveLength(1);
  const opening = block("opening", "window", {
    wall: "left",
    size: size(m(1), m(1)),
    at: offset({ left: m(2.5), up: cm(90) }),
  });
  const windowed = block("room", null, { ...room, parts: [opening] } as never);
  expect(findings(rule, { ...leftwards(2.7), room: windowed })).toHaveLength(0);
});

test("the place of its remedy is silent and the power it names is what the nearer lamp gives more", () => {
  // Before the face, which a light from beside the head does not reach.
  const side = { bearing: left(deg(70)) };
  const before = leftwards(2.5, side);
  const { remedy } = finding(rule, before);
  const after = leftwards(numberAfter(remedy, "in to", "m"), side);
  expect(findings(rule, after)).toHaveLength(0);
  const a = faceReading(planOf(after))?.exposure ?? 0;
  const b = faceReading(planOf(before))?.exposure ?? 1;
  expect(numberAfter(remedy, "with", "stop less")).toBeCloseTo(Math.log2(a / b), 1);
});

describe("a lamp whose bearing is not taken at the mark", () => {
  /** At the height of its tape's far end, 2.3 m up, beyond the left wall. */
  const said = (more: object) =>
    finding(rule, {
      room,
      lights: [dish({ bearing: left(deg(70)), distance: tape(m(3)), height: m(2.3), ...more })],
    }).remedy;
  const put = (remedy: string, from: string | null, bearing: number, more: object = {}) => {
    const away = m(numberAfter(remedy, "in to", "m"));
    const point = from === null ? null : ({ kind: "named", path: [from], written: from } as const);
    const { distance: _, ...bare } = dish({ bearing: left(deg(bearing)), height: m(2.3), ...more });
    const at = (metres: number) => ({
      room,
      lights: [{ ...bare, floor_distance: tape(m(metres), point) } as ReturnType<typeof dish>],
    });
    return [at(away.value), at(away.value + 0.02)] as const;
  };

  test("comes in towards the face on that bearing, no further than it must", () => {
    const remedy = said({});
    expect(remedy).toContain("from the face along the floor, at the same height");
    const [there, beyond] = put(remedy, "face", 70);
    expect(findings(rule, there)).toHaveLength(0);
    expect(findings(rule, beyond)).toHaveLength(1);
    const { scene } = planOf(there);
    const face = scene.subjects[0]?.face ?? [0, 0, 0];
    const elevation = elevationOf(face, scene.sources[0]?.centre ?? [0, 0, 0]);
    expect(numberAfter(remedy, "stands at", "deg")).toBe(Math.round(elevation));
  });

  test("or towards the mark, with its bearing from there, where the tape starts elsewhere", () => {
    const aim = at(m(0), m(-0.6), m(1.5));
    const remedy = said({ aim });
    const bearing = Number(/at left\((\d+) deg\)/.exec(remedy)?.[1]);
    expect(bearing).toBeLessThan(65);
    const [there, beyond] = put(remedy, null, bearing, { aim });
    expect(findings(rule, there)).toHaveLength(0);
    expect(findings(rule, beyond)).toHaveLength(1);
  });
});
