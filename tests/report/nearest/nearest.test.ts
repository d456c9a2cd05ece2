import { describe, expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import type { ReportExpectation } from "../../../src/report/schema/report.js";

const SETUP = `halfshade 1
recipe "Nearest"
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 9 m, height: 1.3 m }
light key { role: key, shape: disc(20 cm), calibration: metered(f/11, at: 2 m, ISO 100), power: 1/2, distance: 2 m, bearing: left(35 deg), height: 2.2 m }
`;

/** Expectations of a set-up, each with what became of it. */
function judged(text: string): readonly ReportExpectation[] {
  const { evaluated, diagnostics } = run({ name: "nearest.light", text });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report.expectations;
}

function nearestOf(expectation: string, setup = SETUP): ReportExpectation {
  const [row] = judged(`${setup}expect ${expectation}\n`);
  if (row === undefined) throw new Error("no expectation");
  return row;
}

/** The value of one property among the nearest changes. */
function changeOf(row: ReportExpectation, what: string): number {
  const found = row.nearest?.changes.find((change) => change.what === what);
  if (found === undefined)
    throw new Error(`${what} is not among: ${row.nearest?.text ?? row.nearest_reason}`);
  return found.value;
}

describe("what the picture shows", () => {
  const WALL = SETUP.replace("focal_length: 85 mm", "focal_length: 50 mm")
    .replace("distance: 9 m, height: 1.3 m", "distance: 4 m, height: 1.5 m")
    .replace("light key", "set { flat back { size: 2.2 x 2.6 m, at: offset(behind: 1.5 m) } }\nlight key");

  test("is said in per cent, and mended by the lens or the camera's place", () => {
    const row = nearestOf("coverage is 100 % within 0.2 %", WALL);
    expect(row.found).toMatch(/^\d\d\.\d %$/);
    expect(row.unit).toBe("1");
    // The flat, 5.5 m from the lens, ends 1.1 m above it: 18 mm / v x 5.5 m = 1.1 m at v = 90 mm behind the lens, which
    // is focused on the face, 3.9031 m away: f = 90 x 3903.1 / (3903.1 + 90) = 87.97 mm.
    expect(changeOf(row, "camera.focal_length")).toBeCloseTo(0.088, 9);
    // At d from the mark: 18 / v x (d + 1.5) = 1.1 with v = 50 s / (s - 0.05), s = d - 0.0969: d = 1.66 m, in tenths 1.6.
    expect(changeOf(row, "camera.distance")).toBeCloseTo(1.6, 1);
  });

  test.each(["coverage >= 100 %", "uncovered <= 0 %", "100 % - coverage <= 0 %"])(
    "reaches the end of what there is, as the same wish does within a tolerance: %s",
    (claim) => {
      const row = nearestOf(claim, WALL);
      expect(row.found).toMatch(/^\d+\.\d %$/);
      expect(changeOf(row, "camera.focal_length")).toBeCloseTo(0.088, 9);
      expect(changeOf(row, "camera.distance")).toBeCloseTo(1.6, 1);
    },
  );

  test("is not offered the lens where nothing of the picture is asked", () => {
    const row = nearestOf("key.angular_size < 4 deg", WALL);
    expect(row.nearest?.text).not.toContain("focal_length");
  });
});

describe("the nearest single change", () => {
  test("of an angular size is the distance of the cone: r / tan(a / 2)", () => {
    const row = nearestOf("key.angular_size < 4 deg");
    // 0.1 m / tan 2 deg = 2.8636 m; a tape is read to a centimetre, away from the bound.
    expect(changeOf(row, "key.distance")).toBe(2.87);
    expect(row.nearest?.text).toContain("key.distance 2.87 m");
  });

  test("of a shadow's edge is its gap by s g / D", () => {
    // 0.2 m x 0.6 m / 2 m = 60 mm; half of it needs half of the gap.
    const row = nearestOf("key.shadow_edge(gap: 60 cm) is 30 mm within 0.1 mm");
    expect(changeOf(row, "the gap of key.shadow_edge")).toBeCloseTo(0.3, 9);
  });

  test("of an exposure is the set aperture of the series, else the power, by whole and third stops", () => {
    // f/11 at 2 m and ISO 100 is f/11 at half power and ISO 200: one stop over f/8.
    const over = nearestOf("stops_from_aperture(face.disc(towards: key)) is 0 stop within 0.1 stop");
    const found = over.value ?? 0;
    expect(found).toBeGreaterThan(0.9);
    expect(found).toBeLessThan(1.1);
    expect(Math.abs(changeOf(over, "camera.aperture") - Math.sqrt(128))).toBeLessThan(1e-9);
    // Power and ISO do to a reading what they say on the dial, the aperture nothing.
    const reading = nearestOf("face.disc(towards: key) is f/8 within 0.1 stop");
    expect(reading.nearest?.changes.map((change) => change.what).sort()).toEqual([
      "camera.sensitivity",
      "key.power",
    ]);
    expect(changeOf(reading, "key.power")).toBeCloseTo(2, 1);
    expect(changeOf(reading, "camera.sensitivity")).toBe(100);
  });

  test("is judged with every claim of its expectation", () => {
    // Further away the light is smaller but darker than f/8 within 0.3 stop, so no single change meets both.
    const both = nearestOf("key.angular_size < 3 deg and face.disc(towards: key) > f/8");
    expect(both.nearest).toBeNull();
    expect(both.nearest_reason).toContain("no single change");
  });

  test("leaves room for what inputs may be off where `surely` is asked", () => {
    const plain = nearestOf("key.angular_size < 4 deg");
    const sure = nearestOf("surely key.angular_size < 4 deg");
    expect(changeOf(sure, "key.distance")).toBeGreaterThan(changeOf(plain, "key.distance"));
    const again = nearestOf(
      "surely key.angular_size < 4 deg",
      SETUP.replace("distance: 2 m,", `distance: ${changeOf(sure, "key.distance")} m,`),
    );
    expect(again.outcome).toBe("passed");
  });

  test("never leads through the ceiling or a wall", () => {
    const steep = "key.elevation > 40 deg";
    expect(nearestOf(steep).nearest?.changes.map((change) => change.what)).toContain("key.height");
    const low = nearestOf(steep, `${SETUP}room { size: 7 m x 20 m x 2.6 m }\n`);
    // 2 m sin 40 deg above a face at 1.586 m is 2.87 m high: only nearer by is left.
    expect(low.nearest?.changes.map((change) => change.what)).toEqual(["key.distance"]);
    // 0.1 m / tan 1 deg = 5.73 m is beyond a wall at 3.5 m, whatever the bearing.
    const narrow = nearestOf("key.angular_size < 2 deg", `${SETUP}room { size: 7 m x 7 m x 2.6 m }\n`);
    expect(narrow.nearest).toBeNull();
  });

  test("is absent where the expectation holds, is a warning's matter, or has no value", () => {
    expect(nearestOf("key.angular_size > 4 deg")).toMatchObject({ nearest: null, nearest_reason: null });
    expect(nearestOf("headroom > 1 cm and key.angular_diagonal < 2 deg")).toMatchObject({
      outcome: "undecidable",
      nearest: null,
      nearest_reason: null,
    });
  });
});

test.each([
  ["key.angular_size is 3 deg within 2 %", "distance: 2 m,", "distance", "m"],
  ["key.elevation is 30 deg within 0.5 deg", "height: 2.2 m", "height", "m"],
  ["face.disc(towards: key) is f/16 within 0.1 stop", "power: 1/2", "power", "stop"],
  ["shaded_cheek is 2 stop under lit_cheek within 0.1 stop", "left(35 deg)", "bearing", "deg"],
])("%s holds with the %s that is told", (expectation, old, property, unit) => {
  const row = nearestOf(expectation);
  expect(row.outcome).toBe("failed");
  const value = changeOf(row, `key.${property}`);
  const now = old.includes("(") ? `left(${value} deg)` : `${property}: ${value} m,`;
  const text = unit === "stop" ? `power: full - ${value} stop` : now;
  const changed = SETUP.replace(old, text);
  expect(changed).not.toBe(SETUP);
  expect(nearestOf(expectation, changed).outcome).toBe("passed");
});

describe("a bound at a round number", () => {
  // The value on the bound does not meet it, the next on the good side does.
  test.each([
    ["key.elevation < 10 deg", "height: 2.2 m", "elevation: 25 deg", "key.elevation", 9],
    ["key.elevation > 30 deg", "height: 2.2 m", "elevation: 25 deg", "key.elevation", 31],
    ["key.reserve < 1 stop", "power: 1/2", "power: 1/4", "key.power", 0.9],
    ["key.reserve > 2 stop", "power: 1/2", "power: 1/2", "key.power", 2.1],
    ["key.distance > 3 m", "height: 2.2 m", "elevation: 25 deg", "key.distance", 3.01],
    ["key.distance < 1.5 m", "height: 2.2 m", "elevation: 25 deg", "key.distance", 1.49],
    // f/11 at 2 m, full power and ISO 100 is f/11 at half power and ISO 200: the next of the series is ISO 250.
    ["face.disc(towards: key) > f/11", "ISO 200", "ISO 100", "camera.sensitivity", 100 * 2 ** (4 / 3)],
  ] as const)("%s", (claim, old, now, what, value) => {
    expect(changeOf(nearestOf(claim, SETUP.replace(old, now)), what)).toBeCloseTo(value, 9);
  });
});

describe("what is written about a value's tolerance stays with the value that takes its place", () => {
  const tapes = SETUP.replace("distance: 2 m, bearing", "distance: 2 m +- 20 cm, bearing");

  // The disc is off by 2 % of 20 cm, the tape by 20 cm, and both are independent: rises and falls of 2 atan(0.1 / d)
  // add up as squares, and the greater of the two has to be left to the bound.
  const size = (d: number, r = 0.1): number => (2 * Math.atan(r / d) * 180) / Math.PI;
  const off = (d: number): number =>
    Math.max(
      Math.hypot(size(d) - size(d + 0.2), size(d) - size(d, 0.098)),
      Math.hypot(size(d - 0.2) - size(d), size(d, 0.102) - size(d)),
    );
  const least = (d: number): number => size(d) - off(d);
  const most = (d: number): number => size(d) + off(d);

  test.each([
    ["> 5.2 deg", (d: number) => least(d) > 5.2],
    ["> 6 deg", (d: number) => least(d) > 6],
    ["> 8 deg", (d: number) => least(d) > 8],
    ["< 5 deg", (d: number) => most(d) < 5],
    ["< 4 deg", (d: number) => most(d) < 4],
    ["< 3 deg", (d: number) => most(d) < 3],
  ])("a tape, and the nearest is found: %s", (bound, holds) => {
    const row = nearestOf(`surely key.angular_size ${bound}`, tapes);
    const said = changeOf(row, "key.distance");
    expect(holds(said)).toBe(true);
    // What is told leaves a twentieth of the interval as a spare: no more than 5 cm of tape.
    expect(holds(said + (bound.startsWith(">") ? 0.06 : -0.06))).toBe(false);
    const changed = tapes.replace("distance: 2 m +-", `distance: ${said} m +-`);
    expect(nearestOf(`surely key.angular_size ${bound}`, changed).outcome).toBe("passed");
  });

  test.each([
    ["elevation: 25 deg +- 6 deg", "surely key.elevation < 30 deg", "key.elevation", 24],
    ["height: 2.2 m +- 50 cm", "surely key.elevation < 30 deg", "key.height", 2.1],
  ])("%s", (written, claim, what, most) => {
    const row = nearestOf(claim, SETUP.replace("height: 2.2 m", written));
    expect(row.outcome).toBe("undecidable");
    expect(changeOf(row, what)).toBeLessThanOrEqual(most);
  });

  test("a setting of power, however it is written", () => {
    const claim = "surely face.disc(towards: key) > f/7.2";
    const found = ["full - 1 stop +- 1 stop", "1/2 +- 1 stop", "200 Ws +- 1 stop"].map((power) => {
      const setup = SETUP.replace("power: 1/2", `full_power: 400 Ws, power: ${power}`);
      const row = nearestOf(claim, setup.replace("f/11, at", "f/9, at"));
      expect(row.outcome, power).toBe("undecidable");
      return row.nearest?.changes.find((change) => change.what === "key.power")?.value ?? null;
    });
    expect(found[0]).toBeLessThan(0.7);
    for (const value of found) expect(value).toBe(found[0]);
  });
});
