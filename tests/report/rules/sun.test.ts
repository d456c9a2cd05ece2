import { describe, expect, test } from "vitest";
import { disc, sphere } from "../../../src/model/make/lamps.js";
import { named, offset, tape } from "../../../src/model/make/points.js";
import { size, volume } from "../../../src/model/make/sizes.js";
import { sunlight } from "../../../src/model/make/surroundings.js";
import { elevationOf } from "../../../src/report/geometry/directions.js";
import { elevationChangesDownBody } from "../../../src/report/rules/elevation-changes-down-body.rule.js";
import { fan } from "../../../src/report/rules/fan.rule.js";
import { lowSun } from "../../../src/report/rules/low-sun.rule.js";
import { notSunHard } from "../../../src/report/rules/not-sun-hard.rule.js";
import { twoSuns } from "../../../src/report/rules/two-suns.rule.js";
import { fanOf } from "../../../src/report/thrown/fan.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import {
  bulb,
  dish,
  dishOnFloor,
  finding,
  findings,
  numberAfter,
  planOf,
  room,
  setOf,
  sun,
} from "../../helpers/plan.js";

const from = named("face");
/** A lamp of a height, so far along the floor from below the face. */
const at = (away: number, height: number, more: object = {}) => ({
  intent: sun,
  lights: [dishOnFloor({ floor_distance: tape(m(away), from), height: m(height), ...more })],
});
const face = 1.5861;

describe("low-sun", () => {
  const height = (degrees: number, away: number): number => face + away * Math.tan((degrees * Math.PI) / 180);

  test("speaks below 15 deg, only with a wish for sun that is not itself low", () => {
    expect(findings(lowSun, at(3, height(14.9, 3)))).toHaveLength(1);
    expect(findings(lowSun, at(3, height(15.1, 3)))).toHaveLength(0);
    expect(findings(lowSun, { ...at(3, height(10, 3)), intent: null })).toHaveLength(0);
    const evening = block("intent", null, { pass_for: sunlight(deg(8)) });
    expect(findings(lowSun, { ...at(3, height(10, 3)), intent: evening })).toHaveLength(0);
    expect(finding(lowSun, at(3, height(10, 3))).severity).toBe("note");
  });

  test("the height it names gives the wished elevation", () => {
    const { remedy } = finding(lowSun, at(3, 2));
    const { scene } = planOf(at(3, numberAfter(remedy, "key to", "m")));
    expect(elevationOf([0, -0.0969, face], scene.sources[0]?.centre ?? [0, 0, 0])).toBeCloseTo(30, 0);
  });

  test("under a ceiling it names the nearer place that gives it", () => {
    const { remedy } = finding(lowSun, { ...at(3, 2), room });
    const rise = numberAfter(remedy, "allows", "m");
    const away = numberAfter(remedy, "bring it to", "m");
    expect((Math.atan((rise - face) / away) * 180) / Math.PI).toBeCloseTo(30, 0);
    expect(rise).toBeLessThanOrEqual(2.8 - 0.25 - 0.09);
  });
});

describe("elevation-changes-down-body", () => {
  // Height 3 m: the spread at a floor distance d is atan(3 / d') - atan((3 - 1.5861) / d), d' from the place.
  const spread = (away: number): number => {
    const dx = away * Math.sin((35 * Math.PI) / 180);
    const dy = 0.0969 + away * Math.cos((35 * Math.PI) / 180);
    return ((Math.atan(3 / Math.hypot(dx, dy)) - Math.atan((3 - face) / away)) * 180) / Math.PI;
  };

  test("speaks when face and feet differ by more than 15 deg", () => {
    expect(spread(4.5)).toBeGreaterThan(15);
    expect(spread(6)).toBeLessThan(15);
    expect(findings(elevationChangesDownBody, at(4.5, 3))).toHaveLength(1);
    expect(findings(elevationChangesDownBody, at(6, 3))).toHaveLength(0);
    expect(findings(elevationChangesDownBody, { ...at(4.5, 3), intent: null })).toHaveLength(0);
  });

  /** The same with the lamp where a remedy puts it, or a little nearer along its line of sight. */
  const moved = (remedy: string, parts: ReturnType<typeof at>, share = 1) => {
    const away = numberAfter(remedy, "back to", "m") * share;
    const height = face + (numberAfter(remedy, "from the face,", "m high") - face) * share;
    const [lamp] = parts.lights;
    return {
      ...parts,
      lights: [
        { ...lamp, floor_distance: undefined, distance: tape(m(away), from), height: m(height) } as never,
      ],
    };
  };

  test("its remedy keeps the sun's elevation, is silent, and is no further than needed", () => {
    const { remedy } = finding(elevationChangesDownBody, at(3, 3));
    expect(findings(elevationChangesDownBody, moved(remedy, at(3, 3)))).toHaveLength(0);
    expect(findings(elevationChangesDownBody, moved(remedy, at(3, 3), 0.99))).toHaveLength(1);
    const [source] = planOf(moved(remedy, at(3, 3))).scene.sources;
    // atan((3 - 1.5861) / 3) = 25.24 deg before; a centimetre of height at that distance is 0.14 deg.
    const there = elevationOf([0, -0.0969, face], source?.centre ?? [0, 0, 0]);
    expect(Math.abs(there - 25.24)).toBeLessThan(0.14);
  });

  test("in a room it names no place outside: under a low ceiling it goes back level, in a small one the crop is left", () => {
    const lit = (size: ReturnType<typeof volume>, wish = 15) => ({
      ...at(3, 2.75),
      intent: block("intent", null, { pass_for: sunlight(deg(wish)) }),
      room: block("room", null, { size }),
    });
    // 21.2 deg at the face; along that line the ceiling of 3 m ends the way.
    const low = lit(volume(m(12), m(16), m(3)));
    const { remedy } = finding(elevationChangesDownBody, low);
    expect(numberAfter(remedy, "from the face,", "m high")).toBeCloseTo(2.75, 2);
    expect(findings(elevationChangesDownBody, { ...low, ...moved(remedy, low) })).toHaveLength(0);
    // A stand that ends at 2.90 m ends the way upwards too, and what the lamp cannot give is said.
    const stand = block("stand", null, { highest: m(2.9) });
    const tied = { ...at(3, 2.75, { parts: [stand] }), intent: low.intent };
    const words = finding(elevationChangesDownBody, tied).remedy;
    expect(numberAfter(words, "from the face,", "m high")).toBeCloseTo(2.75, 2);
    // The dish is at half power: one stop is left.
    const more = numberAfter(words, "with", "stop more power");
    expect(numberAfter(words, "which is", "stop more than key has")).toBeCloseTo(more - 1, 0);
    // Level it would leave the elevation of a sun at 25 deg.
    expect(finding(elevationChangesDownBody, lit(volume(m(12), m(16), m(3)), 25)).remedy).toMatch(/^Crop/);
    const small = finding(elevationChangesDownBody, lit(volume(m(6), m(7), m(3))));
    expect(small.remedy).not.toContain("Move");
    const away = numberAfter(small.remedy, "let it,", "m from");
    expect(away * Math.cos((21.2 * Math.PI) / 180)).toBeLessThan(3.5 / Math.cos((35 * Math.PI) / 180));
  });
});

describe("not-sun-hard", () => {
  // A disc of 20 cm is 2.5 deg at 0.1 / tan(1.25 deg) = 4.583 m, square on.
  const away = 0.1 / Math.tan((1.25 * Math.PI) / 180);

  test("speaks above 2.5 deg with a wish for sun", () => {
    const disc20 = (distance: number) => ({ intent: sun, lights: [dish({ distance: tape(m(distance)) })] });
    expect(findings(notSunHard, disc20(away - 0.02))).toHaveLength(1);
    expect(findings(notSunHard, disc20(away + 0.02))).toHaveLength(0);
    expect(findings(notSunHard, { ...disc20(2), intent: null })).toHaveLength(0);
    expect(finding(notSunHard, disc20(2.4)).message).toContain("9 times the sun");
  });

  test("a smaller opening and a longer distance, as it names them, are silent", () => {
    const { remedy } = finding(notSunHard, { intent: sun, lights: [dish()] });
    const smaller = numberAfter(remedy, "opening of", "cm");
    expect(findings(notSunHard, { intent: sun, lights: [dish({ shape: disc(cm(smaller)) })] })).toHaveLength(
      0,
    );
    const further = numberAfter(remedy, "back to", "m");
    expect(further).toBeCloseTo(away, 1);
    // The line of sight goes on, so the lamp rises with the distance.
    const height = numberAfter(remedy, "face,", "m high");
    expect(height).toBeCloseTo(face + ((2.2 - face) * further) / 2.4, 2);
    expect(
      findings(notSunHard, {
        intent: sun,
        lights: [dish({ distance: tape(m(further)), height: m(height) })],
      }),
    ).toHaveLength(0);
    expect(numberAfter(remedy, "with", "stop more")).toBeCloseTo(2 * Math.log2(further / 2.4), 1);
  });

  test("of a head that shines into the ceiling the lit patch is judged", () => {
    const into = { into: "ceiling", height: m(1.8), aim: offset({ ahead: m(1), up: m(2.8) }) };
    const { message, remedy } = finding(notSunHard, { intent: sun, room, lights: [bulb(into)] });
    expect(message).toMatch(/^The patch of the ceiling that key lights is \d\d+ deg wide/);
    expect(remedy).toContain("instead of into the ceiling");
  });

  test("a bare bulb of 8 cm at 5 m is sun-like", () => {
    expect(
      findings(notSunHard, { intent: sun, lights: [bulb({ distance: tape(m(5)), shape: sphere(cm(8)) })] }),
    ).toHaveLength(0);
  });
});

describe("fan", () => {
  const set = setOf(
    block("flat", "back", { size: size(m(3), m(2)), at: offset({ behind: cm(60) }) }) as never,
  );

  test("speaks when shadows spread by more than 25 deg over the set", () => {
    expect(findings(fan, { ...at(3, 2.2), set })).toHaveLength(1);
    expect(findings(fan, { ...at(9, 2.2), set })).toHaveLength(0);
    expect(findings(fan, { ...at(3, 2.2), set, intent: null })).toHaveLength(0);
    expect(findings(fan, at(3, 2.2))).toHaveLength(0);
  });

  test("for a lamp straight before a flat the spread is twice the angle of half its width", () => {
    const straight = { bearing: { side: "left", angle: deg(0), written: "left(0 deg)" } };
    const { message } = finding(fan, { ...at(2.9031, 2.2, straight), set });
    // The lamp is 3 m before the mark, the flat 0.6 m behind it (its front face): 2 atan(1.5 / 3.6).
    expect(numberAfter(message, "spread by", "deg")).toBe(
      Math.round((2 * Math.atan(1.5 / 3.6) * 180) / Math.PI),
    );
  });

  test("the order of the corners does not matter, nor where the widest one stands", () => {
    const places = [
      [-1, 1, 0],
      [2, 1, 0],
      [0, 1, 0],
    ] as const;
    const wide = ((Math.atan(2 / 3) + Math.atan(1 / 3)) * 180) / Math.PI;
    expect(fanOf([0, -2, 2], places, [0, 0, 0])).toBeCloseTo(wide, 9);
    expect(fanOf([0, -2, 2], [...places].reverse(), [0, 0, 0])).toBeCloseTo(wide, 9);
  });

  test("its remedy is silent and no further than needed, and stays in the room", () => {
    const parts = { ...at(3, 2.2), set };
    const there = (remedy: string, share = 1) => ({
      ...parts,
      lights: [
        dish({
          distance: tape(m(numberAfter(remedy, "back to", "m") * share), from),
          height: m(face + (numberAfter(remedy, "from the face,", "m high") - face) * share),
        }),
      ],
    });
    const { remedy } = finding(fan, parts);
    expect(findings(fan, there(remedy))).toHaveLength(0);
    expect(findings(fan, there(remedy, 0.99))).toHaveLength(1);
    const inside = finding(fan, { ...parts, room: block("room", null, { size: volume(m(6), m(8), m(3)) }) });
    expect(inside.remedy).toMatch(/^Show less of the set: as far back as room and stand let it, \d/);
    const open = numberAfter(remedy, "back to", "m");
    expect(numberAfter(inside.remedy, "let it,", "m from")).toBeLessThan(open);
  });
});

describe("two-suns", () => {
  const pair = (down: number, more: object = {}) => ({
    intent: sun,
    lights: [
      dish({ role: "key" }),
      dish(
        {
          power: { kind: "below", stops: { value: 1 + down, unit: "stop", written: "" }, written: "" },
          ...more,
        },
        "b",
      ),
    ],
  });

  test("speaks when the second shadow is deeper than half a stop", () => {
    // From the same place: the second light x of the first; the shadow without it is log2(1 + x) deep.
    const limit = -Math.log2(Math.SQRT2 - 1);
    expect(findings(twoSuns, pair(limit - 0.05))).toHaveLength(1);
    expect(findings(twoSuns, pair(limit + 0.05))).toHaveLength(0);
    expect(findings(twoSuns, { ...pair(0), intent: null })).toHaveLength(0);
    expect(findings(twoSuns, pair(0, { shape: disc(m(2)) }))).toHaveLength(0);
  });

  test("turned down as it says, the second light is silent", () => {
    const { remedy } = finding(twoSuns, pair(0));
    expect(findings(twoSuns, pair(numberAfter(remedy, "down by", "stop")))).toHaveLength(0);
  });
});
