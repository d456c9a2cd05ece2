import { describe, expect, test } from "vitest";
import { offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { headroom } from "../../../src/report/geometry/headroom.js";
import { setTop } from "../../../src/report/geometry/set-top.js";
import { setShortTop } from "../../../src/report/rules/set-short-top.rule.js";
import { setTopPose } from "../../../src/report/rules/set-top-pose.rule.js";
import { cm, m, mm } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { camera, far, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";

/** A 50 mm lens 1.3 m high, 3.5 m from the mark, before a flat of a height, and a subject with hands at a reach. */
const shot = (flatHeight: number, reach = 0, lens = 1.3) => ({
  camera: block("camera", null, { ...camera, focal_length: mm(50), height: m(lens) }),
  subjects: [block("subject", null, { height: m(1.7), reach: m(reach) })],
  set: setOf(
    block("flat", "back", { size: size(m(1.5), m(flatHeight)), at: offset({ behind: cm(60) }) }) as never,
  ),
});

/** By like triangles from the lens: 1.3 + (H - 1.3) x face distance / flat distance. */
const visible = (height: number): number => 1.3 + ((height - 1.3) * (3.5 - 0.0969)) / 4.1;

describe("the visible top of the set", () => {
  test("follows the ray from the lens over the flat's edge", () => {
    const { scene } = planOf(shot(2));
    const subject = scene.subjects[0];
    if (subject === undefined) throw new Error("no subject");
    expect(setTop(scene, subject)?.visible).toBeCloseTo(visible(2), 9);
    expect(headroom(scene).metres).toBeCloseTo(visible(2) - subject.top, 9);
  });

  test("is no higher than the top of the picture, to which a lens of 100 mm sees 18 cm to the metre", () => {
    const wall = block("flat", "back", { size: size(m(3), m(3)), at: offset({ behind: m(1) }) }) as never;
    const room = (focal: number): number => {
      const { scene } = planOf({ camera: far(focal), set: setOf(wall) });
      return headroom(scene).metres ?? Number.NaN;
    };
    // The head's middle is 0.0 to 0.1 m before the mark, 4 m from the lens, which is 1.5 m high and level.
    const ahead = -(planOf().scene.subjects[0]?.head[1] ?? 0);
    expect(room(100)).toBeCloseTo(1.5 + 0.18 * (4 - ahead) - 1.7, 9);
    // Cut by the picture above the eyes: less than nothing above the head.
    expect(room(500)).toBeCloseTo(1.5 + 0.036 * (4 - ahead) - 1.7, 9);
    // The whole wall, 3 m at 5 m, is seen with 18 mm: by like triangles from the lens in the plane of the face.
    const face = 4 + (planOf().scene.subjects[0]?.face[1] ?? 0);
    expect(room(18)).toBeCloseTo(1.5 + (1.5 * face) / 5 - 1.7, 9);
  });

  test("does not count what hangs above a gap", () => {
    const low = block("flat", "back", { size: size(m(3), m(1.6)), at: offset({ behind: m(1) }) });
    const hung = (up: number) =>
      block("flat", "hung", { size: size(m(3), m(1)), at: offset({ behind: m(1), up: m(up) }) });
    const top = (...parts: readonly object[]) => {
      const { scene } = planOf({ camera: far(18), set: setOf(...(parts as never[])) });
      return headroom(scene);
    };
    const alone = top(low).metres ?? Number.NaN;
    expect(alone).toBeLessThan(0);
    expect(top(low, hung(2.5)).metres).toBeCloseTo(alone, 12);
    expect(top(hung(2.5)).reason).toBe("no piece of the set stands behind a head");
    // On top of the other it goes on.
    const face = 4 + (planOf().scene.subjects[0]?.face[1] ?? 0);
    expect(top(low, hung(1.6)).metres).toBeCloseTo(1.5 + (1.1 * face) / 5 - 1.7, 9);
  });

  test("does not count what lies on the floor or stands before the subject", () => {
    const { scene } = planOf({
      set: setOf(
        block("paper", "roll", { width: m(2), run: m(3), at: offset({ behind: m(1) }) }) as never,
        block("flat", "near", { size: size(m(1.5), m(2)), at: offset({ ahead: m(1) }) }) as never,
      ),
    });
    expect(headroom(scene)).toEqual({ metres: null, reason: "no piece of the set stands behind a head" });
  });
});

describe("set-short-top", () => {
  test("speaks on one side of 10 cm over the head", () => {
    // visible(H) = 1.70 + 0.10 at H = 1.3 + 0.5 x 4.1 / 3.4031.
    const edge = 1.3 + (0.5 * 4.1) / 3.4031;
    expect(findings(setShortTop, shot(edge - 0.01))).toHaveLength(1);
    expect(findings(setShortTop, shot(edge + 0.01))).toHaveLength(0);
    expect(finding(setShortTop, shot(1.7)).message).toMatch(/below the top of the head/);
    expect(finding(setShortTop, shot(1.85)).severity).toBe("stop");
  });

  test("is silent where the frame ends below the set", () => {
    const tight = { ...shot(1.85), camera: block("camera", null, { ...camera, focal_length: mm(200) }) };
    expect(findings(setShortTop, tight)).toHaveLength(0);
  });

  test("both ways of its remedy are silent", () => {
    const { remedy } = finding(setShortTop, shot(1.88));
    expect(findings(setShortTop, shot(numberAfter(remedy, "ends at", "m")))).toHaveLength(0);
    expect(findings(setShortTop, shot(1.88, 0, numberAfter(remedy, "lens at", "m")))).toHaveLength(0);
  });
});

describe("set-top-pose", () => {
  test("speaks when hands pass the visible top, with the room left in cm", () => {
    const room = visible(2.2) - 1.7;
    expect(findings(setTopPose, shot(2.2, room + 0.01))).toHaveLength(1);
    expect(findings(setTopPose, shot(2.2, room - 0.01))).toHaveLength(0);
    expect(findings(setTopPose, shot(1.6, 0))).toHaveLength(0);
    const { remedy, message } = finding(setTopPose, shot(2.2, room + 0.12));
    expect(message).toContain("12 cm");
    expect(numberAfter(remedy, "below", "m")).toBe(Math.floor(visible(2.2) * 100) / 100);
    expect(numberAfter(remedy, ",", "cm above the head")).toBe(Math.floor(room * 100));
  });

  test("its cap and its taller set are silent", () => {
    const { remedy } = finding(setTopPose, shot(2.2, 0.6));
    expect(findings(setTopPose, shot(2.2, numberAfter(remedy, "below", "m") - 1.7))).toHaveLength(0);
    expect(findings(setTopPose, shot(numberAfter(remedy, "ends at", "m"), 0.6))).toHaveLength(0);
  });
});
