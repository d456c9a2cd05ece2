import { describe, expect, test } from "vitest";
import { buildReport } from "../../../src/report/build.js";
import { boomBalance } from "../../../src/report/rules/boom-balance.rule.js";
import { caution } from "../../../src/report/rules/rule.js";
import { bagFor, standTip, tipForce } from "../../../src/report/rules/stand-tip.rule.js";
import { cm, kg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dishOnFloor, finding, findings, numberAfter, planOf } from "../../helpers/plan.js";

const on = (height: number, stand: object) => ({
  lights: [dishOnFloor({ height: m(height), parts: [block("stand", null, stand)] } as never)],
});
const light = { weight: kg(2), head: kg(2.5), feet: cm(55) };

describe("stand-tip", () => {
  test("the push is weight x half the radius over the height", () => {
    const stand = {
      highest: null,
      feet: 0.6,
      weight: 3,
      head: 2,
      bag: 5,
      boom: null,
      tail: 0.4,
      counterweight: 0,
    };
    expect(tipForce(stand, 2)).toBeCloseTo((10 * 9.81 * 0.3) / 2, 12);
  });

  test("speaks below 10 N, with the bag as with more weight", () => {
    // 10 N at 1.9 m and 0.55 m takes 10 x 1.9 / (9.81 x 0.275) = 7.04 kg.
    expect(findings(standTip, on(1.9, { ...light, bag: kg(2.5) }))).toHaveLength(1);
    expect(findings(standTip, on(1.9, { ...light, bag: kg(2.6) }))).toHaveLength(0);
  });

  test("asks for a bag above 2 m and on a boom, however heavy the stand", () => {
    const heavy = { weight: kg(20), head: kg(2), feet: cm(60) };
    expect(findings(standTip, on(2.01, heavy))).toHaveLength(1);
    expect(findings(standTip, on(1.99, heavy))).toHaveLength(0);
    expect(findings(standTip, on(1.99, { ...heavy, boom: m(1), counterweight: kg(5) }))).toHaveLength(1);
    expect(findings(standTip, on(2.01, { ...heavy, bag: kg(5) }))).toHaveLength(0);
    expect(findings(standTip)).toHaveLength(0);
  });

  test("with the bag it names it is silent, and bears what it says", () => {
    const { remedy } = finding(standTip, on(2.6, light));
    const bag = numberAfter(remedy, "bag of", "kg");
    expect(findings(standTip, on(2.6, { ...light, bag: kg(bag) }))).toHaveLength(0);
    expect(numberAfter(remedy, "bears", "N")).toBe(Math.round(((4.5 + bag) * 9.81 * 0.275) / 2.6));
    expect(bagFor({ ...standard, weight: 30 }, 2.6, 10)).toBe(5);
  });

  test("carries the caution into the report", () => {
    const { recipe, scene } = planOf(on(2.6, light));
    const warning = buildReport(recipe, scene).warnings.find((row) => row.code === "stand-tip");
    expect(warning?.caution).toBe(caution);
    expect(warning?.severity).toBe("stop");
    for (const word of ["maker's manual", "rules of the place", "licensed", "no safety approval"]) {
      expect(caution).toContain(word);
    }
  });
});

const standard = {
  highest: null,
  feet: 0.5,
  weight: 2.5,
  head: 2,
  bag: 0,
  boom: null,
  tail: 0.4,
  counterweight: 0,
};

describe("boom-balance", () => {
  const boom = (counterweight: number) =>
    on(1.9, { head: kg(2.5), boom: m(1.4), tail: cm(50), bag: kg(10), counterweight: kg(counterweight) });

  test("speaks when the lever is heavier at the lamp", () => {
    // 2.5 kg x 1.4 m = 3.5 kg m = 7 kg x 0.5 m.
    expect(findings(boomBalance, boom(6.9))).toHaveLength(1);
    expect(findings(boomBalance, boom(7))).toHaveLength(0);
    expect(findings(boomBalance, on(1.9, light))).toHaveLength(0);
  });

  test("with the counterweight it names it is silent", () => {
    const { remedy } = finding(boomBalance, boom(2));
    expect(numberAfter(remedy, "counterweight of", "kg")).toBe(7);
    expect(findings(boomBalance, boom(numberAfter(remedy, "counterweight of", "kg")))).toHaveLength(0);
  });
});
