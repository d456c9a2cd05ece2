import { describe, expect, test } from "vitest";
import { disc } from "../../../src/model/make/lamps.js";
import { tape } from "../../../src/model/make/points.js";
import { elevationOf } from "../../../src/report/geometry/directions.js";
import { lampNearCeiling as rule } from "../../../src/report/rules/lamp-near-ceiling.rule.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { dish, dishOnFloor, finding, findings, numberAfter, planOf, room } from "../../helpers/plan.js";

const at = (height: number, lamp: "hot" | "cool" = "cool") => ({
  room,
  lights: [dishOnFloor({ height: m(height), head_height: cm(40), modelling_lamp: lamp })],
});

test("speaks within 25 cm of the ceiling, 50 cm with a hot lamp, and not through it", () => {
  expect(findings(rule, at(2.36))).toHaveLength(1);
  expect(findings(rule, at(2.34))).toHaveLength(0);
  expect(findings(rule, at(2.11, "hot"))).toHaveLength(1);
  expect(findings(rule, at(2.09, "hot"))).toHaveLength(0);
  expect(findings(rule, at(2.7))).toHaveLength(0);
  expect(finding(rule, at(2.4)).severity).toBe("check");
});

test("the height of its remedy is silent", () => {
  const { remedy } = finding(rule, at(2.5, "hot"));
  expect(findings(rule, at(numberAfter(remedy, "centre to", "m"), "hot"))).toHaveLength(0);
});

test("a recipe's own threshold counts", () => {
  const thresholds = [{ name: "ceiling_clearance", value: 0.1, unit: "m", written: "10 cm" }];
  expect(findings(rule, { ...at(2.36), thresholds })).toHaveLength(0);
  expect(findings(rule, { ...at(2.51), thresholds })).toHaveLength(1);
});

describe("a wide head that stands steeper the lower it comes", () => {
  const { height: _, ...wide } = dish({ shape: disc(cm(60)), distance: tape(m(1.7)), elevation: deg(32) });
  const inRoom = (light: object) => ({ room, lights: [light as ReturnType<typeof dish>] });
  const said = finding(rule, inRoom(wide)).remedy;
  const { elevation: __, ...bare } = wide;

  test("is clear at the height of the remedy, written on its slanting tape, and not 2 cm above", () => {
    const height = numberAfter(said, "centre to", "m");
    const at = (metres: number) => findings(rule, inRoom({ ...bare, height: m(metres) }));
    expect(at(height)).toHaveLength(0);
    expect(at(height + 0.02)).toHaveLength(1);
  });

  test("and straight below where it hung, by the floor tape", () => {
    const lamp = planOf(inRoom(wide)).scene.sources[0]?.centre ?? [0, 0, 0];
    const face = planOf(inRoom(wide)).scene.subjects[0]?.face ?? [0, 0, 0];
    const level = Math.hypot(lamp[0] - face[0], lamp[1] - face[1]);
    const { distance: ___, ...floor } = bare;
    const fromFace = tape(m(level), { kind: "named", path: ["face"], written: "face" });
    const height = m(numberAfter(said, "centre to", "m"));
    const lowered = inRoom({ ...floor, floor_distance: fromFace, height });
    expect(findings(rule, lowered)).toHaveLength(0);
    const after = planOf(lowered).scene.sources[0]?.centre ?? [0, 0, 0];
    expect(numberAfter(said, "stands at", "deg")).toBe(Math.round(elevationOf(face, after)));
  });

  test("and at the floor distance that keeps its elevation", () => {
    const { distance: ___, ...floor } = wide;
    const away = m(numberAfter(said, "At", "m"));
    const fromFace = tape(away, { kind: "named", path: ["face"], written: "face" });
    expect(findings(rule, inRoom({ ...floor, floor_distance: fromFace }))).toHaveLength(0);
  });
});
