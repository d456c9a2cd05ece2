import { describe, expect, test } from "vitest";
import { metered } from "../../../src/model/make/lamps.js";
import { offset, tape } from "../../../src/model/make/points.js";
import type { Recipe } from "../../../src/model/types.js";
import { reportCamera } from "../../../src/report/camera.js";
import { evaluate } from "../../../src/report/evaluate/expression.js";
import { brightestOf, type Highlight } from "../../../src/report/light/highlights.js";
import { clippedLit } from "../../../src/report/rules/clipped-lit.rule.js";
import { cm, fNumber, iso, m, mm, percent } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, dish, findings, flat, person, planOf, setOf } from "../../helpers/plan.js";

function brightest(parts: Partial<Recipe>): Highlight {
  const found = brightestOf(planOf(parts));
  if (typeof found === "string") throw new Error(found);
  return found;
}

/** A far camera, which loses next to nothing by focusing: the lens stands at the f-number that the meter gives at 2 m. */
const lens = block("camera", null, {
  ...camera,
  distance: tape(m(8)),
  focal_length: mm(150),
  sensitivity: iso(100),
});
/** A dish that the meter gives f/8 for at 2 m, in which the face stands. */
const lamp = dish({
  calibration: metered(fNumber(8), m(2), iso(100)),
  power: undefined,
  distance: tape(m(2)),
} as never);
const skin = (share: number) => [block("subject", null, { ...person, skin: percent(share) })];
const shot = (share: number, more: Partial<Recipe> = {}): Partial<Recipe> => ({
  subjects: skin(share),
  lights: [lamp],
  camera: lens,
  ...more,
});

describe("the brightest thing in the picture", () => {
  // Reflectances .85 and .90 at an equal reading are the greys 237 and 243 of sRGB; a quarter of a stop over, both clip
  // (straight arithmetic of IEC 61966-2-1): log2(1 / .85) = .234 and log2(1 / .90) = .152 stop of room.
  test.each([
    [90, 0.152],
    [85, 0.234],
    [18, 2.474],
  ])("skin of %f %% at the reading that is set lies %f stop under white", (share, stops) => {
    // The skin beside the meter and the bellows factor at 8 m move it a little.
    expect(Math.abs(brightest(shot(share)).headroom - stops)).toBeLessThan(0.06);
    expect(brightest(shot(share)).what).toBe("the skin of the face");
  });

  test("loses a stop where the aperture opens by one, and is beyond white then", () => {
    const open = block("camera", null, { ...lens, aperture: fNumber(5.6) });
    const [set, opened] = [brightest(shot(85)), brightest(shot(85, { camera: open }))];
    expect(set.headroom - opened.headroom).toBeCloseTo(1, 2);
    expect(opened.headroom).toBeLessThan(0);
  });

  test("is the set where that is brighter, and counts only what the picture shows", () => {
    const near = {
      ...flat,
      at: offset({ behind: cm(30), right: cm(60) }),
      reflectance: { name: null, reflectance: percent(90), written: "90 %" },
    };
    const both = brightest(shot(18, { set: setOf(near as never) }));
    expect(both.what).toContain("back");
    const tight = block("camera", null, { ...lens, focal_length: mm(600) });
    const face = { kind: "named", path: ["face"], written: "face" } as const;
    expect(
      brightest(
        shot(18, {
          set: setOf(near as never),
          camera: block("camera", null, { ...tight, aim: face } as never),
        }),
      ).what,
    ).toBe("the skin of the face");
  });

  test("is what the camera's section, the result and the warning say", () => {
    const plan = planOf(shot(90));
    const { headroom } = brightest(shot(90));
    expect(reportCamera(plan)?.highlight).toEqual({
      headroom,
      of: "the skin of the face",
      reflectance: 0.9,
      reason: null,
    });
    const asked = evaluate(
      { plan, alarms: null },
      { kind: "result", type: "stops", name: "highlight_headroom", of: null, args: [] },
    );
    expect(asked.value).toBe(headroom);
    const limit = (value: number) => ({
      thresholds: [{ name: "clip", value, unit: "stop" as const, written: "" }],
    });
    expect(findings(clippedLit, { ...shot(90), ...limit(headroom + 0.01) })).toHaveLength(1);
    expect(findings(clippedLit, { ...shot(90), ...limit(headroom - 0.01) })).toHaveLength(0);
  });

  test("cannot be said without aperture, sensitivity or light", () => {
    const { aperture: _, ...closed } = lens;
    expect(brightestOf(planOf(shot(50, { camera: closed as never })))).toContain("aperture");
    expect(brightestOf(planOf(shot(50, { camera: null })))).toContain("camera");
    expect(brightestOf(planOf(shot(50, { lights: [] })))).toContain("gets light");
    expect(reportCamera(planOf(shot(50, { lights: [] })))?.highlight.headroom).toBeNull();
  });
});
