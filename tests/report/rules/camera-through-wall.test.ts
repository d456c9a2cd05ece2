import { expect, test } from "vitest";
import { tape } from "../../../src/model/make/points.js";
import { cameraThroughWall as rule } from "../../../src/report/rules/camera-through-wall.rule.js";
import { m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, finding, findings, numberAfter, room } from "../../helpers/plan.js";

/** The front wall is 3.5 m from the mark. */
const at = (away: number) => ({
  room,
  camera: block("camera", null, { ...camera, distance: tape(m(away)) }),
});

test("speaks when less than 70 cm are left behind the lens", () => {
  expect(findings(rule, at(2.81))).toHaveLength(1);
  expect(findings(rule, at(2.8))).toHaveLength(0);
  expect(finding(rule, at(3.7)).message).toContain("20 cm beyond the front wall");
});

test("its remedy is silent and keeps the frame by the rule of like triangles", () => {
  const { remedy } = finding(rule, at(3.4));
  const there = numberAfter(remedy, "lens at", "m");
  expect(findings(rule, at(there))).toHaveLength(0);
  expect(numberAfter(remedy, "with", "mm")).toBe(Math.floor((85 * there) / 3.4));
});
