import { describe, expect, test } from "vitest";
import {
  apertureAtMost,
  isoAtLeast,
  nominalShutter,
  shutterAtMost,
} from "../../../src/report/say/nominal.js";
import { ceilTo, fixed, floorTo, list, threeFigures, twoFigures } from "../../../src/report/say/number.js";
import { overUnder, sideWords } from "../../../src/report/say/over-under.js";
import {
  sayAngle,
  sayContrast,
  sayEdge,
  sayFNumber,
  sayLength,
  sayTime,
} from "../../../src/report/say/quantity.js";
import { hardnessWord } from "../../../src/report/words.js";

describe("numbers", () => {
  test("an f-number is a full stop and tenths, and never +1.0", () => {
    const plus = (stops: number): string => sayFNumber(8 * Math.exp((stops / 2) * Math.LN2));
    expect(plus(0)).toBe("f/8");
    expect(plus(0.04)).toBe("f/8");
    expect(plus(0.7)).toBe("f/8 +0.7");
    expect(plus(0.94)).toBe("f/8 +0.9");
    expect(plus(0.96)).toBe("f/11");
    expect(plus(-0.04)).toBe("f/8");
    expect(plus(-0.06)).toBe("f/5.6 +0.9");
  });

  test("a contrast is a ratio and stops", () => {
    expect(sayContrast(Math.log2(2.9))).toBe("2.9:1 (1.5 stop)");
    expect(sayContrast(2)).toBe("4:1 (2.0 stop)");
    expect(sayContrast(-1)).toBe("1:2 (-1.0 stop)");
  });

  test("lengths, edges and angles have the figures one reads", () => {
    expect([sayLength(2.3), sayLength(0.35), sayLength(0.0083)]).toEqual(["2.30 m", "35 cm", "8.3 mm"]);
    expect([sayEdge(0.0083), sayEdge(0.12), sayEdge(0.0104), sayEdge(0.00042)]).toEqual([
      "8.3 mm",
      "120 mm",
      "10.4 mm",
      "0.42 mm",
    ]);
    expect([threeFigures(4.976), threeFigures(12345), threeFigures(0.0834)]).toEqual([
      "4.98",
      "12345",
      "0.0834",
    ]);
    expect([sayAngle(0.917), sayAngle(4.77), sayAngle(31.2)]).toEqual(["0.92 deg", "4.8 deg", "31 deg"]);
    expect([fixed(-0.04, 1), fixed(-0.06, 1)]).toEqual(["0.0", "-0.1"]);
    expect([twoFigures(0.0834), twoFigures(1.2), twoFigures(470.4), twoFigures(9.97)]).toEqual([
      "0.083",
      "1.2",
      "470",
      "10",
    ]);
  });

  test("rounding to one side forgives a hair only", () => {
    expect([floorTo(2.35, 0.01), floorTo(2.359, 0.01), ceilTo(2.35, 0.01), ceilTo(2.351, 0.01)]).toEqual([
      2.35, 2.35, 2.35, 2.36,
    ]);
    expect(ceilTo(2.3 / 0.1 / 10, 0.1)).toBe(2.3);
  });
});

describe("the series of the trade", () => {
  test("exact values have their dial's text", () => {
    expect(nominalShutter(1 / 64)).toBe("1/60 s");
    expect(sayTime(1 / 64)).toBe("1/60 s");
    expect(sayTime(1 / 70)).toBe("1/70 s");
    expect(shutterAtMost(1 / 200)?.text).toBe("1/200 s");
    expect(isoAtLeast(201)?.text).toBe("ISO 250");
    expect(apertureAtMost(7.9)?.text).toBe("f/7.1");
  });
});

describe("words", () => {
  test("sides and differences", () => {
    expect([sideWords(-35), sideWords(35), sideWords(0), sideWords(-140), sideWords(180)]).toEqual([
      "camera-left",
      "camera-right",
      "the camera's side",
      "behind, camera-left",
      "behind the subject",
    ]);
    expect([overUnder(0.42, "it"), overUnder(-1, "it"), overUnder(0.03, "it")]).toEqual([
      "0.4 stop over it",
      "1.0 stop under it",
      "at it",
    ]);
    expect(list(["a", "b", "c"])).toBe("a, b and c");
  });

  test("hardness by angular size, each step with its end", () => {
    expect([0.5, 1, 1.1, 3, 9.9, 25, 60, 61].map(hardnessWord)).toEqual([
      "crisp",
      "crisp",
      "hard",
      "hard",
      "medium-hard",
      "medium",
      "soft",
      "very soft",
    ]);
  });
});
