import { describe, expect, test } from "vitest";
import { disc, rectangle, sphere } from "../../../src/model/make/lamps.js";
import { along, at, left, offset, right, tape } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { placeAt } from "../../../src/report/face/angles.js";
import { doubleEdge } from "../../../src/report/rules/double-edge.rule.js";
import { glassesGlare } from "../../../src/report/rules/glasses-glare.rule.js";
import { noCatchlight } from "../../../src/report/rules/no-catchlight.rule.js";
import { noseOnLip } from "../../../src/report/rules/nose-on-lip.rule.js";
import { patternLost } from "../../../src/report/rules/pattern-lost.rule.js";
import { shadowOffPaper } from "../../../src/report/rules/shadow-off-paper.rule.js";
import { sideSlip } from "../../../src/report/rules/side-slip.rule.js";
import type { SceneSubject } from "../../../src/scene/types.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import {
  bulb,
  camera,
  finding,
  findings,
  numberAfter,
  person,
  planOf,
  room,
  setOf,
} from "../../helpers/plan.js";

const subject = planOf().scene.subjects[0] as SceneSubject;

/** A bulb at some angles to the face, 2 m away. */
const lamp = (azimuth: number, elevation: number, away = 2, name = "key", shape = sphere(cm(8))) => {
  const [x, y, z] = placeAt(subject, { azimuth, elevation }, away);
  return bulb(
    {
      shape,
      distance: undefined as never,
      bearing: undefined as never,
      height: undefined as never,
      position: at(m(x), m(y), m(z)),
    },
    name,
  );
};

describe("pattern-lost", () => {
  const intent = block("intent", null, { pattern: "loop" } as never);
  const found = (azimuth: number, elevation: number) =>
    findings(patternLost, { intent, lights: [lamp(azimuth, elevation)] });

  test("speaks beyond 10 deg to the side or 8 deg up or down of the range", () => {
    // Loop: 25 to 45 deg to the side, 20 to 40 up.
    for (const [azimuth, elevation, speaks] of [
      [54.9, 30, 0],
      [-55.1, 30, 1],
      [15.1, 30, 0],
      [14.9, 30, 1],
      [35, 47.9, 0],
      [35, 48.1, 1],
      [35, 12.1, 0],
      [35, 11.9, 1],
    ] as const)
      expect(found(azimuth, elevation), `${azimuth} ${elevation}`).toHaveLength(speaks);
    expect(findings(patternLost, { lights: [lamp(90, 10)] })).toHaveLength(0);
  });

  test("moved as it says, the key makes the pattern", () => {
    const { remedy, message, severity } = found(-80, 5)[0] ?? { remedy: "", message: "", severity: "" };
    expect(severity).toBe("check");
    expect(message).toContain("split");
    const to = lamp(-numberAfter(remedy, "to", "deg off"), numberAfter(remedy, "and", "deg up"));
    expect(findings(patternLost, { intent, lights: [to] })).toHaveLength(0);
    const [, , z] = placeAt(subject, { azimuth: -45, elevation: 20 }, 2);
    expect(numberAfter(remedy, "up,", "m high")).toBeCloseTo(z, 2);
  });
});

describe("side-slip", () => {
  const turned = (turn: number) =>
    block("subject", null, { height: m(1.7), facing: along(turn < 0 ? left(deg(-turn)) : right(deg(turn))) });
  const slip = (side: "short" | "broad", turn: number) =>
    findings(sideSlip, {
      intent: block("intent", null, { side } as never),
      subjects: [turned(turn)],
      lights: [lamp(45, 25)],
    });

  test("speaks where the key is on the other side than wished", () => {
    // The lens stands at 0, the key at 45 deg to camera-right: a nose between the two has it on its short side.
    expect(slip("short", 20)).toHaveLength(0);
    expect(slip("broad", 20)).toHaveLength(1);
    expect(slip("short", -20)).toHaveLength(1);
    expect(slip("broad", -20)).toHaveLength(0);
    expect(slip("short", 0)).toHaveLength(0);
  });

  test("turned as it says, it is silent", () => {
    const by = numberAfter(slip("short", -20)[0]?.remedy ?? "", "turned by", "deg");
    expect(slip("short", -20 + by)).toHaveLength(0);
    const other = numberAfter(slip("broad", 20)[0]?.remedy ?? "", "turned by", "deg");
    expect(slip("broad", 20 - other)).toHaveLength(0);
  });
});

describe("nose-on-lip", () => {
  test("speaks where the shadow of the nose falls more than 20 mm down", () => {
    // 25 mm tan e / cos 30 deg = 20 mm at e = 34.72 deg.
    const limit = (Math.atan((20 / 25) * Math.cos(Math.PI / 6)) * 180) / Math.PI;
    expect(findings(noseOnLip, { lights: [lamp(30, limit - 0.1)] })).toHaveLength(0);
    expect(findings(noseOnLip, { lights: [lamp(30, limit + 0.1)] })).toHaveLength(1);
    const wide = lamp(30, limit + 5, 1, "key", rectangle(m(1.5), m(1.5)));
    expect(findings(noseOnLip, { lights: [wide] })).toHaveLength(0);
  });

  test("lowered as it says, it is silent", () => {
    const { remedy } = finding(noseOnLip, { lights: [lamp(30, 45)] });
    const [x, y] = placeAt(subject, { azimuth: 30, elevation: 45 }, 2);
    const height = numberAfter(remedy, "to", "m");
    const lower = { ...lamp(30, 45), position: at(m(x), m(y), m(height)) };
    expect(findings(noseOnLip, { lights: [lower] })).toHaveLength(0);
    expect(numberAfter(remedy, "for", "mm")).toBe(20);
  });
});

describe("no-catchlight", () => {
  // The lens at eye height, so that the line of sight is level.
  const level = { ...camera, height: m(subject.face[2]) };
  const found = (lights: readonly ReturnType<typeof lamp>[], lens: typeof camera | null = level) =>
    findings(noCatchlight, { lights, camera: lens });

  test("speaks above 55 deg and beyond 80 deg to the side", () => {
    expect(found([lamp(0, 54.8)])).toHaveLength(0);
    expect(found([lamp(0, 55.2)])).toHaveLength(1);
    expect(found([lamp(79, 5)])).toHaveLength(0);
    expect(found([lamp(81, 5)])).toHaveLength(1);
    expect(found([lamp(10, 60), lamp(20, 0, 2, "low")])).toHaveLength(0);
    expect(found([lamp(10, 60)], null)).toHaveLength(0);
  });

  test("eyes that look up into a high lens show a high lamp, those that look down hide a lower one", () => {
    // A lens 3.4 m along the floor from the eyes, tan 20 deg of that higher or lower: the limit is 75 or 35 deg.
    const turned = (up: number) => ({
      ...camera,
      height: m(subject.face[2] + 3.4031 * Math.tan((up * Math.PI) / 180)),
    });
    expect(found([lamp(0, 74)], turned(20))).toHaveLength(0);
    expect(found([lamp(0, 76)], turned(20))).toHaveLength(1);
    expect(found([lamp(0, 34)], turned(-20))).toHaveLength(0);
    expect(found([lamp(0, 36)], turned(-20))).toHaveLength(1);
  });

  test("for one who lies, up is towards the crown", () => {
    const lies = block("subject", null, { height: m(1.7), pose: "lying" });
    const face = planOf({ subjects: [lies] }).scene.subjects[0] as SceneSubject;
    // A lens straight above the face, the lamp 40 and 60 deg from it towards the crown.
    const [x, y, z] = placeAt(face, { azimuth: 0, elevation: 0 }, 2);
    const above = block("camera", null, {
      ...camera,
      distance: undefined,
      height: undefined,
      position: at(m(x), m(y), m(z)),
    } as never);
    const over = (elevation: number) => {
      const [a, b, c] = placeAt(face, { azimuth: 0, elevation }, 2);
      return { ...lamp(0, 0), position: at(m(a), m(b), m(c)) };
    };
    const seen = (elevation: number) =>
      findings(noCatchlight, { subjects: [lies], lights: [over(elevation)], camera: above });
    expect(seen(40)).toHaveLength(0);
    expect(seen(60)).toHaveLength(1);
  });

  test("lowered as it says, it is silent", () => {
    const said = finding(noCatchlight, { lights: [lamp(10, 62)] });
    const [x, y] = placeAt(subject, { azimuth: 10, elevation: 62 }, 2);
    const lower = { ...lamp(10, 62), position: at(m(x), m(y), m(numberAfter(said.remedy, "to", "m"))) };
    expect(findings(noCatchlight, { lights: [lower] })).toHaveLength(0);
    const hair = { ...lower, position: at(m(x), m(y), m(numberAfter(said.remedy, "to", "m") + 0.03)) };
    expect(findings(noCatchlight, { lights: [hair] })).toHaveLength(1);
  });
});

describe("glasses-glare", () => {
  const wears = (tilt: number) => block("subject", null, { height: m(1.7), spectacles: deg(tilt) });
  // The lens at eye height: upright glasses mirror it to itself.
  const level = { ...camera, height: m(1.5861) };
  const seen = (elevation: number, tilt = 0) =>
    findings(glassesGlare, { camera: level, subjects: [wears(tilt)], lights: [lamp(0, elevation)] });

  test("speaks within half the light's width and 2 deg of the mirrored lens", () => {
    // A bulb of 8 cm 2 m away is 2.29 deg wide: 1.15 + 2 deg.
    const limit = (Math.asin(0.04 / 2) * 180) / Math.PI + 2;
    expect(seen(limit - 0.05)).toHaveLength(1);
    expect(seen(limit + 0.05)).toHaveLength(0);
    // A lean of 5 deg forward moves the mirrored lens 10 deg down.
    expect(seen(-10, 5)).toHaveLength(1);
    expect(seen(0, 5)).toHaveLength(0);
    expect(findings(glassesGlare, { camera: level, lights: [lamp(0, 0)] })).toHaveLength(0);
  });

  test("raised or leant as it says, it is silent", () => {
    const { remedy } = seen(1)[0] ?? { remedy: "" };
    const height = numberAfter(remedy, "key to", "m");
    const [x, y] = placeAt(subject, { azimuth: 0, elevation: 1 }, 2);
    const higher = { ...lamp(0, 1), position: at(m(x), m(y), m(height)) };
    expect(findings(glassesGlare, { camera: level, subjects: [wears(0)], lights: [higher] })).toHaveLength(0);
    expect(seen(1, numberAfter(remedy, "forward by", "deg"))).toHaveLength(0);
  });
});

describe("shadow-off-paper", () => {
  const wide = block("camera", null, {
    ...camera,
    focal_length: { ...camera.focal_length, value: 0.024 } as never,
  });
  const paper = (run: number) =>
    block("paper", "roll", {
      width: m(3),
      run: m(run),
      at: offset({ behind: m(1) }),
    }) as never;
  const parts = (run: number, height: number) => ({
    room,
    camera: wide,
    subjects: [person],
    set: setOf(paper(run)),
    lights: [lampOnFloor(height)],
  });
  const lampOnFloor = (height: number) =>
    bulb({ distance: tape(m(2.6)), bearing: left(deg(170)), height: m(height) });

  test("speaks where the shadow towards the camera runs past the paper, and is silent on a longer one", () => {
    const found = findings(shadowOffPaper, parts(1.6, 2.3));
    expect(found).toHaveLength(1);
    const past = numberAfter(found[0]?.message ?? "", "by", "m");
    expect(past).toBeGreaterThan(0.1);
    expect(findings(shadowOffPaper, parts(1.6 + past - 0.15, 2.3))).toHaveLength(1);
    expect(findings(shadowOffPaper, parts(1.6 + past - 0.05, 2.3))).toHaveLength(0);
    expect(findings(shadowOffPaper, { ...parts(1.6, 2.3), camera: null })).toHaveLength(0);
  });
});

describe("double-edge", () => {
  const back = block("flat", "back", { size: size(m(3), m(2.4)), at: offset({ behind: m(1.2) }) }) as never;
  const pair = (apart: number, share = 1) =>
    findings(doubleEdge, {
      set: setOf(back),
      lights: [
        lamp(-35, 25, 2, "key", disc(cm(60))),
        { ...lamp(-35 + apart, 25, 2, "small", disc(cm(12 * share))) },
      ],
    });

  test("speaks for two openings of unlike size near to each other", () => {
    // At 25 deg up the angle between two directions is a little less than their difference in azimuth.
    expect(pair(6)).toHaveLength(1);
    expect(pair(7)).toHaveLength(0);
    // 60 cm against 24 cm is less than three times.
    expect(pair(3, 2)).toHaveLength(0);
    expect(pair(3)[0]?.message).toContain("inside one of");
  });
});
