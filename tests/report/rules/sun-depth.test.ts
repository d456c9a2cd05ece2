import { describe, expect, test } from "vitest";
import { belowFull } from "../../../src/model/make/lamps.js";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { setShadow } from "../../../src/report/light/shadow-depth.js";
import { sunFlat } from "../../../src/report/rules/sun-flat.rule.js";
import { sunHarsh } from "../../../src/report/rules/sun-harsh.rule.js";
import { twoSuns } from "../../../src/report/rules/two-suns.rule.js";
import { m, percent, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { bulb, dish, finding, findings, numberAfter, planOf, setOf, sun } from "../../helpers/plan.js";
import { reflect, reflectWall, roomOf } from "../../helpers/rooms.js";

const back = (behind = 0.8) =>
  block("flat", "back", { size: size(m(2), m(2.2)), at: offset({ behind: m(behind) }) });
/** A bare bulb before a white flat, in a room of these reflectances in per cent. */
const shot = (
  walls: number,
  ceiling: number,
  floor: number,
  more: Partial<Recipe> = {},
): Partial<Recipe> => ({
  intent: sun,
  lights: [bulb()],
  set: setOf(back() as never),
  room: roomOf(reflect("walls", walls), reflect("ceiling", ceiling), reflect("floor", floor)),
  ...more,
});
const limit = (name: string, value: number) => ({
  thresholds: [{ name, value, unit: "stop", written: `${value} stop` }],
});
const depthOf = (parts: Partial<Recipe>): number => {
  const found = setShadow(planOf(parts), "key");
  if (found === null) throw new Error("no shadow");
  return found.stops;
};

describe("the depth of a shadow on the set", () => {
  // Two lights from one place, the second x stops under the first, nothing bounced: where one is missing the other
  // is left, so the shadow is log2(1 + 2^x) deep whatever the surface.
  test.each([0, 1, 2.5])("of one of two lights %f stops apart from one place", (apart) => {
    const pair = { lights: [dish(), dish({ power: belowFull(stops(1 + apart)) }, "b")] };
    const black = { ...pair, set: setOf(back() as never), subjects: [] };
    const plan = planOf({
      ...black,
      room: roomOf(reflect("walls", 0), reflect("ceiling", 0), reflect("floor", 0)),
    });
    const { polygons } = plan.scene;
    expect(polygons.some((row) => row.name === "back")).toBe(true);
    const found = setShadow(plan, "key");
    // The flat and the floor bounce a little on each other.
    expect(found?.stops).toBeLessThanOrEqual(Math.log2(1 + 2 ** apart) + 1e-9);
    expect(found?.stops).toBeGreaterThan(Math.log2(1 + 2 ** apart) - 0.1);
  });

  test("is shallower the lighter the room", () => {
    const [dark, grey, white] = [shot(8, 8, 8), shot(50, 80, 25), shot(80, 85, 35)].map(depthOf);
    expect(dark).toBeGreaterThan(grey as number);
    expect(grey).toBeGreaterThan(white as number);
  });
});

describe("sun-flat", () => {
  const grey = shot(50, 80, 25);
  const depth = depthOf(grey);

  test("speaks when the shadow on the set is shallower than its threshold", () => {
    expect(depth).toBeLessThan(2);
    expect(finding(sunFlat, grey).severity).toBe("check");
    expect(findings(sunFlat, { ...grey, ...limit("sun_shadow_least", depth + 0.01) })).toHaveLength(1);
    expect(findings(sunFlat, { ...grey, ...limit("sun_shadow_least", depth - 0.01) })).toHaveLength(0);
    expect(findings(sunFlat, { ...grey, intent: null })).toHaveLength(0);
    expect(numberAfter(finding(sunFlat, grey).message, "only", "stop")).toBeCloseTo(depth, 1);
  });

  test("covered with black as it says, the room gives the depth it says", () => {
    const { remedy } = finding(sunFlat, grey);
    const covered = /^Cover (.*) with black/.exec(remedy)?.[1]?.split(/, | and /) ?? [];
    expect(covered.length).toBeGreaterThan(0);
    const share = (name: string, plain: number): number => (covered.includes(`the ${name}`) ? 5 : plain);
    const sides = ["left", "right", "back", "front"] as const;
    const room = roomOf(
      reflect("walls", 50),
      reflect("ceiling", share("ceiling", 80)),
      reflect("floor", share("floor", 25)),
      ...sides.map((side) => reflectWall(side, share(`${side} wall`, 50))),
    );
    const after = depthOf({ ...grey, room });
    expect(numberAfter(remedy, "shadow is then", "stop")).toBe(Number(after.toFixed(1)));
    expect(after).toBeGreaterThan(depth);
  });

  test("the contrast it names makes the depth that is wanted", () => {
    const slope = /contrast (\d+\.\d) times/.exec(finding(sunFlat, grey).remedy)?.[1];
    expect(Number(slope)).toBe(Number((2.7 / depth).toFixed(1)));
  });
});

describe("sun-harsh", () => {
  const dark = shot(3, 3, 3, {
    subjects: [block("subject", null, { height: m(1.7), skin: percent(5) })] as never,
  });
  const depth = depthOf(dark);

  test("speaks when the shadow is deeper than its threshold, unless a contrast is wished for", () => {
    expect(findings(sunHarsh, { ...dark, ...limit("sun_shadow_most", depth - 0.01) })).toHaveLength(1);
    expect(findings(sunHarsh, { ...dark, ...limit("sun_shadow_most", depth + 0.01) })).toHaveLength(0);
    expect(findings(sunHarsh, { ...dark, intent: null })).toHaveLength(0);
    const wished = { ...sun, lit_to_shadow: { stops: 4, written: "16:1" } };
    expect(
      findings(sunHarsh, { ...dark, intent: wished as never, ...limit("sun_shadow_most", depth - 0.01) }),
    ).toHaveLength(0);
  });

  test("with white walls the shadow is as deep as it says", () => {
    const { remedy } = finding(sunHarsh, { ...dark, ...limit("sun_shadow_most", depth - 0.01) });
    expect(numberAfter(remedy, "would be", "stop")).toBe(
      Number(
        depthOf({
          ...dark,
          room: roomOf(reflect("walls", 85), reflect("ceiling", 3), reflect("floor", 3)),
        }).toFixed(1),
      ),
    );
  });
});

describe("two-suns on the set", () => {
  test("light that the room gives back fills the second shadow", () => {
    const pair = (room: Recipe["room"]): Partial<Recipe> => ({
      intent: sun,
      lights: [bulb({ role: "key" } as never), bulb({ power: belowFull(stops(1.8)) }, "b")],
      set: setOf(back() as never),
      room,
    });
    const dark = pair(roomOf(reflect("walls", 5), reflect("ceiling", 5), reflect("floor", 5)));
    const white = pair(roomOf(reflect("walls", 85), reflect("ceiling", 85), reflect("floor", 50)));
    expect(findings(twoSuns, dark)).toHaveLength(1);
    expect(findings(twoSuns, white)).toHaveLength(0);
    const { remedy } = finding(twoSuns, dark);
    const down = numberAfter(remedy, "down by", "stop");
    const turned = {
      ...dark,
      lights: [bulb({ role: "key" } as never), bulb({ power: belowFull(stops(1.8 + down)) }, "b")],
    };
    expect(findings(twoSuns, turned)).toHaveLength(0);
    const less = {
      ...dark,
      lights: [bulb({ role: "key" } as never), bulb({ power: belowFull(stops(1.7 + down)) }, "b")],
    };
    expect(findings(twoSuns, less)).toHaveLength(1);
  });

  test("what it says to turn down is no more than needed, where the light itself fills its shadow", () => {
    const pair = (down: number): Partial<Recipe> => ({
      intent: sun,
      lights: [bulb({ role: "key" } as never), bulb({ power: belowFull(stops(down)) }, "b")],
      set: setOf(back() as never),
      room: roomOf(reflect("walls", 50), reflect("ceiling", 70), reflect("floor", 20)),
      ...limit("second_shadow", 0.25),
    });
    const down = numberAfter(finding(twoSuns, pair(1)).remedy, "down by", "stop");
    expect(down).toBeGreaterThan(0.2);
    expect(findings(twoSuns, pair(1 + down))).toHaveLength(0);
    expect(findings(twoSuns, pair(1 + down - 0.12))).toHaveLength(1);
  });
});
