import { describe, expect, test } from "vitest";
import { gel, gels } from "../../../src/model/make/lamps.js";
import { tape } from "../../../src/model/make/points.js";
import { whiteBalanceOff } from "../../../src/report/rules/white-balance-off.rule.js";
import { kelvin, m, mired, stops } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, finding, findings, numberAfter } from "../../helpers/plan.js";

const lit = (colour: number, balance?: number, more: object = {}) => ({
  lights: [dish({ colour: kelvin(colour), ...more })],
  camera: block("camera", null, {
    ...camera,
    ...(balance === undefined ? {} : { balance: kelvin(balance) }),
  } as never),
});

describe("white-balance-off", () => {
  // 1e6 / 5600 = 178.57 mired; 30 more are 208.57 (4794.5 K), 30 less 148.57 (6730.8 K).
  test("speaks more than 30 mired to either side of the white balance", () => {
    expect(findings(whiteBalanceOff, lit(4790))).toHaveLength(1);
    expect(findings(whiteBalanceOff, lit(4800))).toHaveLength(0);
    expect(findings(whiteBalanceOff, lit(6740))).toHaveLength(1);
    expect(findings(whiteBalanceOff, lit(6720))).toHaveLength(0);
    const thresholds = [{ name: "off_balance", value: 140, unit: "mired", written: "140 mired" }];
    expect(findings(whiteBalanceOff, { ...lit(3200), thresholds })).toHaveLength(0);
  });

  test("is a check where nothing says the balance, a note where the recipe does", () => {
    // 1e6 / 3200 - 1e6 / 5600 = 312.5 - 178.57 = 133.9.
    const assumed = finding(whiteBalanceOff, lit(3200));
    expect(assumed.severity).toBe("check");
    expect(assumed.message).toBe(
      "key is 3200 K and the white balance 5600 K, which is assumed: the face comes out 134 mired warm.",
    );
    const said = finding(whiteBalanceOff, lit(5600, 3200));
    expect(said.severity).toBe("note");
    expect(said.message).toContain("134 mired cool");
  });

  test("the balance that it names is silent, and so is the gel", () => {
    const { remedy } = finding(whiteBalanceOff, lit(3180));
    const set = numberAfter(remedy, "balance to", "K");
    expect(set).toBe(3200);
    // 1e6 / 3180 - 1e6 / 3200 = 1.97 mired, which nobody sees.
    expect(remedy).toContain("comes out neutral");
    expect(findings(whiteBalanceOff, lit(3180, set))).toHaveLength(0);
    expect(remedy).toContain("cool gel of 136 mired on key");
    expect(
      findings(whiteBalanceOff, lit(3180, undefined, { gel: gels(gel("cool", mired(136), stops(0))) })),
    ).toHaveLength(0);
  });

  test("judges all light on the face, and then gels every light", () => {
    // The key alone would be neutral; a much stronger warm second light makes the face warm.
    const warm = dish({ colour: kelvin(3000), distance: tape(m(1)) }, "second");
    const found = finding(whiteBalanceOff, { lights: [dish({ role: "key" }), warm] });
    expect(found.message).toContain("The light on the face is");
    expect(found.remedy).toContain("on every light");
    const set = numberAfter(found.remedy, "balance to", "K");
    const parts = { lights: [dish({ role: "key" }), warm], camera: lit(5600, set).camera };
    expect(findings(whiteBalanceOff, parts)).toHaveLength(0);
  });

  test("gels of the key count", () => {
    expect(
      findings(whiteBalanceOff, lit(5600, undefined, { gel: gels(gel("warm", mired(60), stops(0))) })),
    ).toHaveLength(1);
  });
});
