import { describe, expect, test } from "vitest";
import { day, lampOf, metered, places, readingAt, shed } from "./days.js";

/** How far a meter is off at one place after the other, stops: within its tolerance of 0.1. */
const noise = [0.05, -0.06, 0.02, 0.07, -0.04, -0.03];
const all = [...places, "floor", "lit_cheek", "chest.disc(towards: camera)"];
const dayIn = (truth: string): ReturnType<typeof day> => day(shed, metered(truth, all, noise));

/** A shed with one thing otherwise; throws where there is nothing to change. */
function otherwise(was: string, is: string): string {
  if (!shed.includes(was)) throw new Error(`no ${was}`);
  return shed.replaceAll(was, is);
}

describe("one thing is otherwise than written, and the meter is off by up to 0.07 stop", () => {
  test.each([
    // What all lamps give: log2(800 / 1200) = -0.585.
    ["all", null, otherwise("output: 1200 lm s", "output: 800 lm s"), Math.log2(800 / 1200), 0.05],
    ["output", "key", otherwise("full - 2 stop", "full - 2.7 stop"), -0.7, 0.05],
    ["output", "fill", otherwise("full - 3.5 stop", "full - 2.7 stop"), 0.8, 0.08],
    ["distance", "key", otherwise("distance: 2 m", "distance: 2.35 m"), 0.35, 0.04],
    ["height", "key", otherwise("height: 2.3 m", "height: 1.6 m"), -0.7, 0.07],
    ["bearing", "key", otherwise("left(40 deg)", "left(62 deg)"), -22, 2],
    ["reflectance", "walls", otherwise("reflectance: 50 %", "reflectance: 80 %"), 0.3, 0.05],
  ] as const)("%s of %s", (kind, about, truth, amount, near) => {
    const { causes } = dayIn(truth);
    expect(causes[0]).toMatchObject({ kind, about });
    expect(Math.abs(causes[0]?.amount ?? Number.NaN)).toBeGreaterThan(Math.abs(amount) - near);
    expect(Math.abs(causes[0]?.amount ?? Number.NaN)).toBeLessThan(Math.abs(amount) + near);
    if (kind !== "bearing") expect(Math.sign(causes[0]?.amount ?? 0)).toBe(Math.sign(amount));
  });

  test("none, and there is nothing to find or to turn", () => {
    const report = dayIn(shed);
    expect(report.causes).toEqual([]);
    expect(report.remedy).toBeNull();
    expect(report.headline).toBe("Every reading is what was planned.");
  });
});

describe("what the lamps give", () => {
  test.each([
    ["key", otherwise("full - 2 stop", "full - 2.7 stop"), -0.7, 0],
    ["fill", otherwise("full - 3.5 stop", "full - 2.7 stop"), 0, 0.8],
  ])("is found within its interval when %s gives otherwise", (_name, truth, key, fill) => {
    const report = dayIn(truth);
    for (const [name, stops] of [
      ["key", key],
      ["fill", fill],
    ] as const) {
      const [low, high] = lampOf(report, name).interval ?? [Number.NaN, Number.NaN];
      expect(low).toBeLessThan(stops);
      expect(high).toBeGreaterThan(stops);
      expect(high - low).toBeLessThan(0.3);
      expect(Math.log2(lampOf(report, name).factor ?? 0)).toBeCloseTo(lampOf(report, name).stops ?? 9, 9);
    }
  });

  test("is exact where the meter is", () => {
    const report = day(shed, metered(otherwise("full - 2 stop", "full - 2.7 stop"), places));
    expect(lampOf(report, "key").stops).toBeCloseTo(-0.7, 3);
    expect(lampOf(report, "fill").stops).toBeCloseTo(0, 3);
    expect(report.remains).toBeLessThan(0.001);
  });

  test("is not told by one reading of two lamps, and nothing is invented", () => {
    const report = day(shed, metered(otherwise("output: 1200 lm s", "output: 800 lm s"), [places[0]]));
    expect(report.lamps.map(({ stops, interval }) => [stops, interval])).toEqual([
      [null, null],
      [null, null],
    ]);
    expect(report.told_apart).toBe(false);
    expect(report.causes).toEqual([]);
    // All lamps are turned together: log2(1200 / 800) = 0.585, to a tenth.
    expect(report.remedy?.turns).toMatchObject([{ light: null, by: 0.6 }]);
  });

  test("a lamp that has not fired is said to be dark", () => {
    const report = day(shed, metered(otherwise("full - 3.5 stop", "full - 14 stop"), places));
    expect(lampOf(report, "fill").reason).toContain("has not fired");
    expect(lampOf(report, "fill").interval).toBeNull();
  });

  test("a reading that is less sure counts for less", () => {
    const lines = metered(shed, ["face.disc(towards: key)", "shaded_cheek"], [0.4, 0]);
    const sure = day(shed.replace(/light fill \{[^}]*\}\n/, ""), lines);
    const unsure = day(shed.replace(/light fill \{[^}]*\}\n/, ""), [
      `${lines[0]} +- 1 stop`,
      lines[1] as string,
    ]);
    const left = (report: typeof sure): number => Math.abs(readingAt(report, "shaded_cheek").left ?? 9);
    expect(left(unsure)).toBeLessThan(left(sure) / 4);
  });
});

describe("what to turn", () => {
  test("brings the readings back, by as much as the lamp is off", () => {
    const report = dayIn(otherwise("full - 2 stop", "full - 2.7 stop"));
    expect(report.remedy?.turns).toMatchObject([{ light: "key", by: 0.7, setting: "full - 1.3 stop" }]);
    expect(report.remedy?.worst).toBeLessThan(0.1);
    // And it does: the truth turned up by as much reads as planned.
    const turned = day(shed, metered(shed, all, noise));
    for (const row of turned.readings)
      expect(row.off_plan).toBeCloseTo(readingAt(report, row.what).after ?? 9, 1);
  });

  test("ends at full power and says so", () => {
    const weak = shed.replace("full - 2 stop", "full").replace("full - 3.5 stop", "full");
    const report = day(weak, metered(weak.replaceAll("1200 lm s", "900 lm s"), all));
    expect(report.remedy).toBeNull();
    const near = shed
      .replace("full - 2 stop", "full - 0.3 stop")
      .replace("full - 3.5 stop", "full - 0.3 stop");
    const short = day(near, metered(near.replaceAll("1200 lm s", "800 lm s"), all));
    expect(short.remedy?.turns).toMatchObject([
      { light: "key", by: 0.3, setting: "full", reason: "full power is not enough" },
      { light: "fill", by: 0.3, setting: "full", reason: "full power is not enough" },
    ]);
  });
});
