import { expect, test } from "vitest";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Expr } from "../../../src/model/values.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { cm, m, percent } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, planOf, setOf } from "../../helpers/plan.js";

const black = { name: null, reflectance: percent(0), written: "0 %" };
const back = block("flat", "back", {
  size: size(m(6), m(4)),
  at: offset({ behind: cm(60) }),
  reflectance: black,
});
const reading: Expr = {
  kind: "reading",
  type: "reading",
  station: "back",
  receptor: "disc",
  towards: null,
  lights: [],
};
const evenness: Expr = {
  kind: "result",
  type: "stops",
  name: "evenness",
  of: null,
  args: [{ name: "reading", value: reading }],
};

test("evenness of one surface goes over what the picture shows of it, by cosine over square to its corners", () => {
  const plan = planOf({ subjects: [], lights: [bulb()], set: setOf(back) });
  const [source, lens] = [plan.scene.sources[0], plan.scene.camera];
  if (source === undefined || lens === null) throw new Error("no lamp or no camera");
  // A small round bulb gives cos / d^2. By similar triangles the frame on the wall 4.1 m from a level lens is wide
  // 24 mm x 4.1 m / image distance; the lens looks level, so all is upright.
  expect(lens.forward[2]).toBeCloseTo(0, 12);
  const focus = lens.focus === null ? null : lens.focus[1] - lens.at[1];
  const image = focus === null ? 0.085 : (0.085 * focus) / (focus - 0.085);
  const depth = 0.6 - lens.at[1];
  const [w, h] = [(0.98 * 0.012 * depth) / image, (0.98 * 0.018 * depth) / image];
  const light = (x: number, z: number): number => {
    const d = [source.centre[0] - x, source.centre[1] - 0.6, source.centre[2] - z] as const;
    const way = Math.hypot(...d);
    return -d[1] / (way * way * way);
  };
  // The lamp is to the left of the frame and above its middle: the far lower corner gets least, the near edge most.
  const all: number[] = [];
  for (const i of [-2, -1, 0, 1, 2])
    for (const j of [-2, -1, 0, 1, 2]) all.push(light((i / 2) * w, lens.at[2] + (j / 2) * h));
  const found = evaluate({ plan, alarms: 0 }, evenness);
  expect(found.reason).toBeNull();
  expect(found.value).toBeCloseTo(Math.log2(Math.max(...all) / Math.min(...all)), 2);
});

test("a shadow without any light on it has no evenness, and says so", () => {
  const plan = planOf({ lights: [bulb()], set: setOf(back) });
  const found = evaluate({ plan, alarms: 0 }, evenness);
  expect([found.value, found.reason]).toEqual([null, "a part of back gets no light, straight or bounced"]);
});
