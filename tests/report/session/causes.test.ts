import { describe, expect, test } from "vitest";
import { day, lampOf, metered } from "./days.js";

/**
 * A small lamp in the open, and meters at the face that look at it. Nothing bounces, and every reading follows the lamp
 * alike: all that is off by so many stops is one number, whatever the readings.
 */
const open = (lamp = "distance: 2 m, bearing: left(20 deg), height: 1.9 m"): string => `halfshade 1
recipe "The open yard"
subject {
  height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 %
  point a { up: 1.58 m, ahead: 12 cm, faces: key }
  point b { up: 1.59 m, ahead: 12 cm, faces: key }
  point c { up: 1.60 m, ahead: 12 cm, faces: key }
}
light key { role: key, shape: disc(4 cm), output: 400 lm s, ${lamp} }
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m
}
`;
const two = ["face.disc(towards: key)", "face.dome(towards: key)"];
const five = [...two, "a", "b", "c"];
const off = (recipe: string, at: readonly string[], stops: readonly number[]) =>
  day(recipe, metered(recipe, at, stops));
const kinds = (report: ReturnType<typeof day>): readonly string[] => report.causes.map(({ kind }) => kind);

describe("a single cause", () => {
  test("leaves the root of the mean square of what it does not account for", () => {
    // 0.55 and 0.45 stop: 0.5 for all, and 0.05 left of each.
    const { causes } = off(open(), two, [0.55, 0.45]);
    expect(causes[0]).toMatchObject({
      kind: "all",
      amount: expect.closeTo(0.5, 3),
      left: expect.closeTo(0.05, 3),
    });
  });

  test("is not looked for where no reading is off by more than is noted, 0.2 stop", () => {
    expect(kinds(off(open(), two, [0.18, 0.18]))).toEqual([]);
    expect(kinds(off(open(), two, [0.22, 0.22]))).toContain("all");
  });

  test("leaves no reading off by more than is noted, to either side", () => {
    // Two readings apart by 2 x 0.19 and 2 x 0.225 stop leave half of that of each.
    expect(kinds(off(open(), two, [0.79, 0.41]))).toContain("all");
    expect(kinds(off(open(), two, [0.8, 0.35]))).toEqual([]);
    // Four of five are a stop over, one 0.4: the mean is 0.88, and one is left 0.48 under.
    expect(kinds(off(open(), five, [1, 1, 1, 1, 0.4]))).toEqual([]);
    expect(kinds(off(open(), five, [-1, -1, -1, -1, -0.4]))).toEqual([]);
  });

  test("takes away half of what was off, or it is none", () => {
    // A mean of 0.05 leaves 0.19 of what was 0.197 in the mean square.
    expect(kinds(off(open(), two, [0.24, -0.14]))).toEqual([]);
  });

  test("of one lamp alone is not told twice, as all and as its output", () => {
    expect(kinds(off(open(), two, [0.5, 0.5]))).not.toContain("output");
  });

  test("is no tape that is off by more than a metre", () => {
    // 0.7 stop is 2 m x 2^0.35 = 2.55 m; 2 stop would be 4 m.
    expect(kinds(off(open(), two, [-0.7, -0.7]))).toContain("distance");
    expect(kinds(off(open(), two, [-2, -2]))).toEqual(["all"]);
  });
});

describe("causes that the readings do not tell apart", () => {
  test("are named by their rank, however unlikely by their tolerances", () => {
    // A tape that is good to 1 m only would be off by less than its tolerance.
    const vague = open("distance: 2 m +- 1 m, bearing: left(20 deg), height: 1.9 m");
    expect(kinds(off(vague, two, [-0.5, -0.5]))).toEqual(["all", "distance"]);
    // A lamp on a tape along the floor goes away from the face by its tape as by its height.
    const onFloor = open("floor_distance: 1.2 m, bearing: left(20 deg), height: 2.6 m +- 1 m");
    expect(kinds(off(onFloor, two, [-0.4, -0.4]))).toEqual(["all", "distance", "height"]);
  });

  test("and of one rank the one that is off by fewer of its tolerances first", () => {
    // Two lamps in one place, each alone able to account for it; the second tape is the vaguer.
    const pair = `${open()}light fill {
  shape: disc(4 cm), output: 400 lm s, distance: 2 m +- 50 cm, bearing: left(20 deg), height: 1.9 m
}
`;
    const { causes } = off(pair, two, [-0.3, -0.3]);
    const tapes = causes.flatMap(({ kind, about }) => (kind === "distance" ? [about] : []));
    expect(tapes).toEqual(["fill", "key"]);
  });
});

test("a lamp of which no reading gets light is not said to be mixed with others", () => {
  const behind = `${open()}light rim {
  shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: right(170 deg), height: 1.9 m
}
`;
  const report = off(behind, [two[0] as string, "a"], [0.5, 0.5]);
  expect(lampOf(report, "rim")).toMatchObject({ stops: null, reason: "no reading gets light of it" });
  expect(lampOf(report, "key").stops).toBeCloseTo(0.5, 3);
});

describe("patterns that are none", () => {
  const walled = (behind: string, more = ""): string =>
    `${open()}set { flat back { size: 3 x 3 m, at: offset(behind: ${behind}), reflectance: 0 % }${more} }\n`;

  test("a surface less than 30 cm behind the face is no background", () => {
    // The face of one of 1.7 m is 9.7 cm before the mark.
    const found = (behind: string): readonly string[] =>
      kinds(off(walled(behind), [...two, "back.left"], [0, 0, -0.6]));
    expect(found("15 cm")).not.toContain("background");
    expect(found("25 cm")).toContain("background");
  });

  test("nor is one that is off by no more than is acted on, 0.3 stop", () => {
    const found = (by: number): readonly string[] =>
      kinds(off(walled("2 m"), [...two, "back.left"], [0, 0, by]));
    expect(found(-0.25)).not.toContain("background");
    expect(found(-0.35)).toContain("background");
  });

  test("nor is one where the face is off as well, or is not read at all", () => {
    const found = (at: readonly string[], stops: readonly number[]): readonly string[] =>
      kinds(off(walled("2 m"), at, stops));
    expect(found([...two, "back.left"], [-0.6, -0.6, -0.6])).not.toContain("background");
    expect(found([...two, "back.left"], [0, -0.25, -0.6])).not.toContain("background");
    expect(found(["back.left", "back.right"], [-0.6, -0.6])).not.toContain("background");
  });

  test("nor is somebody who stands further back", () => {
    const behind = open()
      .replace("subject {", "subject ana {")
      .replace(
        "light key {",
        "subject ben { height: 1.7 m, at: offset(behind: 1 m, right: 1 m) }\nlight key { aim: ana.face,",
      );
    const at = ["ana.face.disc(towards: key)", "ana.face.dome(towards: key)", "ben.face.disc(towards: key)"];
    expect(kinds(off(behind, at, [0, 0, -0.6]))).not.toContain("background");
  });

  test("a background off to both sides is none", () => {
    const found = (stops: readonly number[]): readonly string[] =>
      kinds(off(walled("2 m"), [...two, "back.left", "back.right"], stops));
    expect(found([0, 0, -0.6, -0.5])).toContain("background");
    expect(found([0, 0, -0.6, 0.6])).not.toContain("background");
  });

  test("a dome that is off beside a dome that agrees does not say that a disc looked elsewhere", () => {
    const domes = ["face.dome(towards: key)", "face.dome(towards: camera)"];
    expect(kinds(off(open(), domes, [-0.6, 0]))).not.toContain("meter-aim");
  });
});
