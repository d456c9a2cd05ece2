import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { capsule, disc, off, rectangle, sphere } from "../../src/model/make/lamps.js";
import { left, named, offset, right, tape } from "../../src/model/make/points.js";
import type { Recipe } from "../../src/model/types.js";
import { assertPlain } from "../../src/report/assert-plain.js";
import { buildReport } from "../../src/report/build.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { cm, deg, lx, m, mm, shutterOneOver } from "../../src/units/make.js";
import { block } from "../helpers/models.js";
import { bulb, camera, dish, flat, person, planOf, room, setOf, sun } from "../helpers/plan.js";

const reportOf = (parts: Partial<Recipe> = {}) => {
  const { recipe, scene } = planOf(parts);
  return buildReport(recipe, scene);
};

describe("the headline", () => {
  test("says light, reading and findings", () => {
    expect(reportOf().headline).toBe(
      "Medium-hard light from camera-left at 15 deg; the face reads f/8 +0.5 at ISO 200, 0.4 stop over the set aperture; 1 note.",
    );
  });

  test("says what is missing in plain words", () => {
    expect(reportOf({ subjects: [] }).headline).toContain("There is no");
    expect(reportOf({ lights: [dish({ power: off })] }).headline).toContain("No light is on");
    expect(reportOf({ camera: null }).headline).toMatch(/the face gets \d+ lx s/);
    expect(reportOf({ lights: [bulb({ bearing: left(deg(0)), height: m(3.9) })] }).headline).toMatch(
      /at 7\d deg/,
    );
  });

  test("counts expectations that are not met", () => {
    const expectation = {
      written: "expect key.height > 3 m",
      surely: false,
      claims: [
        {
          kind: "compare",
          sign: ">",
          value: { kind: "result", type: "length", name: "height", of: "key", args: [] },
          target: { kind: "value", type: "length", quantity: m(3) },
        },
      ],
      because: "the window is high",
    } as const;
    const report = reportOf({ expectations: [expectation] });
    expect(report.headline).toContain("1 of 1 expectations not met");
    expect(report.expectations[0]).toEqual({
      text: "expect key.height > 3 m",
      outcome: "failed",
      found: "2.20 m",
      value: 2.2,
      unit: "m",
      shares: [],
      reason: null,
      nearest: {
        text: "key.height 3.01 m",
        changes: [{ what: "key.height", value: 3.01, unit: "m", shown: "3.01 m" }],
      },
      nearest_reason: null,
      because: "the window is high",
      line: null,
    });
  });
});

describe("what matters most", () => {
  test("is the input whose tolerance moves key reading or elevation most", () => {
    // Height 3 cm at 2.4 m: d(elevation) = 0.03 / 2.4 / cos(14.8 deg) = 0.74 deg; the tape's 2 cm only 0.13 deg.
    expect(reportOf().matters_most).toBe("key height: 3 cm is 0.7 deg of elevation");
  });

  test("follows the recipe's own tolerances and a +- of its own", () => {
    const tolerances = [{ name: "height", value: 0.001, unit: "m", written: "1 mm" }];
    expect(reportOf({ tolerances }).matters_most).toMatch(/^key distance: 2 cm is/);
    const spread = { value: 0.2, unit: "m", written: "20 cm" } as const;
    const lamp = dish({ height: { ...m(2.2), plusMinus: spread } });
    // On a tape of 2.4 m from a face at 1.586 m: asin(0.814 / 2.4) - asin(0.614 / 2.4) = 5.0 deg.
    expect(reportOf({ lights: [lamp] }).matters_most).toMatch(/^key height: 20 cm is 5\.0 deg/);
  });
});

describe("numbers of a report", () => {
  const report = reportOf({ room: block("room", null, { ...room, ambient: lx(100) }) });

  test("what comes straight and what bounces make the total, and a room throws light back", () => {
    for (const { exposure } of report.stations) {
      expect(exposure.total).toBeCloseTo(exposure.direct + (exposure.bounced ?? 0), 9);
      expect(exposure.bounced).toBeGreaterThan(0);
      expect(exposure.error).toBeLessThan(0.1);
    }
  });

  test("every f-number is sqrt(H S / C), every total the sum of its lights", () => {
    for (const row of report.stations) {
      const c = row.receptor === "disc" ? 250 : 340;
      expect(row.f_number).toBeCloseTo(Math.sqrt((row.exposure.total * 200) / c), 9);
      expect(row.exposure.total).toBeCloseTo(
        row.exposure.lights.reduce((sum, light) => sum + light.direct + (light.bounced ?? 0), 0),
        9,
      );
      expect(row.ambient).toBeCloseTo(100 / 128, 12);
      expect(row.ambient_adds).toBeCloseTo(
        Math.log2((row.exposure.total + 100 / 128) / row.exposure.total),
        12,
      );
    }
  });

  test("a shadow falls away from its lamp", () => {
    // The lamp stands to camera-left in front, so the shadow runs back to camera-right.
    const light = report.lights[0];
    const [x = 0, y = 0] = light?.position ?? [];
    expect(light?.shadow.direction).toBeCloseTo((Math.atan2(-x, -y) * 180) / Math.PI, 9);
    expect(light?.shadow.direction).toBeGreaterThan(30);
    expect(light?.shadow.length).toBeCloseTo((Math.hypot(x, y) * 1.7) / 0.5, 9);
  });

  test("a station without light has null and a reason, not infinity", () => {
    const dark = reportOf({ lights: [dish({ bearing: left(deg(90)) })] });
    const shade = dark.stations.find((row) => row.name === "shaded_cheek");
    expect(shade).toMatchObject({ f_number: null, shown: null, stops_from_aperture: null });
    expect(shade?.reason).toContain("gets no light, straight or bounced");
    const contrast = dark.results.find((row) => row.name === "lit_to_shadow");
    expect(contrast).toMatchObject({ value: null, shown: "not known" });
  });

  test("uncertain output gives an interval of as many stops to either side, sizes and tapes one of angles", () => {
    const light = report.lights[0];
    const [low, high] = light?.intervals.energy ?? [0, 0];
    expect(Math.log2(high / low)).toBeCloseTo(0.6, 12);
    const [near, far] = light?.intervals.angular_size ?? [0, 0];
    // A disc of 20 cm within 2 %, 2.4 m away within 2 cm: both together as squares.
    const angle = (d: number, r: number): number => (2 * Math.atan(r / d) * 180) / Math.PI;
    const as = angle(2.4, 0.1);
    const less = Math.hypot(as - angle(2.42, 0.1), as - angle(2.4, 0.098));
    const more = Math.hypot(angle(2.38, 0.1) - as, angle(2.4, 0.102) - as);
    expect([near, far]).toEqual([expect.closeTo(as - less, 9), expect.closeTo(as + more, 9)]);
  });

  test("turning the sensor's ISO by a stop moves every f-number by a stop and nothing else of the light", () => {
    const iso = (value: number) =>
      reportOf({
        camera: block("camera", null, { ...camera, sensitivity: { value, unit: "ISO", written: "" } }),
      });
    const a = iso(200);
    const b = iso(400);
    a.stations.forEach((row, i) => {
      expect((b.stations[i]?.f_number ?? 0) / (row.f_number ?? 1)).toBeCloseTo(Math.SQRT2, 12);
    });
    expect(b.lights).toEqual(a.lights);
  });
});

describe("any recipe", () => {
  const metres = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
  const shapes = [disc(cm(10)), rectangle(m(0.3), m(1.2)), sphere(cm(8)), capsule(cm(12), cm(2))];
  const lamp = fc
    .record({
      away: metres(0.05, 20),
      height: metres(0, 6),
      turn: metres(0, 180),
      shape: fc.constantFrom(...shapes),
      on: fc.boolean(),
      side: fc.boolean(),
    })
    .map(({ away, height, turn, shape, on, side }) =>
      dish({
        shape,
        distance: undefined,
        floor_distance: tape(m(away)),
        height: m(height),
        bearing: side ? left(deg(turn)) : right(deg(turn)),
        ...(on ? {} : { power: off }),
      } as never),
    );
  const parts = fc.record({
    lights: fc.array(lamp, { maxLength: 3 }).map((rows) => rows.map((row, i) => ({ ...row, name: `l${i}` }))),
    subjects: fc.constantFrom(
      [],
      [person],
      [
        block("subject", "ana", { height: m(1.8), pose: "seated" }),
        block("subject", "ben", { at: offset({ right: m(1) }), reach: m(0.5) }),
      ],
    ),
    camera: fc.constantFrom(
      null,
      camera,
      block("camera", null, {
        ...camera,
        shutter: shutterOneOver(1000),
        sync: shutterOneOver(200),
        focal_length: mm(24),
        distance: tape(m(0.3)),
      }),
    ),
    room: fc.constantFrom(null, room),
    set: fc.constantFrom(null, setOf(flat as never)),
    intent: fc.constantFrom(null, sun, block("intent", null, { edges: "soft" })),
  });

  test("makes a report that is valid against the schema, finite, and the same each time", () => {
    fc.assert(
      fc.property(parts, (given) => {
        const report = reportOf(given as Partial<Recipe>);
        expect(reportSchema.safeParse(report).error).toBeUndefined();
        const text = JSON.stringify(report);
        expect(JSON.stringify(reportOf(given as Partial<Recipe>))).toBe(text);
        expect(text).not.toMatch(/NaN|Infinity|-0[,\]}]|undefined|\bnull (m|deg)\b/);
        for (const row of report.warnings) {
          expect(row.message).toMatch(/^\S.*\.$/);
          expect(row.remedy).toMatch(/^[A-Z\p{L}].*\.$/u);
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe("plain values", () => {
  test("NaN, infinity and what is no JSON are our own mistakes", () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, undefined, () => 0]) {
      expect(() => assertPlain({ a: [bad] })).toThrow(/report\.a\[0\]/);
    }
    expect(() => assertPlain({ a: [1, "x", null, true] })).not.toThrow();
  });
});

test("names of lights are values, never keys", () => {
  const nasty = reportOf({ lights: [dish({ aim: named("face") }, "__proto__"), dish({}, "constructor")] });
  expect(nasty.lights.map((row) => row.name)).toEqual(["__proto__", "constructor"]);
  expect(reportSchema.safeParse(nasty).success).toBe(true);
});
