import { describe, expect, test } from "vitest";
import { belowFull, disc, efficacy, gel, gels, rectangle } from "../../../src/model/make/lamps.js";
import { left, named, offset, right, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { LevelValue } from "../../../src/model/values.js";
import { backgroundStation } from "../../../src/report/light/background.js";
import { readingAt } from "../../../src/report/light/reading.js";
import { backgroundOff } from "../../../src/report/rules/background-off.rule.js";
import { colourMix } from "../../../src/report/rules/colour-mix.rule.js";
import { headToToe } from "../../../src/report/rules/head-to-toe.rule.js";
import { meterTrap } from "../../../src/report/rules/meter-trap.rule.js";
import { nearField } from "../../../src/report/rules/near-field.rule.js";
import { peopleUneven } from "../../../src/report/rules/people-uneven.rule.js";
import { uncalibrated } from "../../../src/report/rules/uncalibrated.rule.js";
import { cm, deg, kelvin, lmPerWatt, m, mired, mm, stops, ws } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import {
  camera,
  dish,
  dishOnFloor,
  finding,
  findings,
  numberAfter,
  planOf,
  setOf,
} from "../../helpers/plan.js";

describe("uncalibrated", () => {
  const guess = { calibration: efficacy(lmPerWatt(30)), full_power: ws(400) };

  test("speaks for watt-seconds with an efficacy, not for a meter reading", () => {
    expect(findings(uncalibrated, { lights: [dish(guess)] })).toHaveLength(1);
    expect(findings(uncalibrated)).toHaveLength(0);
    const thresholds = [{ name: "uncalibrated", value: 1.01, unit: "stop", written: "1.01 stop" }];
    expect(findings(uncalibrated, { lights: [dish(guess)], thresholds })).toHaveLength(0);
  });

  test("the reading it foretells is that of a uniform disc on its axis", () => {
    const { remedy } = finding(uncalibrated, { lights: [dish(guess)] });
    // Q = 12,000 lm s; E = Q / (pi r2) x r2 / (r2 + d2) = Q / (pi (0.01 + 4)); N = sqrt(E 100 / 250).
    const fNumber = Math.sqrt((12_000 / (Math.PI * 4.01) / 250) * 100);
    expect(fNumber).toBeCloseTo(19.52, 2);
    expect(remedy).toContain("f/16 +0.6 at ISO 100");
  });
});

describe("near-field", () => {
  const box = (away: number) => ({
    lights: [dish({ shape: rectangle(m(1), m(0.5)), distance: tape(m(away)), height: m(1.6) })],
  });

  test("speaks nearer than 1.5 times the longer side", () => {
    expect(findings(nearField, box(1.49))).toHaveLength(1);
    expect(findings(nearField, box(1.51))).toHaveLength(0);
  });

  test("the loss to twice the distance is that of the area formula", () => {
    const round = dish({ shape: disc(m(1)), distance: tape(m(1)), height: m(1.6) });
    const { remedy } = finding(nearField, { lights: [round] });
    // Square on to a disc: log2((R2 + 4 d2) / (R2 + d2)) = log2(4.25 / 1.25).
    expect(numberAfter(remedy, "loses", "stop")).toBeCloseTo(Math.log2(4.25 / 1.25), 1);
  });
});

describe("meter-trap", () => {
  const side = (bearing: number) => ({
    lights: [dish({ bearing: left(deg(bearing)), height: m(1.59), distance: tape(m(4)) })],
  });

  test("speaks when disc and dome differ by more than a stop", () => {
    // Far lamp level with the face: log2(340 / 250) + log2(2 / (1 + cos a)) = 1 at cos a = 0.36.
    expect(findings(meterTrap, side(66))).toHaveLength(0);
    expect(findings(meterTrap, side(71))).toHaveLength(1);
    expect(findings(meterTrap, { ...side(80), camera: null })).toHaveLength(0);
  });

  test("names both readings and the middle", () => {
    const plan = planOf(side(90));
    const disc90 = plan.scene.stations.find((row) => row.receptor === "disc");
    if (disc90 === undefined) throw new Error("no station");
    const { exposure } = readingAt(plan, disc90);
    const { remedy } = finding(meterTrap, side(90));
    const match = /Set f\/([\d.]+)(?: \+0\.(\d))? for the side towards/.exec(remedy);
    const named_ = 2 * Math.log2(Number(match?.[1])) + Number(match?.[2] ?? 0) / 10;
    expect(Math.abs(named_ - Math.log2((exposure * 200) / 250))).toBeLessThan(0.1);
  });
});

describe("head-to-toe", () => {
  const whole = block("camera", null, { ...camera, focal_length: mm(35) });
  const at = (away: number, height = 2.2) => ({
    camera: whole,
    lights: [dish({ distance: tape(m(away)), height: m(height) })],
  });

  test("is a note above half a stop and a check above one", () => {
    expect(findings(headToToe, at(6))).toHaveLength(0);
    expect(finding(headToToe, at(2.4)).severity).toBe("note");
    expect(finding(headToToe, at(1.6)).severity).toBe("check");
    expect(numberAfter(finding(headToToe, at(2.4)).message, "are", "stop")).toBe(0.8);
  });

  test("is silent where the shins are not in the frame", () => {
    expect(findings(headToToe, { ...at(1.6), camera })).toHaveLength(0);
    expect(findings(headToToe, { ...at(1.6), camera: null })).toHaveLength(1);
  });

  test("its remedy is silent and no further than needed", () => {
    const { remedy } = finding(headToToe, at(2.4));
    const away = numberAfter(remedy, "back to", "m");
    const line = (d: number): number => 1.5861 + ((2.2 - 1.5861) * d) / 2.4;
    expect(findings(headToToe, at(away, line(away)))).toHaveLength(0);
    expect(findings(headToToe, at(away - 0.05, line(away - 0.05)))).toHaveLength(1);
  });
});

describe("people-uneven", () => {
  const two = (away: number, height = 2.2) => ({
    subjects: [
      block("subject", "ana", { height: m(1.7) }),
      block("subject", "ben", { height: m(1.7), at: offset({ right: cm(60), behind: cm(20) }) }),
    ],
    lights: [dish({ distance: tape(m(away)), height: m(height) })],
  });

  test("speaks when faces differ by more than 0.3 stop", () => {
    expect(finding(peopleUneven, two(2)).message).toMatch(/^ben gets 0\.\d stop less than ana/);
    expect(findings(peopleUneven, two(8))).toHaveLength(0);
    expect(findings(peopleUneven)).toHaveLength(0);
  });

  test("its remedy is silent and no further than needed", () => {
    const { remedy } = finding(peopleUneven, two(2));
    const away = numberAfter(remedy, "back to", "m");
    const line = (d: number): number => 1.5861 + ((2.2 - 1.5861) * d) / 2;
    expect(findings(peopleUneven, two(away, line(away)))).toHaveLength(0);
    expect(findings(peopleUneven, two(away - 0.1, line(away - 0.1)))).toHaveLength(1);
  });
});

describe("background-off", () => {
  const wish = (amount: number, side: "under" | "over" = "under"): LevelValue => ({
    stops: stops(amount),
    side,
    of: {
      kind: "reading",
      type: "reading",
      station: "face",
      receptor: "disc",
      towards: named("key"),
      lights: [],
    },
    written: "",
  });
  const shot = (amount: number, lamp = 3) => ({
    intent: block("intent", null, { background: wish(amount) }),
    set: setOf(block("flat", "back", { size: size(m(2), m(2)), at: offset({ behind: m(1.5) }) }) as never),
    lights: [
      dish({ role: "key" }),
      dishOnFloor(
        {
          role: "background",
          bearing: right(deg(100)),
          height: m(1),
          aim: named("back"),
          power: belowFull(stops(lamp)),
        },
        "wash",
      ),
    ],
  });
  const plan = planOf(shot(1));
  const station = backgroundStation(plan.scene);
  const face = plan.scene.stations[0];
  if (station === null || face === undefined) throw new Error("no station");
  const level = Math.log2(readingAt(plan, face).exposure / readingAt(plan, station).exposure);

  test("takes the middle of the flat behind the subject", () => {
    expect(station.name).toBe("back");
  });

  test("speaks when the background is more than 0.4 stop off its wish", () => {
    expect(findings(backgroundOff, shot(level + 0.39))).toHaveLength(0);
    expect(finding(backgroundOff, shot(level + 0.41)).message).toContain("0.4 stop too bright");
    expect(finding(backgroundOff, shot(level - 0.5)).message).toContain("too dark");
    expect(findings(backgroundOff, { ...shot(9), intent: null })).toHaveLength(0);
  });

  test("turned as it says, the background lamp meets the wish to a tenth of a stop", () => {
    const { remedy } = finding(backgroundOff, shot(level - 0.8));
    const up = numberAfter(remedy, "up by", "stop");
    expect(findings(backgroundOff, shot(level - 0.8, 3 - up))).toHaveLength(0);
    expect(remedy).toMatch(/then (at its wish|0\.1 stop (over|under) its wish)/);
  });
});

describe("colour-mix", () => {
  const pair = (colour: number, down = 1, more: object = {}) => ({
    lights: [
      dish({ role: "key" }),
      dish(
        { bearing: right(deg(40)), power: belowFull(stops(1 + down)), colour: kelvin(colour), ...more },
        "fill",
      ),
    ],
  });

  test("speaks beyond 30 mired for lights that count on the face", () => {
    // 5600 K is 178.57 mired; 30 mired more is 4794.5 K.
    expect(findings(colourMix, pair(4780))).toHaveLength(1);
    expect(findings(colourMix, pair(4810))).toHaveLength(0);
    expect(findings(colourMix, pair(3200, 3.2))).toHaveLength(0);
    expect(findings(colourMix, pair(3200, 1, { role: "rim" }))).toHaveLength(0);
  });

  test("the gel it names makes the lights alike", () => {
    const { remedy } = finding(colourMix, pair(3200));
    const shift = numberAfter(remedy, "gel of", "mired");
    expect(remedy).toContain("cool gel");
    expect(
      findings(colourMix, pair(3200, 1, { gel: gels(gel("cool", mired(shift), stops(0))) })),
    ).toHaveLength(0);
    const warm = finding(colourMix, pair(9000));
    expect(warm.remedy).toContain("warm gel");
    const back = numberAfter(warm.remedy, "gel of", "mired");
    expect(
      findings(colourMix, pair(9000, 1, { gel: gels(gel("warm", mired(back), stops(0))) })),
    ).toHaveLength(0);
  });
});
