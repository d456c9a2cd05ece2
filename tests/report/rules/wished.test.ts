import { describe, expect, test } from "vitest";
import { belowFull } from "../../../src/model/make/lamps.js";
import { left, named, offset, right } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { backgroundPoints } from "../../../src/report/geometry/background-points.js";
import { litToShadowStops } from "../../../src/report/light/contrast.js";
import { readingAt, stopsOver } from "../../../src/report/light/reading.js";
import { tone } from "../../../src/report/light/tone.js";
import { backgroundSpread } from "../../../src/report/rules/background-spread.js";
import { bgUneven } from "../../../src/report/rules/bg-uneven.rule.js";
import { noDetail } from "../../../src/report/rules/no-detail.rule.js";
import { ratioOff } from "../../../src/report/rules/ratio-off.rule.js";
import { whiteTooDim } from "../../../src/report/rules/white-too-dim.rule.js";
import { whiteTooHot } from "../../../src/report/rules/white-too-hot.rule.js";
import { wrap } from "../../../src/report/rules/wrap.rule.js";
import { deg, m, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, dishOnFloor, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";
import { reflect, roomOf } from "../../helpers/rooms.js";

const room = roomOf(reflect("walls", 50), reflect("ceiling", 70), reflect("floor", 20));

describe("ratio-off", () => {
  const wish = (amount: number, plusMinus: number | null = null) =>
    block("intent", null, { lit_to_shadow: { stops: amount, plusMinus, written: "" } } as never);
  const side = (fill: number | null): Partial<Recipe> => ({
    room,
    lights: [
      dish({ role: "key", bearing: left(deg(60)) }),
      ...(fill === null
        ? []
        : [dish({ role: "fill", bearing: right(deg(50)), power: belowFull(stops(fill)) }, "fill")]),
    ],
  });
  const depth = (parts: Partial<Recipe>): number => litToShadowStops(planOf(parts), "face").stops as number;
  const bare = depth(side(null));

  test("speaks when the cheeks differ from the wish by more than half a stop to either side", () => {
    expect(findings(ratioOff, { ...side(null), intent: wish(bare + 0.49) })).toHaveLength(0);
    expect(findings(ratioOff, { ...side(null), intent: wish(bare - 0.49) })).toHaveLength(0);
    expect(findings(ratioOff, { ...side(null), intent: wish(bare + 0.51) })).toHaveLength(1);
    expect(findings(ratioOff, { ...side(null), intent: wish(bare - 0.51) })).toHaveLength(1);
    expect(findings(ratioOff, { ...side(null), intent: wish(bare - 0.51, 0.6) })).toHaveLength(0);
    expect(findings(ratioOff, side(null))).toHaveLength(0);
  });

  test("turned as it says, the fill meets the wish to a tenth of a stop", () => {
    const wished = { ...side(4), intent: wish(1) };
    const { remedy } = finding(ratioOff, wished);
    const up = numberAfter(remedy, "up by", "stop");
    expect(depth(side(4 - up))).toBeCloseTo(1, 1);
    const { remedy: other } = finding(ratioOff, { ...side(2), intent: wish(2.5) });
    expect(depth(side(2 + numberAfter(other, "down by", "stop")))).toBeCloseTo(2.5, 1);
  });

  test("a white board where it says makes the contrast it says", () => {
    const { remedy } = finding(ratioOff, { ...side(null), intent: wish(bare - 1) });
    const said = Number(/makes it [\d.]+:1 \(([\d.]+) stop\)/.exec(remedy)?.[1]);
    // The same board as a card of the recipe: 60 cm from the cheek along its level direction, on the floor.
    const { scene } = planOf(side(null));
    const cheek = scene.stations.find((row) => row.name === "shaded_cheek");
    if (cheek === undefined) throw new Error("no cheek");
    const level = Math.hypot(cheek.facing[0], cheek.facing[1]);
    const [x, y] = [
      cheek.at[0] + (0.6 * cheek.facing[0]) / level,
      cheek.at[1] + (0.6 * cheek.facing[1]) / level,
    ];
    const card = block("card", "board", {
      size: size(m(1.2), m(2)),
      at: offset({ right: m(x), ahead: m(-y), up: m(1.001) }),
      faces: {
        kind: "point",
        point: offset({ right: m(cheek.at[0]), ahead: m(-cheek.at[1]), up: m(1.001) }),
        written: "",
      },
    } as never);
    const after = depth({ ...side(null), set: setOf(card as never) });
    expect(after).toBeLessThan(bare);
    expect(Math.abs(said - after)).toBeLessThan(0.1);
  });

  test("covered with black as it says, the face has more contrast", () => {
    const { remedy } = finding(ratioOff, { ...side(null), intent: wish(bare + 1.5) });
    const said = Number(/face is then [\d.]+:1 \(([\d.]+) stop\)/.exec(remedy)?.[1]);
    expect(remedy).toMatch(/^Cover the /);
    expect(said).toBeGreaterThan(bare + 0.2);
  });
});

describe("no-detail", () => {
  const dark: Partial<Recipe> = {
    room: roomOf(reflect("walls", 4), reflect("ceiling", 4), reflect("floor", 4)),
    lights: [dish({ role: "key", bearing: left(deg(80)) })],
  };
  const found = litToShadowStops(planOf(dark), "face").stops as number;

  test("speaks when the shaded cheek lies deeper than its threshold, unless that is wished for", () => {
    expect(found).toBeGreaterThan(5);
    expect(finding(noDetail, dark).severity).toBe("note");
    expect(findings(noDetail, { ...dark, ...limit("no_detail", found + 0.01) })).toHaveLength(0);
    expect(findings(noDetail, { ...dark, ...limit("no_detail", found - 0.01) })).toHaveLength(1);
    const intent = block("intent", null, {
      lit_to_shadow: { stops: 6, plusMinus: null, written: "" },
    } as never);
    expect(findings(noDetail, { ...dark, intent })).toHaveLength(0);
    const said = Number(/makes it [\d.]+:1 \(([\d.]+) stop\)/.exec(finding(noDetail, dark).remedy)?.[1]);
    expect(said).toBeLessThan(found - 1);
  });
});

/** A key on the face, and a lamp to either side on a white flat 2 m behind, so many stops under full. */
const white = (down: number, more: Partial<Recipe> = {}, wished = 0.5): Partial<Recipe> => ({
  room,
  intent: block("intent", null, {
    background: {
      stops: stops(wished),
      side: "over",
      of: {
        kind: "reading",
        type: "reading",
        station: "face",
        receptor: "disc",
        towards: named("key"),
        lights: [],
      },
      written: "",
    },
  } as never),
  set: setOf(block("flat", "back", { size: size(m(2.4), m(2.4)), at: offset({ behind: m(2) }) }) as never),
  lights: [
    dish({ role: "key" }),
    ...(["left", "right"] as const).map((hand) =>
      dishOnFloor(
        {
          role: "background",
          bearing: (hand === "left" ? left : right)(deg(110)),
          height: m(1.3),
          aim: named("back", hand),
          power: belowFull(stops(down)),
        },
        hand,
      ),
    ),
  ],
  ...more,
});
const limit = (name: string, value: number) => ({
  thresholds: [{ name, value, unit: "stop", written: "" }],
});
const spread = (parts: Partial<Recipe>) => {
  const found = backgroundSpread(planOf(parts));
  if (found === null) throw new Error("no background");
  return found;
};

describe("a white background", () => {
  const three = spread(white(3));

  test("is metered over the picture against the wish's reading", () => {
    expect(three.station.name).toBe("back");
    const plan = planOf(white(3));
    const [face] = plan.scene.stations;
    const middle = plan.scene.stations.find((row) => row.name === "back");
    if (face === undefined || middle === undefined) throw new Error("no station");
    const level = stopsOver(readingAt(plan, middle), readingAt(plan, face)) as number;
    expect(level).toBeLessThanOrEqual(three.bright.stops + 0.2);
    expect(level).toBeGreaterThanOrEqual(three.dark.stops - 0.2);
    // The background's lamps a stop up, the key the same: the background gains something, and less than a stop.
    const up = spread(white(2));
    expect(up.bright.stops - three.bright.stops).toBeGreaterThan(0.3);
    expect(up.bright.stops - three.bright.stops).toBeLessThan(1);
  });

  test("is too hot above its threshold, and turned down as it says it is not", () => {
    const { bright } = spread(white(0));
    expect(bright.stops).toBeGreaterThan(0.6);
    expect(findings(whiteTooHot, { ...white(0), ...limit("white_most", bright.stops + 0.01) })).toHaveLength(
      0,
    );
    const hot = { ...white(0), ...limit("white_most", bright.stops - 0.01) };
    const { remedy, message } = finding(whiteTooHot, hot);
    expect(numberAfter(message, "is", "stop over")).toBe(Number(bright.stops.toFixed(1)));
    const change = numberAfter(remedy, "down by", "stop");
    expect(spread(white(change)).bright.stops).toBeCloseTo(0.5, 1);
    expect(findings(whiteTooHot, { ...hot, intent: null })).toHaveLength(0);
  });

  test("is too dim where a place lies under its threshold, and turned up as it says it is not", () => {
    const dim = white(5);
    const { dark } = spread(dim);
    expect(dark.stops).toBeLessThan(-0.2);
    const { remedy, message } = finding(whiteTooDim, dim);
    expect(numberAfter(message, "is", "stop under")).toBe(Number((-dark.stops).toFixed(1)));
    expect(numberAfter(message, "tone", "of 255")).toBe(Math.round(tone(0.85 * 2 ** dark.stops)));
    const change = numberAfter(remedy, "up by", "stop");
    expect(spread(white(5 - change)).dark.stops).toBeCloseTo(0, 1);
    expect(findings(whiteTooDim, white(5 - change))).toHaveLength(0);
    expect(findings(whiteTooDim, { ...dim, ...limit("white_least", -dark.stops + 0.1) })).toHaveLength(0);
  });

  // Reflectance .85 to .90: 237 to 243 at an equal reading, 204 to 209 half a stop under, 174 to 179 a stop under
  // (straight arithmetic of IEC 61966-2-1, given so in a teaching paper).
  test.each([
    [0.85, 0, 237],
    [0.9, 0, 243],
    [0.85, -0.5, 204],
    [0.9, -1, 179],
    [0.9, 0.25, 255],
    [0.18, 0, 118],
  ])("of %f at %f stop has the tone %i", (reflectance, level, value) => {
    expect(Math.abs(tone(reflectance * 2 ** level) - value)).toBeLessThan(1.5);
  });

  test("is uneven above its threshold", () => {
    const range = three.bright.stops - three.dark.stops;
    expect(findings(bgUneven, { ...white(3), ...limit("uneven_white", range - 0.01) })[0]?.severity).toBe(
      "check",
    );
    expect(findings(bgUneven, { ...white(3), ...limit("uneven_white", range + 0.01) })).toHaveLength(0);
    const grey = { ...white(3), intent: null };
    expect(findings(bgUneven, { ...grey, ...limit("uneven_grey", range - 0.02) })[0]?.severity).toBe("note");
    expect(findings(bgUneven, { lights: [dish()], room })).toHaveLength(0);
  });
});

describe("places on the background", () => {
  test("lie over the whole piece, or over what the picture shows of it", () => {
    // Five across 2.4 m and four up 2.4 m, each in the middle of its part.
    const plan = planOf({ ...white(3), camera: null });
    const station = plan.scene.stations.find((row) => row.name === "back");
    if (station === undefined) throw new Error("no background");
    const points = backgroundPoints(plan.scene, station);
    const spread_ = (axis: 0 | 2): readonly number[] =>
      [...new Set(points.map(({ meter }) => Number(meter.at[axis].toFixed(6))))].sort((a, b) => a - b);
    expect(spread_(0)).toEqual([-0.96, -0.48, 0, 0.48, 0.96]);
    expect(spread_(2)).toEqual([0.3, 0.9, 1.5, 2.1]);
    const words = points.map(({ meter, where }) =>
      [meter.at[0].toFixed(2), meter.at[2].toFixed(1), where].join(),
    );
    expect(words).toContain("-0.96,2.1,at the upper left");
    expect(words).toContain("0.96,0.3,at the lower right");
    expect(words).toContain("0.00,2.1,at the top");
    expect(words).toContain("0.00,0.9,in the middle");
    const seen = planOf(white(3));
    const shown = backgroundPoints(seen.scene, station);
    expect(shown.length).toBeLessThan(points.length);
    // An upright 85 mm lens 3.5 m before the mark sees 24 / 85 x 5.4 m of it across, less what focus draws in: 1.5 m.
    expect(Math.max(...shown.map(({ meter }) => Math.abs(meter.at[0])))).toBeLessThan(0.76);
  });
});

describe("wrap", () => {
  test("is about the background's lights alone: a rim light is meant to be there", () => {
    const quiet = white(4);
    expect(findings(wrap, quiet)).toHaveLength(0);
    const rim = dish({ role: "rim", bearing: right(deg(150)), power: belowFull(stops(0)) }, "edge");
    expect(findings(wrap, { ...quiet, lights: [...(quiet.lights ?? []), rim] })).toHaveLength(0);
  });

  test("speaks when the background's light on a rear cheek comes nearer to the face than 1.5 stops", () => {
    const hot = finding(wrap, white(0));
    expect(hot.message).toMatch(/rear cheek is \d\.\d stop (over|under) the face/);
    const change = numberAfter(hot.remedy, "down by", "stop");
    expect(findings(wrap, white(change + 0.05))).toHaveLength(0);
    expect(findings(wrap, white(change - 0.15))).toHaveLength(1);
    expect(findings(wrap, { room, lights: [dish()] })).toHaveLength(0);
  });
});
