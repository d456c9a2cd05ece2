import { describe, expect, test } from "vitest";
import { untold } from "../../../src/report/session/causes.js";
import { day, lampOf, metered, places, shed } from "./days.js";

const all = [...places, "floor", "lit_cheek", "chest.disc(towards: camera)"];

describe("two things at once", () => {
  test("are named where no single one accounts for the readings", () => {
    // The key gives 0.9 stop less than its dial says, and the fill stands 50 cm nearer.
    const truth = shed
      .replace("full - 2 stop", "full - 2.9 stop")
      .replace("distance: 2.6 m", "distance: 2.1 m");
    const report = day(shed, metered(truth, all));
    expect(report.causes).toEqual([]);
    const found = report.pairs.map(({ causes }) =>
      causes.map(({ kind, about }) => `${kind} ${about}`).sort(),
    );
    expect(found).toContainEqual(["distance fill", "output key"]);
    const pair = report.pairs.find(({ causes }) => causes.some(({ kind }) => kind === "distance"));
    const amountOf = (kind: string): number =>
      pair?.causes.find((one) => one.kind === kind)?.amount ?? Number.NaN;
    expect(Math.abs(amountOf("output") + 0.9)).toBeLessThan(0.1);
    expect(Math.abs(amountOf("distance") + 0.5)).toBeLessThan(0.15);
    expect(report.diagnosis).toContain("two do together");
  });

  test("are not looked for where one thing does, nor with three readings", () => {
    expect(day(shed, metered(shed.replace("full - 2 stop", "full - 2.7 stop"), all)).pairs).toEqual([]);
    expect(day(shed, metered(shed, places.slice(0, 3), [0.9, -0.9, 0.4])).pairs).toEqual([]);
  });
});

describe("what the readings do not tell apart", () => {
  test("is all within one squared tolerance of the best: four squared standard deviations", () => {
    expect(untold([5, 3, 3.9, 4.1], (cost) => cost)).toEqual([3, 3.9]);
  });
});

/** One small lamp in the open: every reading is of it alone, and nothing bounces. */
const open = `halfshade 1
recipe "The open yard"
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
light key { shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: left(20 deg), height: 1.9 m }
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m
}
`;
const disc = "face.disc(towards: key)";

describe("the interval of what a lamp gives", () => {
  test.each([0.1, 0.2, 0.6])("is the tolerance of the one reading that there is: %d stop", (tolerance) => {
    const [line = ""] = metered(open, [disc], [0.4]);
    const { stops, interval } = lampOf(day(open, [`${line} +- ${tolerance} stop`]), "key");
    expect(stops).toBeCloseTo(0.4, 3);
    expect((interval?.[1] ?? 9) - (interval?.[0] ?? 0)).toBeCloseTo(2 * tolerance, 2);
  });

  test("is none where the reading leaves more than a stop open", () => {
    const [line = ""] = metered(open, [disc]);
    expect(lampOf(day(open, [`${line} +- 1.2 stop`]), "key").interval).toBeNull();
  });

  test("is none of a lamp that has not fired: more than six stops under", () => {
    const under = (stops: number): ReturnType<typeof lampOf> =>
      lampOf(day(open, metered(open, [disc], [-stops])), "key");
    expect(under(5.5).interval).not.toBeNull();
    expect(under(6.5).reason).toContain("has not fired");
  });
});
