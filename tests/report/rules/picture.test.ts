import { describe, expect, test } from "vitest";
import { at, offset, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { edgeOf } from "../../../src/model/make/surroundings.js";
import { bareFrame } from "../../../src/report/rules/bare-frame.rule.js";
import { diffraction } from "../../../src/report/rules/diffraction.rule.js";
import { edgeStretch } from "../../../src/report/rules/edge-stretch.rule.js";
import { foldAtHead } from "../../../src/report/rules/fold-at-head.rule.js";
import { paperEdge } from "../../../src/report/rules/paper-edge.rule.js";
import { deg, fNumber, m, mm } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, far, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";

describe("bare-frame", () => {
  /** A wall 24 / 60 x 4 m = 1.6 m wide less a share of it, and higher than the picture. */
  const wall = (share: number) => ({
    subjects: [],
    camera: far(60),
    set: setOf(
      block("panel", "wall", { size: size(m(1.6 * (1 - share)), m(4)), at: at(m(0), m(0), m(1.5)) }),
    ),
  });

  test("notes more than 0.1 %, checks from 5 %, stops from 40 %", () => {
    expect(findings(bareFrame, wall(0.0009))).toHaveLength(0);
    expect(finding(bareFrame, wall(0.0011)).severity).toBe("note");
    expect(finding(bareFrame, wall(0.049)).severity).toBe("note");
    expect(finding(bareFrame, wall(0.051)).severity).toBe("check");
    expect(finding(bareFrame, wall(0.39)).severity).toBe("check");
    expect(finding(bareFrame, wall(0.41)).severity).toBe("stop");
    expect(finding(bareFrame, wall(0.2)).message).toBe(
      "20 % of the picture is neither set nor subject: 10 % on the left and 10 % on the right.",
    );
  });

  test("the lens and the distance it names close the gap", () => {
    const { remedy } = finding(bareFrame, wall(0.2));
    expect(numberAfter(remedy, "lens of", "mm")).toBe(75);
    expect(numberAfter(remedy, "camera at", "m")).toBe(3.2);
    expect(findings(bareFrame, { ...wall(0.2), camera: far(75) })).toHaveLength(0);
    expect(findings(bareFrame, { ...wall(0.2), camera: far(74) })).toHaveLength(1);
    expect(findings(bareFrame, { ...wall(0.2), camera: far(60, { distance: tape(m(3.2)) }) })).toHaveLength(
      0,
    );
  });

  test("is silent without a background", () => {
    expect(findings(bareFrame, { subjects: [], camera: far(60) })).toHaveLength(0);
    const card = block("card", "white", { size: size(m(0.5), m(0.5)), at: at(m(0), m(0), m(1.5)) });
    expect(findings(bareFrame, { subjects: [], camera: far(60), set: setOf(card) })).toHaveLength(0);
  });
});

describe("paper-edge", () => {
  /** A lens 1.5 m high that sees the floor from 4 m - 1.5 m x 60 / 18 = 5 m on: 1 m behind the mark. */
  const roll = (run: number, width = 4) => ({
    subjects: [],
    camera: far(60),
    set: setOf(
      block("paper", "roll", {
        width: m(width),
        run: m(run),
        hangs: m(4),
        at: offset({ behind: m(3) }),
      }),
    ),
  });

  test("speaks when the front edge of the run comes into the picture", () => {
    // The run begins 3 m behind the mark; 2 m of it reach to the lower edge of the picture, and 1.7 mm more, since the
    // paper lies half a millimetre above the floor.
    expect(findings(paperEdge, roll(2.001))).toHaveLength(1);
    expect(findings(paperEdge, roll(2.002))).toHaveLength(0);
    const found = finding(paperEdge, roll(1.9));
    expect(found.severity).toBe("check");
    expect(found.message).toContain("its front edge");
    expect(numberAfter(found.remedy, "run of", "m")).toBe(2.05);
  });

  test("speaks for the sides, and the width it names is wide enough", () => {
    // At the back the picture is 24 / 60 x 7 m = 2.8 m wide.
    expect(findings(paperEdge, roll(3, 2.85))).toHaveLength(0);
    const found = finding(paperEdge, roll(3, 2.6));
    expect(found.message).toContain("its left edge");
    expect(found.message).toContain("its right edge");
    const width = numberAfter(found.remedy, "width of", "m");
    expect(width).toBeGreaterThanOrEqual(2.8);
    expect(width).toBeLessThan(2.86);
    expect(findings(paperEdge, roll(3, width))).toHaveLength(0);
  });
});

describe("fold-at-head", () => {
  const stature = 1.7;
  /** Two leaves that meet so far to the right of the head's middle, 1 m behind the mark. */
  const folded = (x: number) => ({
    subjects: [block("subject", null, { height: m(stature) })],
    camera: far(50),
    set: setOf(
      block("flat", "back", { size: size(m(1), m(2.4)), at: at(m(x - 0.5), m(1), m(0)) }),
      block("flat", "wing", { size: size(m(1), m(2.4)), hinge: edgeOf("right", "back"), opening: deg(150) }),
    ),
  });
  // The head is a ball to the lens: 0.045 h wide to each side, 4 m away; the fold is 5 m away.
  const half = 0.045 * stature;
  const at8 = ((half + 0.08) * 5) / 4;

  test("speaks within 8 cm of the outline of the head, seen from the lens", () => {
    expect(findings(foldAtHead, folded(at8 + 0.01))).toHaveLength(0);
    expect(findings(foldAtHead, folded(at8 - 0.01))).toHaveLength(1);
    expect(findings(foldAtHead, folded(-at8 - 0.01))).toHaveLength(0);
    expect(findings(foldAtHead, folded(-at8 + 0.01))).toHaveLength(1);
    expect(finding(foldAtHead, folded(0.01)).message).toContain("grows out of");
    expect(finding(foldAtHead, folded(0.16)).message).toContain("5 cm beside");
  });

  test("the step aside it names is enough, and one that is 1 cm shorter is not", () => {
    const found = finding(foldAtHead, folded(0.05));
    const step = numberAfter(found.remedy, "sitter", "cm") / 100;
    expect(found.remedy).toContain("to the left");
    const aside = (by: number) => ({
      ...folded(0.05),
      subjects: [block("subject", null, { height: m(stature), at: at(m(-by), m(0), m(0)) })],
    });
    expect(findings(foldAtHead, aside(step))).toHaveLength(0);
    expect(findings(foldAtHead, aside(step - 0.01))).toHaveLength(1);
  });
});

describe("edge-stretch", () => {
  const aside = (x: number, distance = 2) => ({
    subjects: [block("subject", "ana", { height: m(1.7), at: at(m(x), m(0), m(0)) })],
    camera: far(24, { held: "level", distance: tape(m(distance)), height: m(0.933 * 1.7) }),
  });
  // 1 / cos a = 1.08 where tan a = 0.4079.
  const limit = Math.sqrt(1.08 * 1.08 - 1) * 2;

  test("speaks where a ball is drawn out by more than 8 %", () => {
    expect(findings(edgeStretch, aside(limit + 0.005))).toHaveLength(1);
    expect(findings(edgeStretch, aside(limit - 0.005))).toHaveLength(0);
    expect(finding(edgeStretch, aside(1.2)).message).toContain("17 %");
  });

  test("from the distance it names it is silent", () => {
    const back = numberAfter(finding(edgeStretch, aside(1.2)).remedy, "camera", "cm") / 100;
    expect(findings(edgeStretch, aside(1.2, 2 + back))).toHaveLength(0);
    expect(findings(edgeStretch, aside(1.2, 2 + back - 0.06))).toHaveLength(1);
  });
});

describe("diffraction", () => {
  const at_ = (f: number, frame = {}) => ({
    camera: block("camera", null, { ...camera, aperture: fNumber(f), ...frame }),
  });

  test("speaks beyond f/18 on 36 x 24 mm and beyond f/9 on 18 x 12 mm", () => {
    expect(findings(diffraction, at_(16))).toHaveLength(0);
    expect(findings(diffraction, at_(20))).toHaveLength(1);
    const small = { frame: size(mm(18), mm(12)), focal_length: mm(42) };
    expect(findings(diffraction, at_(8, small))).toHaveLength(0);
    expect(findings(diffraction, at_(10, small))).toHaveLength(1);
  });

  test("says the disc in micrometres, and the aperture it names is silent", () => {
    // 2.44 x 0.555 um x 22.63 x (1 + m), m = 85 / (3403 - 85): 31.4 um.
    const found = finding(diffraction, at_(22));
    expect(found.message).toContain("31 micrometres; 29 count as sharp");
    const n = Number(/Open to f\/(\d+)/.exec(found.remedy)?.[1]);
    expect(findings(diffraction, at_(n))).toHaveLength(0);
    expect(planOf(at_(n)).scene.camera?.aperture).toBeGreaterThan(14);
  });
});
