import { describe, expect, test } from "vitest";
import { cosinePower, disc, rectangle } from "../../../src/model/make/lamps.js";
import { named, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import type { Recipe } from "../../../src/model/types.js";
import { sizeFrom } from "../../../src/report/light/size.js";
import { diffuserNoSofter } from "../../../src/report/rules/diffuser-no-softer.rule.js";
import { hotSpotScrim } from "../../../src/report/rules/hot-spot-scrim.rule.js";
import { cm, m, number } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dish, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";

/** A cloth 1.2 m before the face, with a head so far behind it on the same line. */
const shot = (behind: number, side = 1.5, fields: object = {}): Partial<Recipe> => {
  const scrim = block("scrim", "silk", {
    size: size(m(side), m(side)),
    at: offset({ ahead: m(1.3), up: m(1.6) }),
    faces: { kind: "point", point: named("face"), written: "face" },
  } as never);
  const {
    distance: _,
    bearing: __,
    height: ___,
    ...light
  } = dish({ through: "silk", position: offset({ ahead: m(1.3 + behind), up: m(1.6) }), ...fields });
  return { set: setOf(scrim as never), lights: [light as never] };
};
const limit = (name: string, value: number) => ({ thresholds: [{ name, value, unit: "1", written: "" }] });
const narrow = { beam: cosinePower(number(12)) };

describe("hot-spot-scrim", () => {
  const lit = (parts: Partial<Recipe>): number => {
    const { shape } = planOf(parts).scene.sources[0] ?? { shape: null };
    return shape?.kind === "rectangle" ? shape.width / 1.5 : Number.NaN;
  };

  test("speaks when a head lights less than its threshold of the cloth's side", () => {
    const share = lit(shot(0.5));
    expect(share).toBeLessThan(0.95);
    expect(findings(hotSpotScrim, { ...shot(0.5), ...limit("hot_spot", share + 0.01) })).toHaveLength(1);
    expect(findings(hotSpotScrim, { ...shot(0.5), ...limit("hot_spot", share - 0.01) })).toHaveLength(0);
    expect(findings(hotSpotScrim, shot(3))).toHaveLength(0);
    expect(findings(hotSpotScrim, { lights: [dish()] })).toHaveLength(0);
  });

  test("from further back, as it says, the cloth is lit enough, and from a little nearer it is not", () => {
    const { remedy, message } = finding(hotSpotScrim, shot(0.4, 1.5, narrow));
    expect(numberAfter(message, "only", "% of")).toBe(Math.round(100 * lit(shot(0.4, 1.5, narrow))));
    const away = numberAfter(remedy, "Put the head", "m");
    expect(findings(hotSpotScrim, shot(away, 1.5, narrow))).toHaveLength(0);
    expect(findings(hotSpotScrim, shot(away - 0.05, 1.5, narrow))).toHaveLength(1);
  });
});

describe("diffuser-no-softer", () => {
  const wide = { shape: rectangle(m(1), m(1)) };

  test("speaks when the cloth is hardly wider than the bare head", () => {
    // A cloth of the size of the head, and as near as its beam leaves it: no gain; a small dish behind it: much.
    expect(finding(diffuserNoSofter, shot(0.1, 1, wide)).severity).toBe("note");
    expect(findings(diffuserNoSofter, shot(0.8, 1.5, { shape: disc(cm(20)) }))).toHaveLength(0);
    expect(findings(diffuserNoSofter, { lights: [dish(wide)] })).toHaveLength(0);
  });

  test("its threshold is the ratio of both sizes from the face", () => {
    const { scene } = planOf(shot(0.3, 1, wide));
    const [cloth, head] = scene.sources;
    const face = scene.subjects[0]?.face;
    if (cloth === undefined || head === undefined || face === undefined) throw new Error("nothing there");
    const gain = (sizeFrom(cloth, face)?.equivalent ?? 0) / (sizeFrom(head, face)?.equivalent ?? 1);
    expect(
      findings(diffuserNoSofter, { ...shot(0.3, 1, wide), ...limit("diffuser_gain", gain + 0.01) }),
    ).toHaveLength(1);
    expect(
      findings(diffuserNoSofter, { ...shot(0.3, 1, wide), ...limit("diffuser_gain", gain - 0.01) }),
    ).toHaveLength(0);
  });
});
