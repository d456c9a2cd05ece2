import { describe, expect, test } from "vitest";
import { dot, length, subtract } from "../../../src/math/vector.js";
import { named } from "../../../src/model/make/points.js";
import type { ClaimModel, Expr, ResultType } from "../../../src/model/values.js";
import { judge } from "../../../src/report/evaluate/claim.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { measuredInputs } from "../../../src/report/evaluate/inputs.js";
import { show } from "../../../src/report/evaluate/show.js";
import { spreadOf } from "../../../src/report/evaluate/spread.js";
import { judgeSurely } from "../../../src/report/evaluate/surely.js";
import { deg, fNumber, kelvin, m, mired, number, stops } from "../../../src/units/make.js";
import type { Quantity } from "../../../src/units/quantity.js";
import { dish, planOf } from "../../helpers/plan.js";

const plan = planOf();
const asked = { plan, alarms: 0 };
const literal = (type: ResultType, quantity: Quantity): Expr => ({ kind: "value", type, quantity });
const face = (towards = "key", receptor: "disc" | "dome" = "disc"): Expr => ({
  kind: "reading",
  type: "reading",
  station: "face",
  receptor,
  towards: named(towards),
  lights: [],
});
const floor: Expr = {
  kind: "reading",
  type: "reading",
  station: "floor",
  receptor: "disc",
  towards: null,
  lights: [],
};
const result = (
  type: ResultType,
  name: string,
  of: string | null,
  args: Extract<Expr, { kind: "result" }>["args"] = [],
): Expr => ({
  kind: "result",
  type,
  name,
  of,
  args,
});
const within = (
  value: Expr,
  target: Expr,
  tolerance: number,
  kind: "difference" | "share" = "difference",
): ClaimModel => ({
  kind: "within",
  value,
  target,
  side: null,
  tolerance: { value: tolerance, kind },
});
const N = evaluate(asked, face()).value ?? 0;
const lxs = (value: number): Quantity => ({ value, unit: "lx s", written: "" });
const cube = (x: number): number => x * x * x;
const floorN = evaluate(asked, floor).value ?? 0;

test("the face reads what a disc of 20 cm gives a meter that is held 8 cm before it", () => {
  // On the axis at 2.4 m, where its metering puts it, the dish gives f/11 (exactly 2^(7/2)) at 2 m and ISO 100, a stop
  // down: E ~ 1 / (D^2 + R^2). The meter stands s off the axis: the cosine and the longer way take (1 + s^2/D^2)^(3/2).
  const onAxis = ((250 * 128) / 100 / 2) * ((4 + 0.01) / (5.76 + 0.01));
  const ahead = Math.cos((35 * Math.PI) / 180) * Math.sqrt(1 - Math.pow((2.2 - 1.5861) / 2.4, 2));
  const aside = (0.08 * 0.08 * (1 - ahead * ahead)) / 5.76;
  const exposure = onAxis / Math.sqrt(cube(1 + aside));
  // Both at once, the opening and the way off its axis, count R^2 s^2 / D^4 = 7e-7 more or less.
  expect(N).toBeCloseTo(Math.sqrt((exposure * 200) / 250), 4);
});

describe("within", () => {
  test("a reading against an f-number is judged in stops", () => {
    const off = 2 * Math.log2(N / 8);
    expect(judge(asked, within(face(), literal("f-number", fNumber(8)), off + 1e-6)).outcome).toBe("passed");
    expect(judge(asked, within(face(), literal("f-number", fNumber(8)), off - 1e-6)).outcome).toBe("failed");
    expect(show(judge(asked, within(face(), literal("f-number", fNumber(8)), 1)).found)).toBe("f/8 +0.5");
  });

  test("a contrast is judged in stops, however its target is written", () => {
    const ratio = result("contrast", "lit_to_shadow", null, [{ name: "face", value: "face" }]);
    const found = evaluate(asked, ratio);
    // By cosine and inverse square from the centre of a dish of 20 cm, 2.4 m away; black figure, nothing bounces.
    const gives = (side: number): number => {
      const [x = 0, y = 0, z = 0] = plan.scene.sources[0]?.centre.map((c, i) => {
        // The head of 0.045 by 0.057 h, h = 1.7 m, at the place where it looks 45 deg to the side.
        const norm = Math.sqrt(0.045 * 0.045 + 0.057 * 0.057);
        const cheek = [(side * 1.7 * 0.045 * 0.045) / norm, (-1.7 * 0.057 * 0.057) / norm, 1.7 * 0.933];
        return c - (cheek[i] as number);
      }) ?? [0, 0, 0];
      return (side * x - y) / cube(Math.hypot(x, y, z));
    };
    expect(found.value).toBeCloseTo(Math.log2(gives(-1) / gives(1)), 2);
    const three = literal("contrast", { ...number(3), written: "3:1" });
    const gap = (found.value ?? 0) - Math.log2(3);
    expect(judge(asked, within(ratio, three, gap + 1e-6)).outcome).toBe("passed");
    expect(judge(asked, within(ratio, three, gap - 1e-6)).outcome).toBe("failed");
    const near = Number(found.value?.toFixed(1));
    expect(judge(asked, within(ratio, literal("contrast", stops(near)), 0.05)).outcome).toBe("passed");
  });

  test("lengths and angles are judged in their own unit or as a share", () => {
    const size = result("angle", "angular_size", "key");
    const degrees = (2 * Math.atan(0.1 / 2.4) * 180) / Math.PI;
    expect(evaluate(asked, size).value).toBeCloseTo(degrees, 9);
    expect(judge(asked, within(size, literal("angle", deg(5)), 0.23)).outcome).toBe("passed");
    expect(judge(asked, within(size, literal("angle", deg(5)), 0.22)).outcome).toBe("failed");
    expect(judge(asked, within(size, literal("angle", deg(5)), 0.05, "share")).outcome).toBe("passed");
    expect(judge(asked, within(size, literal("angle", deg(5)), 0.04, "share")).outcome).toBe("failed");
  });

  test("colour is judged in mired", () => {
    const warm = literal("colour-temperature", kelvin(5600));
    // 5000 K is 200 mired, 5600 K 178.57.
    expect(judge(asked, within(warm, literal("colour-temperature", kelvin(5000)), 21.5)).outcome).toBe(
      "passed",
    );
    expect(judge(asked, within(warm, literal("colour-temperature", kelvin(5000)), 21.3)).outcome).toBe(
      "failed",
    );
  });

  test("a tolerance that is met to the last bit is met", () => {
    const claim = within(literal("stops", stops(0.3)), literal("stops", stops(0.1)), 0.2);
    expect(judge(asked, claim).outcome).toBe("passed");
  });
});

describe("under and over", () => {
  const claim = (
    word: "under" | "over",
    amount: number,
    tolerance: number,
    value: Expr,
    of: Expr,
  ): ClaimModel => ({
    kind: "within",
    value,
    target: literal("stops", stops(amount)),
    side: { word, of },
    tolerance: { value: tolerance, kind: "difference" },
  });
  const apart = 2 * Math.log2(N / floorN);

  test("say which of the two is darker", () => {
    expect(judge(asked, claim("under", apart, 0.01, floor, face())).outcome).toBe("passed");
    expect(judge(asked, claim("over", apart, 0.01, face(), floor)).outcome).toBe("passed");
    expect(judge(asked, claim("over", apart, 0.01, floor, face())).outcome).toBe("failed");
    expect(judge(asked, claim("under", 1, 0.3, floor, face())).apart).toBe("1.62 stop under");
  });

  test("hold without an ISO value, since it counts for both", () => {
    const { recipe } = plan;
    const blind = planOf({ ...recipe, camera: null });
    const there = { plan: blind, alarms: 0 };
    expect(judge(there, claim("under", apart, 0.01, floor, face())).outcome).toBe("passed");
    const number_ = judge(there, within(face(), literal("f-number", fNumber(8)), 1));
    expect(number_.outcome).toBe("undecidable");
    expect(number_.reason).toContain("ISO");
  });
});

describe("a reading against", () => {
  const h = (N * N * 250) / 200;
  test("an exposure is judged in stops of exposure, or as a share of it", () => {
    const exact = literal("exposure", lxs(h));
    expect(judge(asked, within(face(), exact, 1e-6)).outcome).toBe("passed");
    const double = literal("exposure", lxs(2 * h));
    expect(judge(asked, within(face(), double, 1.001)).outcome).toBe("passed");
    expect(judge(asked, within(face(), double, 0.999)).outcome).toBe("failed");
    expect(judge(asked, within(face(), literal("exposure", lxs(1.1 * h)), 0.1, "share")).outcome).toBe(
      "passed",
    );
    expect(judge(asked, within(face(), literal("exposure", lxs(1.12 * h)), 0.1, "share")).outcome).toBe(
      "failed",
    );
  });

  test("an exposure value is that at ISO 100 over the shutter time", () => {
    const ev = Math.log2(N * N * 128) - 1;
    const claim = within(face(), literal("ev", { value: ev, unit: "EV", written: "" }), 1e-6);
    expect(judge(asked, claim).outcome).toBe("passed");
  });

  test("a dome's reading is its own f-number", () => {
    const dome = evaluate(asked, face("camera", "dome"));
    // Held where the disc is; turned to the camera it weighs the same light by (1 + cos) / 2. What comes
    // from all over a disc of half-angle a is 2 / (1 + cos a) times what a disc that looks at it gets.
    const lamp = plan.scene.sources[0]?.centre ?? [0, 0, 0];
    const { at } = plan.scene.stations[0] ?? { at: lamp };
    const [toLamp, toCamera] = [subtract(lamp, at), subtract([0, -3.5, 1.3], at)];
    const cosine = dot(toLamp, toCamera) / (length(toLamp) * length(toCamera));
    const whole = 2 / (1 + Math.cos(Math.atan(0.1 / 2.4)));
    const exposure = (N * N * 250 * ((whole + cosine) / 2)) / 200;
    expect(dome.value).toBeCloseTo(Math.sqrt((exposure * 200) / 340), 4);
  });

  test("a written f-number may stand where a reading is wanted", () => {
    const stops_ = result("stops", "stops", null, [
      { name: "a", value: face() },
      { name: "b", value: literal("f-number", fNumber(8)) },
    ]);
    expect(evaluate(asked, stops_).value).toBeCloseTo(2 * Math.log2(N / 8), 9);
    // f/8 and 1/128 s at ISO 200 ask for EV log2(64 x 128) - 1 = 12 at ISO 100.
    const against = result("stops", "stops", null, [
      { name: "a", value: face() },
      { name: "b", value: literal("ev", { value: 12, unit: "EV", written: "EV 12" }) },
    ]);
    expect(evaluate(asked, against).value).toBeCloseTo(2 * Math.log2(N / 8), 9);
  });
});

describe("compare, between and truth", () => {
  const height = result("length", "height", "key");

  test("compare includes the bound only where the sign says so", () => {
    const sign = (word: "<" | "<=" | ">" | ">="): string =>
      judge(asked, { kind: "compare", value: height, sign: word, target: literal("length", m(2.2)) }).outcome;
    expect([sign("<"), sign("<="), sign(">"), sign(">=")]).toEqual(["failed", "passed", "failed", "passed"]);
  });

  test("between includes both ends", () => {
    const between = (low: number, high: number): string =>
      judge(asked, {
        kind: "between",
        value: height,
        low: literal("length", m(low)),
        high: literal("length", m(high)),
      }).outcome;
    expect([between(2.2, 3), between(2, 2.2), between(2.21, 3), between(2, 2.19)]).toEqual([
      "passed",
      "passed",
      "failed",
      "failed",
    ]);
  });

  test("a truth is what it is", () => {
    const claim: ClaimModel = { kind: "true", value: result("truth", "no_warnings", null) };
    expect(judge(asked, claim).outcome).toBe("passed");
    expect(judge({ plan, alarms: 2 }, claim).outcome).toBe("failed");
    expect(judge({ plan, alarms: null }, claim).outcome).toBe("undecidable");
  });
});

describe("what cannot be had is not decidable", () => {
  const side = planOf({ lights: [dish({ bearing: { side: "left", angle: deg(90), written: "" } })] });

  test("a shade that gets no light has no contrast", () => {
    const claim = within(
      result("contrast", "lit_to_shadow", null, [{ name: "face", value: "face" }]),
      literal("contrast", stops(2)),
      9,
    );
    const judged = judge({ plan: side, alarms: 0 }, claim);
    expect(judged.outcome).toBe("undecidable");
    expect(judged.reason).toContain("gets no light, straight or bounced");
    expect(judged.found.value).toBeNull();
  });

  test("what has no value, unknown places and lights say so", () => {
    const bare = evaluate(asked, result("number", "coverage", null));
    expect(bare).toMatchObject({ value: null, reason: expect.stringContaining("is a background") });
    expect(evaluate(asked, result("number", "glow", null)).reason).toBe("glow is not computed yet");
    expect(evaluate(asked, { ...(floor as object), station: "moon" } as Expr).reason).toContain("moon");
    expect(evaluate(asked, face("moon")).reason).toContain("moon");
    expect(evaluate(asked, result("angle", "elevation", "nobody")).value).toBeNull();
  });
});

describe("sums and products", () => {
  const sum = (type: ResultType, ...terms: readonly (readonly ["+" | "-", Expr])[]): Expr => ({
    kind: "sum",
    type,
    terms: terms.map(([sign, value]) => ({ sign, value })),
  });

  test("stops added to an f-number move it on its scale", () => {
    const found = evaluate(
      asked,
      sum("f-number", ["+", literal("f-number", fNumber(8))], ["+", literal("stops", stops(1))]),
    );
    expect(found.value).toBeCloseTo(8 * Math.SQRT2, 12);
  });

  test("two readings apart are stops, mired added to a colour move it", () => {
    const apart = evaluate(asked, sum("stops", ["+", face()], ["-", floor]));
    expect(apart.value).toBeCloseTo(2 * Math.log2(N / floorN), 9);
    const warmer = evaluate(
      asked,
      sum(
        "colour-temperature",
        ["+", literal("colour-temperature", kelvin(5000))],
        ["+", literal("mired", mired(50))],
      ),
    );
    expect(warmer.value).toBeCloseTo(4000, 9);
  });

  test("lengths add, and division by nothing has a reason", () => {
    const twice = evaluate(
      asked,
      sum("length", ["+", literal("length", m(1))], ["-", literal("length", m(3))]),
    );
    expect(twice.value).toBe(-2);
    const over: Expr = {
      kind: "product",
      type: "number",
      factors: [
        { sign: "*", value: literal("length", m(1)) },
        { sign: "/", value: literal("length", m(0)) },
      ],
    };
    expect(evaluate(asked, over)).toMatchObject({ value: null, reason: "it divides by nothing" });
  });
});

describe("surely", () => {
  const inputs = measuredInputs(plan);
  const size = result("angle", "angular_size", "key");
  const claim = (tolerance: number): ClaimModel => within(size, literal("angle", deg(4.77)), tolerance);

  test("asks that the whole interval still holds", () => {
    // A tape of 2.4 m with 2 cm to either side moves 4.77 deg by 0.8 %, 0.04 deg, an opening known to 2 % by 0.095 deg,
    // together 0.103 deg by squares; a height moves it on a circle about the face, at which the angle is the same.
    expect(judge(asked, claim(0.03)).outcome).toBe("passed");
    expect(judgeSurely(asked, claim(0.03), inputs).outcome).toBe("undecidable");
    expect(judgeSurely(asked, claim(0.09), inputs).outcome).toBe("undecidable");
    expect(judgeSurely(asked, claim(0.12), inputs).outcome).toBe("passed");
    expect(judgeSurely(asked, claim(0.001), inputs).outcome).toBe("failed");
  });

  test("says lengths as people write them: a tape in centimetres, the edge of a shadow in millimetres", () => {
    const reasonOf = (value: Expr, sign: "<" | ">", limit: number): string | null =>
      judgeSurely(asked, { kind: "compare", value, sign, target: literal("length", m(limit)) }, inputs)
        .reason;
    expect(reasonOf(result("length", "distance", "key"), ">", 2.395)).toMatch(
      /may move it by 2 cm and only 5 mm is left$/,
    );
    // A light of 20 cm seen from 2.4 m throws an edge of 10 cm * 20 / 240 = 8.3 mm; 2 % of it are 0.17 mm.
    const edge = result("length", "shadow_edge", "key", [{ name: "gap", value: literal("length", m(0.1)) }]);
    expect(reasonOf(edge, "<", 0.0084)).toMatch(/may move it by 0\.\d+ mm and only 0\.\d+ mm is left$/);
  });

  test("what every input does by itself is added up as squares", () => {
    const steep = result("angle", "elevation", "key");
    const total = spreadOf(asked, steep, inputs)?.above ?? 0;
    const parts = inputs.map((input) => spreadOf(asked, steep, [input])?.above ?? 0);
    expect(parts.filter((part) => part > 0.001).length).toBeGreaterThan(1);
    // JCGM 100:2008, 5.1.2: squares of the parts of uncorrelated inputs add up.
    expect(total * total).toBeCloseTo(
      parts.reduce((sum, part) => sum + part * part, 0),
      12,
    );
  });

  test("the output of a metered lamp counts for a reading, and cancels between readings of one lamp", () => {
    const reading = within(face(), literal("f-number", fNumber(9.43)), 0.3);
    expect(judgeSurely(asked, reading, inputs).outcome).toBe("undecidable");
    const apart: ClaimModel = {
      kind: "within",
      // Not the floor between the legs, whose shade wanders when the lamp does.
      value: { ...face(), station: "chest" } as Expr,
      target: literal("stops", stops(0.1)),
      side: { word: "under", of: face() },
      tolerance: { value: 0.25, kind: "difference" },
    };
    // Of the inputs the output alone: a bearing that is off moves the person's own shadow over the mark.
    const output = inputs.filter((row) => row.what === "key output");
    expect(output).toHaveLength(1);
    expect(judgeSurely(asked, apart, output).outcome).toBe("passed");
  });
});
