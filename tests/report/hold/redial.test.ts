import { describe, expect, test } from "vitest";
import { compile } from "../../../src/compile.js";
import type { Recipe } from "../../../src/model/types.js";
import { evaluateSetUps, type SetUp } from "../../../src/set-ups.js";

const ROOM = `halfshade 1
recipe "The glass blower's door"
subject { height: 1.75 m }
`;
const CAMERA = `camera { held: level, focal_length: 85 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
`;
const LIGHTS = `
light key { role: key, shape: sphere(10 cm), calibration: metered(f/16, at: 2 m, ISO 100), lowest_power: full - 6 stop, power: 1/2, distance: 2 m, bearing: left(40 deg), elevation: 20 deg }
light fill { shape: disc(1 m), calibration: metered(f/5.6, at: 2 m, ISO 100), distance: 2 m, bearing: right(30 deg), elevation: 10 deg }
`;

function recipeOf(lines: string, room = ""): Recipe {
  const { recipe, diagnostics } = compile({ name: "a.light", text: ROOM + room + CAMERA + LIGHTS + lines });
  expect(diagnostics.filter((one) => one.severity === "error")).toEqual([]);
  if (recipe === null) throw new Error("no recipe");
  return recipe;
}

const setUps = (lines: string, room = ""): readonly SetUp[] => evaluateSetUps(recipeOf(lines, room));
const station = (setUp: SetUp | undefined, name: string, looks: string): number =>
  setUp?.report.stations.find((row) => row.name === name && row.looks === looks)?.f_number ?? Number.NaN;

describe("a reading is held by power", () => {
  // Meters add up light, so the re-dialled reading is the target itself: f/8 on the full-stop series is exactly 8.
  test.each([
    ["alone", "face.disc(towards: key)", ""],
    ["in a room", "face.disc(towards: key)", "room { size: 6 x 7 x 3 m }\n"],
  ])("to the wanted f-number, %s", (_, reading, room) => {
    const [, held] = setUps(
      `variant "B" { key.distance: 2.5 m\n hold ${reading} is f/8 by key.power\n keep expectations }\n`,
      room,
    );
    expect(held?.held.map((row) => row.reason)).toEqual([null]);
    expect(station(held, "face", "towards key")).toBeCloseTo(8, 9);
  });

  test("to what it was before, without a target", () => {
    const [base, held] = setUps(
      'variant "B" { key.distance: 2.4 m\n remove fill\n hold face.disc(towards: key) by key.power\n keep expectations }\n',
    );
    expect(station(held, "face", "towards key")).toBeCloseTo(station(base, "face", "towards key"), 9);
    // Alone, the key has to make up for its own 2 log2(2.4 / 2) stop and for the fill.
    expect(held?.report.lights[0]?.power.below_full).toBeLessThan(1 - 2 * Math.log2(2.4 / 2));
  });

  test("of two lights by the same step", () => {
    const [base, held] = setUps(
      'variant "B" { camera.sensitivity: ISO 200\n hold face.disc(towards: key) is f/11 by key.power, fill.power\n keep expectations }\n',
    );
    const step = [0, 1].map(
      (i) =>
        (held?.report.lights[i]?.power.below_full ?? 0) - (base?.report.lights[i]?.power.below_full ?? 0),
    );
    expect(step[0]).toBeCloseTo(step[1] ?? Number.NaN, 12);
    expect(station(held, "face", "towards key")).toBeCloseTo(Math.exp(3.5 * Math.LN2), 9);
  });

  test("of a result that is no reading, by search", () => {
    const [, held] = setUps(
      'variant "B" { hold key_to_fill(key, fill) is 6:1 by fill.power\n expect key_to_fill(key, fill) is 6:1 within 0.1 stop }\n',
    );
    const [claim] = held?.report.expectations ?? [];
    expect(claim?.outcome).toBe("passed");
    expect(claim?.value).toBeCloseTo(Math.log2(6), 3);
  });

  test("misses by a hair at full power, and says by how much", () => {
    const [, held] = setUps(
      'variant "B" { key.distance: 2.02 m\n remove fill\n hold face.disc(towards: key) is f/16 by key.power\n keep expectations }\n',
    );
    const reason = held?.held[0]?.reason ?? "";
    // On the tape, and with nothing from the figure: 2 log2(2.02 / 2) = 0.029 stop; what the figure throws back helps.
    const short = Number(
      /^full power gives f\/\S+(?: \+\d\.\d)?, (0\.\d+) stop under what is held$/.exec(reason)?.[1],
    );
    expect(short, reason).toBeLessThan(0.031);
    expect(short).toBeGreaterThan(0.015);
    expect(short).toBeCloseTo(-2 * Math.log2(station(held, "face", "towards key") / 16), 3);
  });

  test.each<[string, string, string]>([
    ["too much is asked", "hold face.disc(towards: key) is f/32 by key.power", "full power gives f/"],
    [
      "too little is asked",
      "hold face.disc(towards: key) is f/2.8 by key.power",
      "the other lights alone give more",
    ],
    [
      "less than the dial has",
      "fill.power: off\n hold face.disc(towards: key) is f/1.4 by key.power",
      "the lowest setting gives f/",
    ],
    ["the light is off", "key.power: off\n hold face.disc(towards: fill) is f/4 by key.power", "key is off"],
    [
      "what it is held at cannot be had",
      "hold stops(face.disc(towards: key), shin.disc(towards: key)) is 1 stop by key.power",
      "no setting of key gives it",
    ],
  ])("not where %s, and says so", (_, lines, reason) => {
    const [, held] = setUps(`variant "B" { ${lines}\n keep expectations }\n`);
    expect(held?.held.map((row) => row.reason)).toEqual([expect.stringContaining(reason)]);
  });
});

describe("a size is held by distance", () => {
  test("of a sphere: 2 asin(r / d)", () => {
    const [, held] = setUps(
      'variant "B" { key.shape: sphere(30 cm)\n hold key.angular_size by key.distance\n keep expectations }\n',
    );
    expect(held?.recipe.lights[0]?.distance?.written).toBe("6 m");
    // Three times the size at three times the distance looks as large.
    expect(held?.report.lights[0]?.distance).toBeCloseTo(6, 5);
    expect(held?.held[0]?.setting).toBe("6.00 m");
  });

  test("of the elevation at the face, by height along the tape", () => {
    const [, held] = setUps(
      'variant "B" { key.height: 2 m\n hold key.elevation is 40 deg by key.height\n keep expectations }\n',
    );
    const light = held?.report.lights[0];
    expect(light?.elevation).toBeCloseTo(40, 5);
    // The tape keeps its length: the face of a figure of 1.75 m is 0.933 x 1.75 m up.
    expect(light?.height).toBeCloseTo(0.933 * 1.75 + 2 * Math.sin((40 * Math.PI) / 180), 5);
  });

  test("not where the light is placed otherwise", () => {
    const [, held] = setUps(
      'variant "B" { hold key.angular_size is 1 deg by key.floor_distance\n keep expectations }\n',
    );
    expect(held?.held[0]?.reason).toBe("key is not placed by its floor_distance");
  });
});

test("light is shared only where nothing changes by it", () => {
  const room = "room { size: 5 x 6 x 2.8 m }\n";
  const lines = `variant "Power" { key.power: 1/8\n keep expectations }
variant "Place" { fill.distance: 1.4 m\n keep expectations }
variant "Walls" { walls.reflectance: 5 %\n keep expectations }
`;
  const together = evaluateSetUps(recipeOf(lines, room));
  for (const title of ["Power", "Place", "Walls"]) {
    const alone = evaluateSetUps(recipeOf(lines, room), { titles: [title] })[1];
    expect(together.find((row) => row.variant === title)?.report).toEqual(alone?.report);
  }
  const own = recipeOf(lines, room).variants.find((row) => row.title === "Power")?.recipe;
  if (own === undefined) throw new Error("no variant");
  const [fresh] = evaluateSetUps({ ...own, holds: [] });
  expect({ ...together[1]?.report, variant: null }).toEqual(fresh?.report);
});

describe("a hold that cannot be kept says so", () => {
  test("where the power changes nothing, and the lamp is left as it is", () => {
    const [base, held] = setUps(
      'variant "B" { hold key.angular_size is 4 deg by key.power\n keep expectations }\n',
    );
    expect(held?.held.map((row) => row.reason)).toEqual(["it does not follow the power of key"]);
    expect(held?.report.lights[0]?.power.below_full).toBe(base?.report.lights[0]?.power.below_full);
  });

  test("without a target, too", () => {
    const [base, held] = setUps('variant "B" { hold key.elevation by key.power\n keep expectations }\n');
    expect(held?.held[0]?.reason).toBe("it does not follow the power of key");
    expect(held?.report.lights[0]?.power.below_full).toBe(base?.report.lights[0]?.power.below_full);
  });

  test("where a later one turns the same dial elsewhere", () => {
    const [, held] = setUps(
      'variant "B" { hold face.disc(towards: key) is f/8 by key.power\n hold face.disc(towards: fill) is f/11 by key.power\n keep expectations }\n',
    );
    const [first, second] = held?.held ?? [];
    expect(first?.reason).toMatch(/^a later hold leaves it at f\//);
    expect(second?.reason).toBeNull();
    expect(station(held, "face", "towards key")).not.toBeCloseTo(8, 2);
  });
});

test("a lamp that is held where it stands keeps the words of its place", () => {
  const [, held] = setUps(
    'variant "B" { fill.power: 1/2\n hold key.angular_size by key.distance\n keep expectations }\n',
  );
  expect(held?.recipe.lights[0]?.distance?.written).toBe("2 m");
});
