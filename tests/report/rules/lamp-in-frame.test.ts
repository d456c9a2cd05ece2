import { expect, test } from "vitest";
import { at, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { lampInFrame as rule } from "../../../src/report/rules/lamp-in-frame.rule.js";
import { m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, dish, finding, findings, setOf } from "../../helpers/plan.js";

/** A bare bulb 1.5 m behind the mark, 1.3 m up, so far to the right. */
const behind = (right: number, more: object = {}) => ({
  lights: [
    dish(),
    bulb({ position: at(m(right), m(1.5), m(1.3)), distance: undefined, ...more } as never, "rim"),
  ],
});

// The frame is 24 mm wide at the image distance f s / (s - f) for the face 3.4031 m away; the bulb is 5 m away.
const image = (0.085 * 3.4031) / (3.4031 - 0.085);
const edge = (0.012 / image) * 5 * 1.04;

test("speaks when the bulb's near end is within 2 % of the frame", () => {
  expect(findings(rule, behind(edge + 0.04 - 0.005))).toHaveLength(1);
  expect(findings(rule, behind(edge + 0.04 + 0.005))).toHaveLength(0);
  expect(finding(rule, behind(0)).severity).toBe("stop");
});

test("is silent for a lamp behind a flat, one that is meant to be seen, and one before the lens", () => {
  const set = setOf(
    block("flat", "back", { size: size(m(1.5), m(2)), at: offset({ behind: m(1) }) }) as never,
  );
  expect(findings(rule, { ...behind(0), set })).toHaveLength(0);
  expect(findings(rule, behind(0, { role: "practical" }))).toHaveLength(0);
  expect(findings(rule)).toHaveLength(0);
});
