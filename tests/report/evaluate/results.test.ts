import { describe, expect, test } from "vitest";
import { cosinePower, disc, rectangle } from "../../../src/model/make/lamps.js";
import { left, named, right, tape } from "../../../src/model/make/points.js";
import type { Expr, ResultType } from "../../../src/model/values.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { reportValue, show, unitOf } from "../../../src/report/evaluate/show.js";
import { deg, m, number, stops } from "../../../src/units/make.js";
import { results } from "../../../src/vocabulary/results.js";
import { block } from "../../helpers/models.js";
import { bulb, dish, planOf } from "../../helpers/plan.js";

type Args = Extract<Expr, { kind: "result" }>["args"];
const plan = planOf();
const found = (type: ResultType, name: string, of: string | null, args: Args = [], there = plan) =>
  evaluate({ plan: there, alarms: 0 }, { kind: "result", type, name, of, args });
const point = (name: string) => named(...name.split("."));
const length = (metres: number): Expr => ({ kind: "value", type: "length", quantity: m(metres) });

describe("results of a light", () => {
  test("sizes of a rectangle: mid-lines and diagonal", () => {
    const straight = { bearing: left(deg(0)), height: m(1.5861), distance: tape(m(2)) };
    const box = planOf({ lights: [dish({ shape: rectangle(m(0.6), m(0.9)), ...straight })] });
    const angle = (size: number): number => (2 * Math.atan(size / 2 / 2) * 180) / Math.PI;
    expect(found("angle", "angular_least", "key", [], box).value).toBeCloseTo(angle(0.6), 9);
    expect(found("angle", "angular_greatest", "key", [], box).value).toBeCloseTo(angle(0.9), 9);
    expect(found("angle", "angular_diagonal", "key", [], box).value).toBeCloseTo(
      angle(Math.hypot(0.6, 0.9)),
      9,
    );
    expect(found("angle", "angular_diagonal", "key").reason).toBe("key is not a rectangle");
    const omega = 4 * Math.asin((0.3 * 0.45) / Math.sqrt((4 + 0.09) * (4 + 0.2025)));
    const cone = (2 * Math.acos(1 - omega / (2 * Math.PI)) * 180) / Math.PI;
    expect(found("angle", "angular_size", "key", [], box).value).toBeCloseTo(cone, 7);
  });

  test("times_sun, place and reserve", () => {
    const size = found("angle", "angular_size", "key").value ?? 0;
    expect(found("number", "times_sun", "key").value).toBeCloseTo(size / 0.533, 9);
    expect(found("angle", "bearing", "key").value).toBeCloseTo(-35, 9);
    expect(found("angle", "elevation", "key").value).toBeCloseTo(
      (Math.asin((2.2 - 1.5861) / 2.4) * 180) / Math.PI,
      9,
    );
    expect(found("length", "distance", "key").value).toBeCloseTo(2.4, 12);
    const fromShin = found("length", "distance", "key", [{ name: "from", value: point("shin") }]).value ?? 0;
    expect(fromShin).toBeGreaterThan(2.4);
    expect(found("length", "height", "key").value).toBe(2.2);
    expect(found("stops", "reserve", "key").value).toBe(1);
    const off = planOf({ lights: [dish({ power: { kind: "off", written: "off" } })] });
    expect(found("stops", "reserve", "key", [], off)).toMatchObject({ value: null, reason: "key is off" });
  });

  test("shadow edges: s g / D, with 10 to 90 % of a round source 0.687 of it, and in mm", () => {
    const edge = found("length", "shadow_edge", "key", [{ name: "gap", value: length(0.12) }]);
    expect(edge.value).toBeCloseTo((0.2 * 0.12) / 2.4, 9);
    expect([show(edge), unitOf(edge)]).toEqual(["10.0 mm", "mm"]);
    expect(reportValue(edge)).toBeCloseTo(10, 6);
    const narrow = found("length", "shadow_edge_10_90", "key", [{ name: "gap", value: length(0.12) }]);
    // The disc's profile has its 10 and 90 % at x = -+0.687 radii.
    expect((narrow.value ?? 0) / (edge.value ?? 1)).toBeCloseTo(0.687, 2);
    expect(show(found("length", "shadow_edge", "key", [{ name: "gap", value: length(-1) }]))).toBeNull();
    const on = found("length", "shadow_edge", "key", [{ name: "on", value: "back" }]);
    expect(on.reason).toBe("no shadow of a subject falls on back");
  });

  test("shadow edges across a rectangle: its width, its height, and w cos + h sin between", () => {
    const straight = { bearing: left(deg(0)), height: m(1.5861), distance: tape(m(2)) };
    const box = planOf({ lights: [dish({ shape: rectangle(m(0.6), m(0.9)), ...straight })] });
    const across = (value: string | Expr) =>
      found(
        "length",
        "shadow_edge",
        "key",
        [
          { name: "gap", value: length(0.1) },
          { name: "across", value },
        ],
        box,
      ).value;
    const angle: Expr = { kind: "value", type: "angle", quantity: deg(30) };
    const cos = Math.sqrt(3) / 2;
    expect(across("width")).toBeCloseTo((0.6 * 0.1) / 2, 9);
    expect(across("height")).toBeCloseTo((0.9 * 0.1) / 2, 9);
    expect(across(angle)).toBeCloseTo(((0.6 * cos + 0.9 * 0.5) * 0.1) / 2, 9);
    expect(
      found("length", "shadow_edge", "key", [{ name: "gap", value: length(0.1) }], box).value,
    ).toBeCloseTo((Math.hypot(0.6, 0.9) * 0.1) / 2, 9);
  });

  test("shadow edges of a feathered disc: the widest is across the diameter that is not foreshortened", () => {
    const straight = {
      bearing: left(deg(0)),
      height: m(1.5861),
      distance: tape(m(2)),
      feather: left(deg(40)),
    };
    const plate = planOf({ lights: [dish({ shape: disc(m(0.2)), ...straight })] });
    const edge = found("length", "shadow_edge", "key", [{ name: "gap", value: length(0.1) }], plate).value;
    // The steepest line to the rim, r sin p / (d - r cos p sin 40 deg), is r / sqrt(d^2 - r^2 sin^2 40 deg).
    const tilt = Math.sin((40 * Math.PI) / 180);
    expect(edge).toBeCloseTo((0.1 * 2 * 0.1) / Math.sqrt(4 - 0.01 * tilt * tilt), 9);
    const least = found(
      "length",
      "shadow_edge",
      "key",
      [
        { name: "gap", value: length(0.1) },
        { name: "across", value: "width" },
      ],
      plate,
    ).value;
    expect((least ?? 0) / (edge ?? 1)).toBeCloseTo(Math.cos((40 * Math.PI) / 180), 2);
  });

  // The numbers themselves are checked by sums over cells in tests/physics/edge-beam.test.ts.
  test("the 10 to 90 % of an edge is that of the beam: the narrower the beam, the narrower the edge", () => {
    const straight = { bearing: left(deg(0)), height: m(1.5861), distance: tape(m(1)) };
    const width = (fields: object): number =>
      found(
        "length",
        "shadow_edge_10_90",
        "key",
        [
          { name: "gap", value: length(0.1) },
          { name: "across", value: "width" },
        ],
        planOf({ lights: [dish({ shape: rectangle(m(1.2), m(1.2)), ...straight, ...fields })] }),
      ).value ?? Number.NaN;
    const even = width({});
    const narrow = width({ beam: cosinePower(number(12)) });
    const net = width({ grid: deg(30), grid_loses: stops(1) });
    expect(narrow).toBeLessThan(0.9 * even);
    expect(net).toBeLessThan(0.9 * narrow);
  });

  test("shadow on the floor by like triangles", () => {
    const away = Math.hypot(1.3307871718918753, 1.9974610469353578);
    expect(found("length", "shadow_length", "key").value).toBeCloseTo((away * 1.7) / (2.2 - 1.7), 9);
    const low = planOf({ lights: [dish({ height: m(1.5) })] });
    expect(found("length", "shadow_length", "key", [], low).reason).toContain("no end");
  });

  test("fall-off between places is that of the inverse square far from a small bulb", () => {
    const far = planOf({ lights: [bulb()] });
    const args: Args = [
      { name: "from", value: point("face") },
      { name: "to", value: point("shin") },
    ];
    const a = found("length", "distance", "key", [], far).value ?? 0;
    const b = found("length", "distance", "key", [{ name: "from", value: point("shin") }], far).value ?? 0;
    expect(found("stops", "fall_off", "key", args, far).value).toBeCloseTo(2 * Math.log2(b / a), 3);
  });
});

describe("results of readings", () => {
  const floor: Expr = {
    kind: "reading",
    type: "reading",
    station: "floor",
    receptor: "disc",
    towards: null,
    lights: [],
  };

  test("f-number, exposure and exposure value of one reading agree", () => {
    const h = found("exposure", "exposure", null, [{ name: "a", value: floor }]).value ?? 0;
    const n = found("f-number", "f_number", null, [{ name: "a", value: floor }]).value ?? 0;
    const ev = found("ev", "ev", null, [{ name: "a", value: floor }]).value ?? 0;
    expect(n).toBeCloseTo(Math.sqrt((h * 200) / 250), 9);
    // EV at ISO 100: log2(N2 / t) - log2(S / 100), with 1/128 s.
    expect(ev).toBeCloseTo(Math.log2(n * n * 128) - 1, 9);
    const off = found("stops", "stops_from_aperture", null, [{ name: "a", value: floor }]).value ?? 0;
    const loss = 2 * Math.log2(1 + 0.085 / (3.4031 - 0.085));
    expect(off).toBeCloseTo(2 * Math.log2(n / 8) - loss, 9);
  });

  test("key to fill: two like lamps, one two stops down, are 4:1", () => {
    const two = planOf({
      lights: [
        dish(),
        dish(
          {
            bearing: right(deg(50)),
            power: { kind: "below", stops: { value: 3, unit: "stop", written: "" }, written: "" },
          },
          "fill",
        ),
      ],
    });
    const args: Args = [
      { name: "key", value: "key" },
      { name: "fill", value: "fill" },
    ];
    const ratio = found("contrast", "key_to_fill", null, args, two);
    // The meter for the fill, which stands further to the side, is held a little further off the line to the face: of
    // 8 cm, sine 0.6107 of the way to the key, 0.7835 of that to the fill; each lamp loses (1 + s^2/D^2)^(3/2).
    const loses = (sine: number) => 1.5 * Math.log2(1 + Math.pow((0.08 * sine) / 2.4, 2));
    expect(ratio.value).toBeCloseTo(2 + loses(0.7835) - loses(0.6107), 5);
    expect(show(ratio)).toBe("4:1 (2.0 stop)");
  });

  test("evenness is the most over the least", () => {
    const chest: Expr = { ...floor, station: "chest" } as Expr;
    const args: Args = [
      { name: "reading", value: floor },
      { name: "reading", value: chest },
    ];
    const a = evaluate({ plan, alarms: 0 }, floor).value ?? 1;
    const b = evaluate({ plan, alarms: 0 }, chest).value ?? 1;
    expect(found("stops", "evenness", null, args).value).toBeCloseTo(2 * Math.log2(b / a), 9);
  });
});

test("every result of the vocabulary is known", () => {
  const args: Args = [
    { name: "gap", value: length(0.1) },
    { name: "from", value: point("face") },
    { name: "to", value: point("shin") },
    { name: "face", value: "face" },
    { name: "key", value: "key" },
    { name: "fill", value: "key" },
    { name: "on", value: "floor" },
  ];
  const floor: Expr = {
    kind: "reading",
    type: "reading",
    station: "floor",
    receptor: "disc",
    towards: null,
    lights: [],
  };
  const readings: Args = ["a", "b", "reading"].map((name) => ({ name, value: floor }));
  const unknown = results
    .filter((row) =>
      found(row.type, row.name, row.of === "light" ? "key" : null, [...args, ...readings]).reason?.endsWith(
        "not computed yet",
      ),
    )
    .map((row) => row.name);
  expect(unknown).toEqual([]);
});

test("the only subject answers to its name and to none", () => {
  const one = planOf({ subjects: [block("subject", "ana", { height: m(1.7) })] });
  const read = (station: string) =>
    evaluate(
      { plan: one, alarms: 0 },
      { kind: "reading", type: "reading", station, receptor: "disc", towards: named("key"), lights: [] },
    ).value;
  expect(read("ana.face")).toBe(read("face"));
  expect(read("ana.face")).not.toBeNull();
});
