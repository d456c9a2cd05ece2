import { describe, expect, test } from "vitest";
import { at, offset, right, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { lampInFrame as rule } from "../../../src/report/rules/lamp-in-frame.rule.js";
import { deg, m } from "../../../src/units/make.js";
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
  expect(finding(rule, behind(0.5)).severity).toBe("stop");
});

test("is silent for a lamp behind a person or a flat, one that is meant to be seen, and one before the lens", () => {
  expect(findings(rule, behind(0))).toHaveLength(0);
  const set = setOf(
    block("flat", "back", { size: size(m(1.5), m(2)), at: offset({ behind: m(1) }) }) as never,
  );
  expect(findings(rule, { ...behind(0.5), set })).toHaveLength(0);
  expect(findings(rule, behind(0.5, { role: "practical" }))).toHaveLength(0);
  expect(findings(rule)).toHaveLength(0);
});

describe("stands and booms", () => {
  const stand = block("stand", null, { ...({ highest: m(3) } as object) } as never);
  /** A lamp behind at camera-right, high above the picture, on a stand. */
  const rim = (away: number, degrees: number) => ({
    lights: [
      dish(),
      dish(
        {
          distance: undefined,
          floor_distance: tape(m(away)),
          bearing: right(deg(degrees)),
          height: m(2.7),
          parts: [stand],
        } as never,
        "rim",
      ),
    ],
  });

  test("the stand of a lamp above the picture is told", () => {
    // At 168 deg and 1.5 m it is 31 cm to the right and 1.47 m behind: the picture is 69 cm wide to that side there.
    expect(finding(rule, rim(1.5, 168)).message).toBe("The stand of rim is in the picture.");
    expect(findings(rule, rim(1.5, 120))).toHaveLength(0);
  });

  test("the bearing it names is the first that is silent", () => {
    const { remedy } = finding(rule, rim(1.5, 168));
    const found = Number(/right\((\d+) deg\)/.exec(remedy)?.[1]);
    expect(findings(rule, rim(1.5, found))).toHaveLength(0);
    expect(findings(rule, rim(1.5, found + 1))).toHaveLength(1);
  });
});
