import { expect, test } from "vitest";
import { lampNearCeiling as rule } from "../../../src/report/rules/lamp-near-ceiling.rule.js";
import { cm, m } from "../../../src/units/make.js";
import { dishOnFloor, finding, findings, numberAfter, room } from "../../helpers/plan.js";

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
