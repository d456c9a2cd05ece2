import { describe, expect, test } from "vitest";
import { cosinePower, rectangle } from "../../../src/model/make/lamps.js";
import { left, offset, right, tape } from "../../../src/model/make/points.js";
import { volume } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { headline } from "../../../src/report/headline.js";
import { litToShadowStops } from "../../../src/report/light/contrast.js";
import { topOverFront } from "../../../src/report/light/planes.js";
import { headPastSurface } from "../../../src/report/rules/head-spill.rule.js";
import { notOvercast } from "../../../src/report/rules/not-overcast.rule.js";
import { deg, m, number } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, dishOnFloor, findings, numberAfter, planOf } from "../../helpers/plan.js";
import { reflect, roomOf } from "../../helpers/rooms.js";

const overcast = block("intent", null, { pass_for: { kind: "overcast", written: "overcast" } } as never);
const pale = roomOf(reflect("walls", 60), reflect("ceiling", 85), reflect("floor", 30));
/** A large cloth at camera-left, level with the face or higher. */
const cloth = (bearing: number, height = 1.6): Partial<Recipe> => ({
  intent: overcast,
  room: pale,
  lights: [dish({ shape: rectangle(m(3), m(2.4)), bearing: left(deg(bearing)), height: m(height) })],
});
const said = (parts: Partial<Recipe>, words: string): readonly string[] =>
  findings(notOvercast, parts)
    .map((row) => row.message)
    .filter((message) => message.includes(words));
const limit = (name: string, value: number, unit = "stop") => ({
  thresholds: [{ name, value, unit, written: "" }],
});
/** The head 1.5 m before the subject, turned to the ceiling. */
const up = (fields: object = {}): Partial<Recipe> => ({
  intent: overcast,
  room: pale,
  lights: [
    dishOnFloor({
      into: "ceiling",
      bearing: left(deg(0)),
      height: m(1.9),
      floor_distance: tape(m(1.2)),
      aim: offset({ ahead: m(1.25), up: m(3) }),
      ...fields,
    }),
  ],
});

describe("not-overcast by its sides", () => {
  const side = cloth(80);
  const contrast = litToShadowStops(planOf(side), "face").stops as number;

  test("speaks when the cheeks differ by more than its threshold, bounced light counted", () => {
    expect(said({ ...side, ...limit("overcast_contrast", contrast - 0.01) }, "shaded cheek")).toHaveLength(1);
    expect(said({ ...side, ...limit("overcast_contrast", contrast + 0.01) }, "shaded cheek")).toHaveLength(0);
    const black = { ...side, room: roomOf(reflect("walls", 2), reflect("ceiling", 2), reflect("floor", 2)) };
    expect(litToShadowStops(planOf(black), "face").stops).toBeGreaterThan(contrast + 1);
    expect(said({ ...side, intent: null }, "")).toHaveLength(0);
  });

  test("from the ceiling the cheeks and the planes are as it says", () => {
    const [row] = findings(notOvercast, { ...side, ...limit("overcast_contrast", contrast - 0.01) }).filter(
      ({ message }) => message.includes("shaded cheek"),
    );
    const light = side.lights?.[0] as NonNullable<Recipe["lights"][number]>;
    const after = planOf({ ...side, lights: [{ ...light, into: "ceiling" }] });
    expect(numberAfter(row?.remedy ?? "", "cheeks are then", "stop")).toBe(
      Number(Math.abs(litToShadowStops(after, "face").stops ?? 9).toFixed(1)),
    );
    const top = topOverFront(after, after.scene.subjects[0] as never) ?? 9;
    expect(numberAfter(row?.remedy ?? "", "top of the head is", "stop")).toBe(
      Number(Math.abs(top).toFixed(1)),
    );
    expect(row?.remedy).toContain(top > 0 ? "over the face" : "under the face");
  });
});

describe("not-overcast by its planes", () => {
  test("speaks when the top of the head gets less than the face", () => {
    expect(said(cloth(0), "top of the head")).toHaveLength(1);
    // The same head turned to the ceiling lights it from above.
    expect(said(up(), "top of the head")).toHaveLength(0);
  });

  // A head turned straight up 1.6 m before the subject in a room of 5 x 6 x 3.2 m, 70 / 85 / 30 %: one model's answer
  // from outside is 0.6 stop, good to half a stop.
  test("a bounced ceiling lights the top between a tenth and 1.1 stop more than the front", () => {
    const room = block("room", null, {
      size: volume(m(5), m(6), m(3.2)),
      parts: [reflect("walls", 70), reflect("ceiling", 85), reflect("floor", 30)],
    } as never);
    const aim = offset({ ahead: m(1.6), up: m(3.2) });
    const { lights = [] } = up({ floor_distance: tape(m(1.6)), aim });
    const plan = planOf({ lights, room: room as never });
    const top = topOverFront(plan, plan.scene.subjects[0] as never) ?? -1;
    expect(top).toBeGreaterThan(0.1);
    expect(top).toBeLessThan(1.1);
  });
});

describe("not-overcast with a head that shines into the ceiling", () => {
  test("judges the lit patch, not the head", () => {
    const narrow = up({ beam: cosinePower(number(40)) });
    const [message] = said(narrow, "wide from the face");
    expect(message).toMatch(/^The patch of the ceiling that key lights is \d+ deg wide/);
    const width = numberAfter(message ?? "", "is", "deg");
    expect(width).toBeGreaterThan(10);
    expect(
      said({ ...narrow, ...limit("overcast_size", width + 1, "deg") }, "wide from the face"),
    ).toHaveLength(1);
    expect(
      said({ ...narrow, ...limit("overcast_size", width - 1, "deg") }, "wide from the face"),
    ).toHaveLength(0);
  });

  test("says apart what of the head reaches the face straight", () => {
    expect(said(up(), "reaches the face straight")).toHaveLength(0);
    const low = up({ height: m(0.8), aim: offset({ up: m(3), behind: m(1) }), bearing: right(deg(20)) });
    const [message] = said(low, "reaches the face straight");
    const depth = numberAfter(message ?? "", "shadow", "stop");
    expect(depth).toBeGreaterThan(0.5);
    expect(said({ ...low, ...limit("second_shadow", depth + 0.06) }, "straight")).toHaveLength(0);
    expect(said({ ...low, ...limit("second_shadow", depth - 0.06) }, "straight")).toHaveLength(1);
  });
});

describe("head-spill", () => {
  const plain = (fields: object = {}): Partial<Recipe> => ({ ...up(fields), intent: undefined as never });
  const told = (parts: Partial<Recipe>): readonly string[] =>
    findings(headPastSurface, parts).map((row) => row.message);
  const low = { height: m(0.8), aim: offset({ up: m(3), behind: m(1) }), bearing: right(deg(20)) };

  test("is told without a wish for an overcast sky, by size and depth of the straight light", () => {
    expect(told(plain())).toEqual([]);
    const [message = "", ...more] = told(plain(low));
    expect(more).toEqual([]);
    expect(message).toMatch(/^key reaches the face straight as well, past the ceiling: its head, /);
    const depth = numberAfter(message, "shadow", "stop");
    expect(told({ ...plain(low), ...limit("second_shadow", depth + 0.06) })).toEqual([]);
    expect(told({ ...plain(low), ...limit("second_shadow", depth - 0.06) })).toHaveLength(1);
    // The opening, not the patch, which is more than half a right angle wide.
    const [source] = planOf(plain(low)).scene.sources;
    expect(numberAfter(message, "head,", "deg")).toBeLessThan(25);
    expect(source?.patch?.width).toBeGreaterThan(1);
  });

  test("leaves it to the wish where there is one", () => {
    expect(told(up(low))).toEqual([]);
  });

  test("is in the first sentence", () => {
    expect(headline(planOf(plain(low)), [], [])).toContain("light straight from its head");
    expect(headline(planOf(plain()), [], [])).not.toContain("head;");
  });

  test("a surface that gives nothing back is no light: the head is", () => {
    const dark = planOf({ ...plain(low), room: roomOf(reflect("walls", 60), reflect("ceiling", 0)) });
    expect(dark.scene.sources[0]?.patch).toBeUndefined();
    expect(headline(dark, [], [])).not.toContain("straight from its head");
  });
});
