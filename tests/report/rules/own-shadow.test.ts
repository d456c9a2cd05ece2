import { expect, test } from "vitest";
import { at } from "../../../src/model/make/points.js";
import { ownShadow as rule } from "../../../src/report/rules/own-shadow.rule.js";
import { m } from "../../../src/units/make.js";
import { dish, finding, findings, numberAfter } from "../../helpers/plan.js";

/** A lamp so far to the side and so high, 6 m before the mark; the camera is 3.5 m before it, its lens 1.3 m high. */
const behind = (right: number, height: number) => ({
  lights: [
    dish({
      distance: undefined,
      bearing: undefined,
      height: undefined,
      position: at(m(right), m(-6), m(height)),
    } as never),
  ],
});

// The one who takes the picture is a post of 25 cm radius 3.85 m before the mark, up to 1.42 m. The line from the lamp
// to the face, at -0.097 m and 1.586 m, passes the post's axis at the share (6 - 3.85) / (6 - 0.097) of its way.
const share = (6 - 3.85) / (6 - 0.0969);

test("speaks for a lamp behind the camera that one stands before", () => {
  // Beside the axis the line passes at (1 - share) x right; it is free from 25 cm on, the line all but square to it.
  const free = 0.25 / (1 - share);
  expect(findings(rule, behind(free - 0.02, 0.8))).toHaveLength(1);
  expect(findings(rule, behind(free + 0.03, 0.8))).toHaveLength(0);
  expect(finding(rule, behind(0, 1.2)).message).toContain("face");
});

test("a lamp that shines over the head is free, one to the side and one before the camera too", () => {
  expect(findings(rule, behind(0, 2.9))).toHaveLength(0);
  expect(findings(rule, behind(3, 1.2))).toHaveLength(0);
  expect(findings(rule)).toHaveLength(0);
});

test("both ways out that it names are silent", () => {
  const { remedy } = finding(rule, behind(0, 1.4));
  const height = numberAfter(remedy, "cm to", "m");
  expect(findings(rule, behind(0, height))).toHaveLength(0);
  expect(findings(rule, behind(0, height - 0.06))).toHaveLength(1);
  const turn = (numberAfter(remedy, "light to", "deg") * Math.PI) / 180;
  const turned = {
    lights: [
      dish({
        distance: undefined,
        bearing: undefined,
        height: undefined,
        position: at(m(6 * Math.sin(turn)), m(-6 * Math.cos(turn)), m(1.4)),
      } as never),
    ],
  };
  expect(findings(rule, turned)).toHaveLength(0);
});
