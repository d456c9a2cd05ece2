import { describe, expect, test } from "vitest";
import { day, lampOf, metered, readingAt } from "./days.js";

/** One lamp of 400 lm s in the open: nothing bounces. */
const open = (lamp = "power: full - 3 stop", more = ""): string => `halfshade 1
recipe "The open yard"
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
light key { role: key, shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: left(20 deg), height: 1.9 m, ${lamp} }
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m
}
${more}`;
const fill = `light fill { shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: right(60 deg), height: 1.9 m, power: full - 3 stop }
`;
const disc = "face.disc(towards: key)";
const two = [disc, "face.dome(towards: key)"];
const off = (recipe: string, at: readonly string[], stops: readonly number[]) =>
  day(recipe, metered(recipe, at, stops));

describe("what to turn", () => {
  test("leaves what the lamps do not account for, to either side", () => {
    // 0.5, 0.5 and 0.2 stop over: 0.4 for the lamp; turned down by it 0.1, 0.1 and -0.2 are left.
    const at = [...two, "chest.disc(towards: key)"];
    const { remedy, readings, lamps } = off(open(), at, [0.5, 0.5, 0.2]);
    expect(lamps[0]?.stops).toBeCloseTo(0.4, 3);
    expect(remedy?.turns).toMatchObject([
      { light: "key", by: -0.4, setting: "full - 3.4 stop", reason: null },
    ]);
    expect(readings.map(({ left }) => left)).toEqual(
      [0.1, 0.1, -0.2].map((stops) => expect.closeTo(stops, 3)),
    );
    expect(readings.map(({ after }) => after)).toEqual(
      [0.1, 0.1, -0.2].map((stops) => expect.closeTo(stops, 3)),
    );
    expect(remedy?.worst).toBeCloseTo(0.2, 3);
  });

  test("ends at the lowest setting and says so", () => {
    const least = "power: full - 3 stop, lowest_power: full - 3.5 stop";
    const { remedy, readings } = off(open(least), two, [0.8, 0.8]);
    expect(remedy?.turns).toMatchObject([
      { light: "key", by: -0.5, setting: "full - 3.5 stop", reason: "the lowest setting is too much" },
    ]);
    expect(readings[0]?.after).toBeCloseTo(0.3, 3);
    // A lamp that is turned as far as it goes is not carried instead.
    expect(remedy?.carry).toBeNull();
  });

  test("says nothing where it leads less than half the way", () => {
    const near = "power: full - 0.3 stop";
    expect(off(open(near), two, [-0.5, -0.5]).remedy?.turns).toMatchObject([{ by: 0.3, setting: "full" }]);
    expect(off(open(near), two, [-0.7, -0.7]).remedy).toBeNull();
  });

  test("turns each lamp by its own, and leaves one that is off by no more than meters are", () => {
    const at = ["face.disc(towards: key, only: key)", "face.disc(towards: fill, only: fill)"];
    const both = off(open(undefined, fill), at, [-1, 0.6]);
    expect(both.remedy?.turns).toMatchObject([
      { light: "key", by: 1 },
      { light: "fill", by: -0.6 },
    ]);
    expect(both.remedy?.carry).toBeNull();
    const settings = "thresholds { session_same: 0.3 stop, session_note: 0.3 stop, session_act: 0.4 stop }\n";
    const one = off(open(undefined, fill + settings), at, [-1, 0.2]);
    expect(one.remedy?.turns).toMatchObject([{ light: "key", by: 1 }]);
    expect(one.remedy?.turns).toHaveLength(1);
    expect(readingAt(one, at[1] as string).after).toBeCloseTo(0.2, 3);
  });

  test("carries no lamp where two are turned", () => {
    const at = ["face.disc(towards: key, only: key)", "face.disc(towards: fill, only: fill)"];
    const { remedy } = off(open(undefined, fill), at, [-1, 0.16]);
    expect(remedy?.turns).toHaveLength(2);
    expect(remedy?.carry).toBeNull();
    expect(off(open(undefined, fill), at, [-1, 0.04]).remedy?.carry).not.toBeNull();
  });

  test("is by a tenth of a stop", () => {
    expect(off(open(), two, [0.53, 0.53]).remedy?.turns[0]?.by).toBe(-0.5);
    expect(readingAt(off(open(), two, [0.53, 0.53]), disc).after).toBeCloseTo(0.03, 3);
  });
});

describe("carrying a lamp instead", () => {
  test("is by the square root of what is wanted, to a centimetre", () => {
    // 0.4 stop nearer: 2 m x 2^-0.2 = 1.741 m.
    expect(off(open(), two, [-0.4, -0.4]).remedy?.carry).toMatchObject({ light: "key", from: 2, to: 1.74 });
  });

  test("is named with what it does to the other readings, as long as that is little", () => {
    const at = [disc, "chest.disc(towards: key)"];
    const { remedy } = off(open(), at, [-0.4, -0.4]);
    // Lamp at (-0.665, -1.925, 1.9), face at 1.586 m and chest at 1.224 m, both about 0.1 m before the mark: the chest is
    // 2.11 m away, and 1.87 m when the lamp is carried 26 cm: 2 log2(2.11 / 1.87) = 0.35 of the 0.4 stop.
    expect(remedy?.carry?.worst).toBeGreaterThan(0.02);
    expect(remedy?.carry?.worst).toBeLessThan(0.1);
    // From 0.7 m the shin is so much farther that it hardly gains.
    const close = open("power: full - 3 stop").replace("distance: 2 m", "distance: 0.7 m");
    const near = off(close, [disc, "shin.disc(towards: key)"], [-1, -1]).remedy;
    expect(near?.turns).toMatchObject([{ by: 1 }]);
    expect(near?.carry).toBeNull();
  });
});

describe("what a session says of the readings", () => {
  test("counts those to act on, and names the furthest off, to either side", () => {
    const { headline } = off(open(), [...two, "chest.disc(towards: key)"], [0.25, 0.4, -0.9]);
    expect(headline).toBe(
      "2 of 3 readings to act on. The furthest off: chest.disc(towards: key) reads 0.9 stop under the plan.",
    );
    expect(off(open(), two, [0.28, 0.05]).headline).toBe(
      `${disc} reads 0.3 stop over the plan, which needs nothing done.`,
    );
  });

  test("says factors beside stops, and what is left as the root of the mean square", () => {
    const report = off(open(), two, [-0.9, -1.1]);
    expect(lampOf(report, "key").factor).toBeCloseTo(0.5, 4);
    expect(report.remains).toBeCloseTo(0.1, 4);
    expect(readingAt(report, disc)).toMatchObject({
      off_plan: expect.closeTo(-0.9, 4),
      off_built: expect.closeTo(-0.9, 4),
      left: expect.closeTo(0.1, 4),
    });
  });

  test("holds readings against the plan and against what was built, each by itself", () => {
    // A lamp at 2.5 m instead of 2 m gives 2 log2(2.5 / 2) = 0.644 stop less, and reads so.
    const built = open().replace("distance: 2 m", "distance: 2.5 m");
    const report = day(open(), ["key.distance: 2.5 m", ...metered(built, two, [0.05])]);
    const off = 2 * Math.log2(2.5 / 2);
    for (const row of report.readings) {
      expect(row.off_plan).toBeCloseTo(0.05 - off, 2);
      expect(row.off_built).toBeCloseTo(0.05, 4);
    }
    expect(report.diagnosis).toBe("The readings are what the set-up as built should give.");
    // Turned up by as much it reads as planned again.
    expect(report.remedy?.turns).toMatchObject([{ light: "key", by: 0.6 }]);
  });
});
