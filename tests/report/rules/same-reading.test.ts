import { describe, expect, test } from "vitest";
import { exp2 } from "../../../src/core/exp2.js";
import { run } from "../../../src/pipeline.js";
import { atPower, withSource } from "../../../src/report/change/move-source.js";
import { faceChange } from "../../../src/report/rules/key-light.js";
import { powerWords } from "../../../src/report/rules/power-words.js";
import type { Report } from "../../../src/report/schema/report.js";
import type { Source } from "../../../src/scene/types.js";
import { dish, numberAfter, planOf } from "../../helpers/plan.js";

function reportOf(text: string): Report {
  const { evaluated, diagnostics } = run({ name: "same.light", text });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report;
}

const remedyOf = (report: Report, code: string): string =>
  report.warnings.find((row) => row.code === code)?.remedy ?? "";

/** What a disc at the face that looks at the key gets, lx s. */
function faceOf({ stations }: Report): number {
  const face = stations.find(({ name, receptor }) => name === "face" && receptor === "disc");
  if (face === undefined) throw new Error("no face");
  return face.exposure.total;
}

/** Stops by which the face of a second recipe gets more. */
const gained = (before: string, after: string): number =>
  Math.log2(faceOf(reportOf(after)) / faceOf(reportOf(before)));

interface Places {
  readonly away?: number;
  readonly high?: number;
  readonly power?: string;
  readonly side?: string;
}

const yard = ({ away = 1.2, high = 2, power = "full - 4 stop" }: Places) => `halfshade 1
recipe "Stable door"
subject { height: 1.7 m }
light key { role: key, shape: disc(30 cm), calibration: metered(f/11, at: 2 m, ISO 100), distance: ${away} m, bearing: right(50 deg), height: ${high} m, power: ${power} }
light wash { role: fill, shape: disc(30 cm), calibration: metered(f/11, at: 2 m, ISO 100), position: offset(right: 3.5 m, ahead: 3 m, up: 1.2 m), power: 1/2 }
camera { held: upright, focal_length: 50 mm, aperture: f/8, shutter: 1/160 s, sensitivity: ISO 100, distance: 4.5 m, height: 1.2 m }
thresholds { head_to_toe: 0.4 stop }
`;

/** A fill whose rim is in a wooden crate beside it. */
const crate = ({ side = "tape", power = "1/4" }: Places) => `halfshade 1
recipe "Crate"
subject { height: 1.7 m }
set { box crate { size: 40 x 40 x 150 cm, at: offset(right: 1.5 m, ahead: 1.1 m), reflectance: 20 % } }
light key { role: key, shape: disc(30 cm), calibration: metered(f/8, at: 2 m, ISO 100), distance: 2.4 m, bearing: left(5 deg), height: 2 m, power: 1/4 }
light fill { role: fill, shape: disc(40 cm), calibration: metered(f/11, at: 2 m, ISO 100), ${side === "tape" ? "position: offset(right: 1.2 m, ahead: 1.2 m, up: 1.4 m)" : side}, power: ${power} }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/160 s, sensitivity: ISO 100, distance: 3 m, height: 1.5 m }
`;

describe("power for the same reading, with a second lamp on", () => {
  test("gives that reading when the key is moved and set as it says", () => {
    const remedy = remedyOf(reportOf(yard({})), "head-to-toe");
    const away = numberAfter(remedy, "back to", "m");
    const high = numberAfter(remedy, "from the face,", "m high");
    const more = numberAfter(remedy, "with", "stop more power");
    const there = { away, high };
    expect(Math.abs(gained(yard({}), yard({ ...there, power: `full - ${4 - more} stop` })))).toBeLessThan(
      0.05,
    );
    // The wash goes on as before: the key has to give more than the whole reading loses.
    const lost = -gained(yard({}), yard(there));
    expect(lost).toBeGreaterThan(0.3);
    expect(more).toBeGreaterThan(lost + 0.3);
  });

  test("and so for a lamp that is not the key", () => {
    const remedy = remedyOf(reportOf(crate({})), "lamp-inside");
    const away = numberAfter(remedy, "Move fill to", "m from the face");
    const high = numberAfter(remedy, "same line,", "m high");
    const turn = /with ([\d.]+) stop (more|less) power/.exec(remedy);
    const more = Number(turn?.[1]) * (turn?.[2] === "less" ? -1 : 1);
    const side = `distance: ${away} m, bearing: right(45 deg), height: ${high} m`;
    const held = `full - ${2 - more} stop`;
    expect(Math.abs(gained(crate({}), crate({ side, power: held })))).toBeLessThan(0.05);
    expect(Math.abs(gained(crate({}), crate({ side })))).toBeGreaterThan(0.05);
  });

  // A key at half power has one stop left; both lamps stand at the same place and give the same.
  const plan = planOf({ lights: [dish(), dish({}, "second")] });
  const [key] = plan.scene.sources as readonly [Source, Source];
  const turned = (index: number, stops: number) =>
    withSource(plan, index, atPower(plan.scene.sources[index] as Source, stops));

  test("takes no more ISO than the whole reading lacks", () => {
    // The key gives half. Less 2.9 stop, and with the one stop that there is, the whole is (1 + 2^-1.9) / 2, for which
    // ISO 200 becomes 315, or 320 on the dial; 1.9 stop would be ISO 800.
    expect(faceChange(plan, turned(0, -2.9))).toBeCloseTo(Math.log2((1 + exp2(-2.9)) / 2), 6);
    expect(powerWords(plan, turned(0, -2.9), key)).toMatch(
      /2\.9 stop more .* which is 1\.9 stop .*\(ISO 320 /,
    );
  });

  test("is no matter of a lamp that the others outdo", () => {
    // Four times half of the light is twice the whole.
    expect(powerWords(plan, turned(1, 2), key)).toBe(
      ", and turn the others down: alone they then give the face 1.0 stop more than it reads now",
    );
  });
});
