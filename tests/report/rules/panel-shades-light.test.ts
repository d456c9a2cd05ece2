import { expect, test } from "vitest";
import { left, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { panelShadesLight as rule } from "../../../src/report/rules/panel-shades-light.rule.js";
import { deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dishOnFloor, finding, findings, numberAfter, setOf } from "../../helpers/plan.js";

/** A flat half-way to a lamp that stands straight in front, 2 m away and 2.2 m high. */
const with_ = (flatHeight: number, lamp = 2.2) => ({
  lights: [dishOnFloor({ bearing: left(deg(0)), height: m(lamp) })],
  set: setOf(
    block("flat", "wing", { size: size(m(1), m(flatHeight)), at: offset({ ahead: m(1) }) }) as never,
  ),
});

test("speaks when the line from lamp to face meets the flat", () => {
  // The line passes y = -1 at 1.5861 + (2.2 - 1.5861) x (1 - 0.0969) / (2 - 0.0969).
  const passes = 1.5861 + ((2.2 - 1.5861) * (1 - 0.0969)) / (2 - 0.0969);
  expect(findings(rule, with_(passes + 0.01))).toHaveLength(1);
  expect(findings(rule, with_(passes - 0.01))).toHaveLength(0);
  expect(finding(rule, with_(2)).severity).toBe("stop");
});

test("the height of its remedy clears the edge, and a little less does not", () => {
  const { remedy } = finding(rule, with_(2));
  const height = numberAfter(remedy, "key to", "m");
  expect(findings(rule, with_(2, height))).toHaveLength(0);
  expect(findings(rule, with_(2, height - 0.03))).toHaveLength(1);
});

test("a lamp that is off is not asked", () => {
  const off = { kind: "off", written: "off" } as const;
  expect(
    findings(rule, { ...with_(2), lights: [dishOnFloor({ bearing: left(deg(0)), power: off })] }),
  ).toEqual([]);
});
