import { describe, expect, test } from "vitest";
import { disc, rectangle } from "../../../src/model/make/lamps.js";
import { left, named, offset } from "../../../src/model/make/points.js";
import { size } from "../../../src/model/make/sizes.js";
import { run } from "../../../src/pipeline.js";
import { hiddenBySet } from "../../../src/report/light/set-hides.js";
import { blocked } from "../../../src/report/rules/blocked.rule.js";
import { panelShadesKey as rule } from "../../../src/report/rules/panel-shades-key.rule.js";
import { discTowards } from "../../../src/scene/held-meter.js";
import { cm, deg, m } from "../../../src/units/make.js";
import { block } from "../../helpers/models.js";
import { dishOnFloor, finding, findings, numberAfter, planOf, setOf } from "../../helpers/plan.js";

/** A flat half-way to a lamp that stands straight in front, 2 m away and 2.2 m high. */
const with_ = (flatHeight: number, lamp = 2.2, more: object = {}) => ({
  lights: [dishOnFloor({ bearing: left(deg(0)), height: m(lamp), ...more })],
  set: setOf(
    block("flat", "wing", { size: size(m(1), m(flatHeight)), at: offset({ ahead: m(1) }) }) as never,
  ),
});
const face = [0, -0.0969, 1.5861] as const;

/** The line from the face to a height over the lamp's place passes the flat at y = -1 at this height. */
const passes = (height: number): number => 1.5861 + ((height - 1.5861) * (1 - 0.0969)) / (2 - 0.0969);

describe("panel-shades-key", () => {
  test("half of the opening is hidden where the line to its centre meets the edge: a stop", () => {
    const plan = planOf(with_(passes(2.2)));
    const [source] = plan.scene.sources;
    if (source === undefined) throw new Error("no light");
    const hidden = hiddenBySet(plan.scene, source, face);
    expect(hidden?.share).toBeCloseTo(0.5, 1);
    expect(hidden?.piece.name).toBe("wing");
    expect(findings(rule, with_(passes(2.2) + 0.005))[0]?.severity).toBe("stop");
    expect(findings(rule, with_(passes(2.2) - 0.005))[0]?.severity).toBe("check");
  });

  test("speaks when the face loses more than 0.3 stop", () => {
    // A square of 20 cm: a share s is hidden where the line to (1/2 - s) of its height over the middle meets the edge.
    const square = (share: number) => {
      const tilt = Math.cos(Math.atan((2.2 - 1.5861) / (2 - 0.0969)));
      const edge = 2.2 + (share - 0.5) * 0.2 * tilt;
      return with_(passes(edge), 2.2, { shape: rectangle(cm(20), cm(20)) });
    };
    const limit = 1 - 2 ** -0.3;
    expect(findings(rule, square(limit + 0.03))).toHaveLength(1);
    expect(findings(rule, square(limit - 0.03))).toHaveLength(0);
    const { message } = finding(rule, square(0.4));
    const plan = planOf(square(0.4));
    const [source] = plan.scene.sources;
    const share = source === undefined ? 0 : (hiddenBySet(plan.scene, source, face)?.share ?? 0);
    expect(share).toBeCloseTo(0.4, 1);
    expect(numberAfter(message, "hides", "% of")).toBe(Math.round(100 * share));
    expect(numberAfter(message, "loses", "stop")).toBe(Number((-Math.log2(1 - share)).toFixed(1)));
  });

  test("a light that is wholly hidden is a stop, and its readings know it", () => {
    expect(finding(rule, with_(2)).severity).toBe("stop");
    const plan = planOf(with_(2));
    const [source] = plan.scene.sources;
    const [station] = plan.scene.stations;
    if (source === undefined || station === undefined) throw new Error("nothing there");
    expect(plan.light.direct(source, station)).toBe(0);
  });

  test("the height of its remedy clears the edge for skin and meter, and a little less does not", () => {
    const { remedy } = finding(rule, with_(2));
    const height = numberAfter(remedy, "key to", "m");
    expect(findings(rule, with_(2, height))).toHaveLength(0);
    const most = (lamp: number): number => {
      const { scene } = planOf(with_(2, lamp));
      const [source] = scene.sources;
      const meter = source && discTowards(scene.stations, face, source.centre);
      if (source === undefined || meter === undefined || meter === null) throw new Error("nothing there");
      const places = [face, meter.at].map((at) => hiddenBySet(scene, source, at)?.share ?? 0);
      return Math.max(...places);
    };
    expect(most(height)).toBeLessThanOrEqual(0.01);
    expect(most(height - 0.02)).toBeGreaterThan(0.01);
  });

  // A disc or a ball on the axis of a receptor lights it by the squared sine of its half angle (its projected solid angle).
  test("a sphere hides what its outline covers of the opening, and one round the place hides nothing", () => {
    const [x, y, z] = face;
    const lamp = dishOnFloor({ bearing: left(deg(0)), height: m(z), shape: disc(m(1)) });
    const globe = (diameter: number, ahead: number) => ({
      lights: [lamp],
      set: setOf(
        block("sphere", "globe", {
          diameter: cm(100 * diameter),
          at: offset({ right: m(x), ahead: m(-y + ahead), up: m(z) }),
        }) as never,
      ),
    });
    const hidden = (parts: ReturnType<typeof globe>) => {
      const plan = planOf(parts);
      return hiddenBySet(plan.scene, plan.scene.sources[0] as never, face);
    };
    const sine = Math.sin(Math.atan(0.5 / (2 + y)));
    const covered = (0.15 / sine) * (0.15 / sine);
    expect(Math.abs((hidden(globe(0.3, 1))?.share ?? 0) - covered)).toBeLessThan(0.002);
    expect(hidden(globe(0.3, 1))?.piece.name).toBe("globe");
    expect(hidden(globe(0.3, 0))).toBeNull();
    const { severity, message } = finding(rule, globe(0.6, 1));
    expect([severity, message]).toEqual([
      "stop",
      "globe stands between key and the face: none of its straight light arrives.",
    ]);
  });

  test("a piece that shades the meter before the face alone is named, and not as the head", () => {
    const { evaluated } = run({
      name: "globe.light",
      text: `halfshade 1
recipe "Globe"
room { size: 5 x 6 x 3 m, walls { reflectance: 40 % } }
subject { height: 1.7 m, pose: seated }
light key { role: key, shape: disc(60 cm), output: 3000 lm s, distance: 1.5 m, bearing: left(40 deg), elevation: 25 deg }
set { sphere globe { diameter: 34 cm, at: offset(up: 1.1 m, ahead: 24 cm) } }
camera { held: upright, focal_length: 81 mm, aperture: f/8, shutter: 1/125 s, sensitivity: ISO 100, distance: 2.3 m, height: 1.2 m }
`,
    });
    const rows = evaluated?.report.warnings ?? [];
    const shade = rows.find(({ code }) => code === "panel-shades-key");
    expect(shade?.message).toMatch(/^globe stands between key and the meter held before the face:/);
    const power = rows.find(({ code }) => code === "not-enough-power");
    expect(power?.message).toMatch(/^globe hides 100 % of key from the meter/);
    expect(power?.remedy).toMatch(/^Move key or globe,.* without globe full power is \d\.\d stop over\.$/);
  });

  test("a lamp that is off is not asked, nor one for the background", () => {
    const off = { kind: "off", written: "off" } as const;
    expect(findings(rule, with_(2, 2.2, { power: off }))).toEqual([]);
    expect(findings(rule, with_(2, 2.2, { role: "background" }))).toEqual([]);
  });
});

describe("blocked", () => {
  const back = block("flat", "back", { size: size(m(2), m(2)), at: offset({ behind: m(1.5) }) });
  const screen = (height: number) =>
    block("flat", "screen", { size: size(m(1), m(height)), at: offset({ behind: m(0.5) }) });
  /** A lamp before a screen that is aimed at the middle of the flat behind it, 1 m up. */
  const wash = (height: number) => ({
    set: setOf(back as never, screen(height) as never),
    subjects: [],
    lights: [
      dishOnFloor({ bearing: left(deg(0)), height: m(1), aim: named("back"), shape: disc(cm(20)) }, "wash"),
    ],
  });

  test("speaks when more than half of the light does not reach what it is aimed at", () => {
    // The lamp is level with its aim, so the middle of the opening is hidden by a screen higher than 1 m.
    expect(findings(blocked, wash(1.01))).toHaveLength(1);
    expect(findings(blocked, wash(0.99))).toHaveLength(0);
    expect(finding(blocked, wash(1.5)).message).toContain("screen hides 100 % of wash");
    const { remedy } = finding(blocked, wash(1.3));
    const height = numberAfter(remedy, "Raise wash to", "m");
    const raised = (to: number) => ({
      ...wash(1.3),
      lights: [dishOnFloor({ bearing: left(deg(0)), height: m(to), aim: named("back") }, "wash")],
    });
    expect(findings(blocked, raised(height))).toHaveLength(0);
    expect(findings(blocked, raised(height - 0.2))).toHaveLength(1);
  });

  test("leaves a face to the other warning, and is silent over the surface that is aimed at", () => {
    expect(findings(blocked, with_(2))).toHaveLength(0);
    expect(findings(blocked, { ...wash(0.5), set: setOf(back as never) })).toHaveLength(0);
  });
});
