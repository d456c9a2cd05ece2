import { describe, expect, test } from "vitest";
import { untold } from "../../../src/report/session/causes.js";
import { areTwo } from "../../../src/report/session/pairs.js";
import { day, lampOf, metered, places, shed } from "./days.js";

const disc = "face.disc(towards: key)";
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
    expect(amountOf("output")).toBeCloseTo(-0.9, 2);
    expect(amountOf("distance")).toBeCloseTo(-0.5, 2);
    expect(report.diagnosis).toContain("two do together");
    expect(report.pairs.length).toBeLessThanOrEqual(3);
    expect(report.pairs.map(({ left }) => left)).toEqual(
      [...report.pairs.map(({ left }) => left)].sort((a, b) => a - b),
    );
  });

  test("are not two about the place of one lamp, whatever the truth", () => {
    const truth = shed.replace("distance: 2 m", "distance: 2.6 m").replace("left(40 deg)", "left(65 deg)");
    const { pairs } = day(shed, metered(truth, all));
    for (const { causes } of pairs) {
      const placed = causes.filter(({ kind }) => ["distance", "height", "bearing"].includes(kind));
      expect(new Set(placed.map(({ about }) => about)).size).toBe(placed.length);
    }
  });

  test("are not looked for where one thing does, nor with three readings", () => {
    expect(day(shed, metered(shed.replace("full - 2 stop", "full - 2.7 stop"), all)).pairs).toEqual([]);
    expect(day(shed, metered(shed, places.slice(0, 3), [0.9, -0.9, 0.4])).pairs).toEqual([]);
  });
});

/** Two small lamps in the open, each read by itself twice: every amount can be said beforehand. */
const yard = `halfshade 1
recipe "The open yard at dusk"
subject { height: 1.7 m, skin: 0 %, cloth: 0 %, hair: 0 % }
light key { role: key, shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: left(20 deg), height: 1.9 m }
light fill { shape: disc(4 cm), output: 400 lm s, distance: 2 m, bearing: right(60 deg), height: 1.9 m }
camera {
  held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m
}
`;
const each = ["key", "fill"].flatMap((name) =>
  ["disc", "dome"].map((meter) => `face.${meter}(towards: ${name}, only: ${name})`),
);

describe("two lamps, each by its own readings", () => {
  const pairsIn = (stops: readonly number[]) =>
    day(yard, metered(yard, each, stops)).pairs.map(({ causes, left }) => ({
      what: causes.map(({ kind, about }) => `${kind} ${about}`),
      amounts: causes.map(({ amount }) => amount),
      left,
    }));

  test("are off by what each reads; tapes do as well, and three pairs are named", () => {
    const pairs = pairsIn([-1, -1, 0.6, 0.6]);
    expect(pairs).toHaveLength(3);
    for (const { what, amounts, left } of pairs) {
      expect(left).toBeLessThan(0.01);
      what.forEach((one, i) => {
        const stops = one.endsWith("key") ? -1 : 0.6;
        if (one.startsWith("output") && !what.includes("all null")) expect(amounts[i]).toBeCloseTo(stops, 2);
        // A lamp of 2 m gives so much less at 2 m x 2^(-stops / 2).
        if (one.startsWith("distance") && !what.includes("all null"))
          expect(amounts[i]).toBeCloseTo(2 * 2 ** (-stops / 2) - 2, 2);
      });
    }
    expect(pairs.map(({ what }) => what)).toContainEqual(["output key", "output fill"]);
  });

  test("a reading that is less sure counts for less", () => {
    const lines = metered(yard, each, [-1, -0.84, 0.6, 0.6]);
    const { pairs } = day(yard, [lines[0], `${lines[1]} +- 1 stop`, ...lines.slice(2)] as string[]);
    const outputs = pairs.find(({ causes }) => causes.every(({ kind }) => kind === "output"));
    // (100 x -1 + 1 x -0.84) / 101
    expect(outputs?.causes[0]?.amount).toBeCloseTo(-0.998, 2);
  });

  test("are not told where a reading is left off by more than is noted", () => {
    expect(pairsIn([-1.17, -0.83, 0.6, 0.6])).not.toEqual([]);
    expect(pairsIn([-1.225, -0.775, 0.6, 0.6])).toEqual([]);
  });

  test("are not told where less than half of what was off is gone", () => {
    expect(pairsIn([0.24, -0.14, 0.24, -0.14])).toEqual([]);
  });

  test("are no tapes that would be off by more than a metre", () => {
    const named = pairsIn([-2.4, -2.4, 0.6, 0.6]).flatMap(({ what }) => what);
    expect(named).toContain("output key");
    expect(named).not.toContain("distance key");
  });
});

/** The same lamps, each read by itself at the face and 70 cm before it: there a tape does more than a dial. */
const deep = yard.replace(
  "hair: 0 % }",
  "hair: 0 %, point tokey { up: 1.6 m, ahead: 70 cm, faces: key }, point tofill { up: 1.6 m, ahead: 70 cm, right: 60 cm, faces: fill } }",
);
const eachDeep = [
  ...each,
  "tokey.disc(towards: key, only: key)",
  "tokey.dome(towards: key, only: key)",
  "tofill.disc(towards: fill, only: fill)",
  "tofill.dome(towards: fill, only: fill)",
];

describe("two tapes", () => {
  const tapesIn = (key: number, fill: number): readonly string[] => {
    let lamp = 0;
    const truth = deep.replaceAll("distance: 2 m", () => `distance: ${lamp++ === 0 ? 2 + key : 2 + fill} m`);
    return day(deep, metered(truth, eachDeep)).pairs.map(({ causes }) =>
      causes.map(({ kind, about, amount }) => `${kind} ${about} ${amount?.toFixed(1)}`).join(", "),
    );
  };

  test("are told where both are within a metre", () => {
    expect(tapesIn(0.6, -0.5)).toContain("distance key 0.6, distance fill -0.5");
  });

  test("and not where either is off by more", () => {
    expect(tapesIn(1.4, -0.5).join()).not.toContain("distance key 1.4");
    expect(tapesIn(-0.5, 1.4).join()).not.toContain("distance fill 1.4");
  });
});

/** The lamp of the open yard alone, read by domes and discs that look in four directions, at the face and before it. */
const alone = deep
  .replace(/light fill \{.*\}\n/, "")
  .replace(/, point tofill \{[^}]*\}/, "")
  .replace(
    "point tokey {",
    "point atleft { up: 1.58 m, ahead: 12 cm, faces: left(80 deg) }, point atlens { up: 1.58 m, ahead: 12 cm, faces: left(0 deg) }, point tokey {",
  );

describe("two things about one lamp", () => {
  const pairsIn = (truth: string, at: readonly string[]): readonly string[] =>
    day(alone, metered(truth, at)).pairs.map(({ causes }) =>
      causes.map(({ kind, about }) => `${kind} ${about}`).join(", "),
    );

  test("may be what it gives and where it stands, and are not two placements", () => {
    const truth = alone.replace("distance: 2 m", "distance: 2.6 m").replace("left(20 deg)", "left(55 deg)");
    const found = pairsIn(truth, [disc, "atleft", "atlens", "tokey"]);
    expect(found).toContain("all null, bearing key");
    expect(found).not.toContain("distance key, bearing key");
  });

  test("are not told where they change the readings nearly alike: a dial and a tape", () => {
    // The slopes at 2 m and 1.4 m are as 1 to 1.4: a cosine of 0.985.
    const truth = alone.replace("distance: 2 m", "distance: 1.4 m").replace("output: 400", "output: 141");
    const found = pairsIn(truth, [disc, "face.dome(towards: key)", "tokey", "tokey.dome(towards: key)"]);
    expect(found).not.toContain("all null, distance key");
  });
});

test.each([
  ["distance", "key", "bearing", "key", false],
  ["height", "key", "distance", "key", false],
  ["distance", "key", "distance", "fill", true],
  ["output", "key", "distance", "key", true],
  ["distance", "key", "reflectance", "walls", true],
] as const)("%s of %s and %s of %s: tried as a pair, %s", (kind, about, other, its, tried) => {
  expect(areTwo({ kind, about }, { kind: other, about: its })).toBe(tried);
  expect(areTwo({ kind: other, about: its }, { kind, about })).toBe(tried);
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
