import { expect, test } from "vitest";
import { elevationOf } from "../../../src/report/geometry/directions.js";
import { standTooShort as rule } from "../../../src/report/rules/stand-too-short.rule.js";
import { m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dishOnFloor, finding, findings, numberAfter, planOf } from "../../helpers/plan.js";

const on = (highest: number, height: number, more: object = {}) => ({
  lights: [
    dishOnFloor({
      height: m(height),
      parts: [block("stand", null, { highest: m(highest), ...more })],
    } as never),
  ],
});

test("speaks when the lamp is higher than the stand less 5 cm", () => {
  expect(findings(rule, on(2.4, 2.36))).toHaveLength(1);
  expect(findings(rule, on(2.4, 2.35))).toHaveLength(0);
  expect(findings(rule, on(2.4, 2.36, { boom: m(1) }))).toHaveLength(0);
  expect(finding(rule, on(2.4, 2.6)).severity).toBe("stop");
});

test("both ways of its remedy are silent, and the elevation is that of the lower lamp", () => {
  const { remedy } = finding(rule, on(2.4, 2.6));
  expect(findings(rule, on(numberAfter(remedy, "at least", "m"), 2.6))).toHaveLength(0);
  const lower = on(2.4, numberAfter(remedy, "lamp to", "m"));
  expect(findings(rule, lower)).toHaveLength(0);
  const { scene } = planOf(lower);
  const elevation = elevationOf(scene.subjects[0]?.face ?? [0, 0, 0], scene.sources[0]?.centre ?? [0, 0, 0]);
  expect(numberAfter(remedy, "stands at", "deg")).toBe(Math.round(elevation));
});
