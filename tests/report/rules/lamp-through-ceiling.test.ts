import { expect, test } from "vitest";
import { tape } from "../../../src/model/make/points.js";
import { elevationOf } from "../../../src/report/geometry/directions.js";
import { lampNearCeiling } from "../../../src/report/rules/lamp-near-ceiling.rule.js";
import { lampThroughCeiling as rule } from "../../../src/report/rules/lamp-through-ceiling.rule.js";
import { cm, m } from "../../../src/units/make.js";
import { dishOnFloor, finding, findings, numberAfter, planOf, room } from "../../helpers/plan.js";

const at = (height: number, more: object = {}) => ({
  room,
  lights: [dishOnFloor({ height: m(height), head_height: cm(40), ...more })],
});

test("speaks when the head's top passes the ceiling, not when it touches it", () => {
  expect(findings(rule, at(2.601))).toHaveLength(1);
  expect(findings(rule, at(2.6))).toHaveLength(0);
  expect(findings(rule, { ...at(2.601), room: null })).toHaveLength(0);
  expect(finding(rule, at(2.8)).severity).toBe("stop");
  expect(finding(rule, at(2.8)).message).toContain("20 cm above");
});

test("its remedy fits, leaves the free space, and names the elevation that is left", () => {
  const { remedy } = finding(rule, at(2.75));
  const height = numberAfter(remedy, "centre to", "m");
  expect(height).toBe(2.35);
  const lowered = at(height);
  expect(findings(rule, lowered)).toHaveLength(0);
  expect(findings(lampNearCeiling, lowered)).toHaveLength(0);
  const { scene } = planOf(lowered);
  const elevation = elevationOf(scene.subjects[0]?.face ?? [0, 0, 0], scene.sources[0]?.centre ?? [0, 0, 0]);
  expect(numberAfter(remedy, "stands at", "deg")).toBe(Math.round(elevation));
});

test("the nearer place it names keeps the elevation", () => {
  const { remedy } = finding(rule, at(2.75));
  const before = numberAfter(remedy, "instead of", "deg");
  const nearer = numberAfter(remedy, "At", "m");
  const { scene } = planOf({
    room,
    lights: [
      dishOnFloor({
        height: m(2.35),
        floor_distance: tape(m(nearer), { kind: "named", path: ["face"], written: "face" }),
      }),
    ],
  });
  const elevation = elevationOf(scene.subjects[0]?.face ?? [0, 0, 0], scene.sources[0]?.centre ?? [0, 0, 0]);
  expect(Math.abs(elevation - before)).toBeLessThan(0.6);
});
