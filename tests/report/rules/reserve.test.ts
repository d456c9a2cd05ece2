import { describe, expect, test } from "vitest";
import { run } from "../../../src/pipeline.js";
import { blackenUntil, litOwners } from "../../../src/report/change/blacken.js";
import { atPower, withSource } from "../../../src/report/change/move-source.js";
import type { Plan } from "../../../src/report/plan.js";
import { beyondDial, powerWords } from "../../../src/report/rules/power-words.js";
import type { Report } from "../../../src/report/schema/report.js";
import { buildScene } from "../../../src/scene/build.js";
import type { Source } from "../../../src/scene/types.js";
import { sceneLight } from "../../../src/transport/scene-light.js";
import { numberAfter, planOf } from "../../helpers/plan.js";

/** Dials of cameras: ISO values in thirds of a stop. */
const steps = (from: number, to: number): number => Math.log2(to / from);

interface Shot {
  readonly glow?: string;
  readonly key?: string;
  readonly place?: string;
  readonly iso?: number;
  readonly wish?: string;
}

const text = ({
  glow = "full - 1 stop",
  key = "1/4",
  place = "offset(right: 1.6 m, behind: 60 cm, up: 1.2 m)",
  iso = 200,
  wish = "background: 0.5 stop over face.disc(towards: key)",
}: Shot) => `halfshade 1
recipe "Grey paper"
room { size: 4.2 x 7 x 2.8 m, mark: from(left: 2.1 m, back: 2.4 m), walls { reflectance: 30 % } }
set { flat back { size: 3 x 2.6 m, at: offset(behind: 2 m), reflectance: 60 %, secured: fixed } }
subject { height: 1.7 m }
light key { role: key, shape: disc(60 cm), calibration: metered(f/11, at: 2 m, ISO 100), distance: 1.6 m, bearing: left(35 deg), height: 2.1 m, power: ${key} }
light glow { role: background, shape: disc(18 cm), calibration: metered(f/5.6, at: 2 m, ISO 100), position: ${place}, aim: back, power: ${glow} }
camera { held: upright, focal_length: 85 mm, aperture: f/11, shutter: 1/125 s, sensitivity: ISO ${iso}, distance: 2.8 m, height: 1.5 m }
intent { ${wish} }
`;

function reportOf(source: string): Report {
  const { evaluated, diagnostics } = run({ name: "reserve.light", text: source });
  if (evaluated === null) throw new Error(JSON.stringify(diagnostics));
  return evaluated.report;
}

function planFromText(source: string): Plan {
  const { recipe } = run({ name: "reserve.light", text: source });
  if (recipe === null) throw new Error(source);
  const scene = buildScene(recipe, () => undefined);
  return { recipe, scene, light: sceneLight(scene) };
}

const remedyOf = (code: string, source: string): string =>
  reportOf(source).warnings.find((row) => row.code === code)?.remedy ?? "";
const missOf = (shot: Shot): number => {
  const { message } = reportOf(text(shot)).warnings.find((row) => row.code === "background-off") ?? {};
  if (message === undefined) return 0;
  return numberAfter(message, "is", "stop too") * (message.includes("bright") ? 1 : -1);
};

describe("a background lamp that is to give more than it has", () => {
  const remedy = remedyOf("background-off", text({}));

  test("is turned up no further than full power, and what that comes to is so", () => {
    expect(numberAfter(remedy, "Turned up by", "stop")).toBe(1);
    const left = numberAfter(remedy, "background is then", "stop under its wish");
    expect(missOf({ glow: "full" })).toBeCloseTo(-left, 1);
    expect(left).toBeGreaterThan(0.5);
  });

  test("meets the wish from as near as it says", () => {
    const away = numberAfter(remedy, "bring glow to", "m");
    // The middle of the flat: 1.3 m up, 2 m behind the mark. From there along the line to the lamp.
    const way = [1.6, -1.4, -0.1].map((x) => x / Math.hypot(1.6, 1.4, 0.1));
    const [x, y, z] = way.map((share) => share * away) as [number, number, number];
    const place = `(${x} m, ${2 + y} m, ${1.3 + z} m)`;
    expect(missOf({ glow: "full", place })).toBe(0);
    expect(missOf({ glow: "full", place: `(${1.15 * x} m, ${2 + 1.15 * y} m, ${1.3 + 1.15 * z} m)` })).toBe(
      0,
    );
    expect(
      missOf({ glow: "full", place: `(${1.3 * x} m, ${2 + 1.3 * y} m, ${1.3 + 1.3 * z} m)` }),
    ).toBeLessThan(0);
  });

  test("meets it with the key down as it says, and the camera makes up for what the face loses", () => {
    const down = numberAfter(remedy, "turn key down by", "stop");
    expect(missOf({ glow: "full", key: `full - ${2 + down} stop` })).toBe(0);
    const { stations: before } = reportOf(text({ glow: "full" }));
    const { stations: after } = reportOf(text({ glow: "full", key: `full - ${2 + down} stop` }));
    const lost = Math.log2((before[0]?.exposure.total ?? 0) / (after[0]?.exposure.total ?? 1));
    const iso = Number(/ISO (\d+)/.exec(remedy)?.[1]);
    expect(steps(200, iso)).toBeGreaterThan(lost - 0.05);
    expect(steps(200, iso)).toBeLessThan(lost + 0.4);
  });

  test("that has enough is only turned up", () => {
    const enough = remedyOf(
      "background-off",
      text({ glow: "full - 4 stop" }).replace("f/5.6, at", "f/16, at"),
    );
    expect(enough).toMatch(/^Turn glow up by .* at its wish\.$/);
  });
});

describe("what a dial does not give", () => {
  const lamp = (below: number | null, lowest: number | null): Source =>
    ({ ...planOf().scene.sources[0], below, lowest }) as Source;

  test("is what lies beyond its ends", () => {
    expect(beyondDial(lamp(1, 6), 0.9)).toBe(0);
    expect(beyondDial(lamp(1, 6), 1.4)).toBeCloseTo(0.4, 12);
    expect(beyondDial(lamp(1, 6), -5)).toBe(0);
    expect(beyondDial(lamp(1, 6), -5.5)).toBeCloseTo(-0.5, 12);
    expect(beyondDial(lamp(1, null), -9)).toBe(0);
    expect(beyondDial(lamp(null, null), 9)).toBe(0);
  });

  test("is said, with the ISO value that makes up for it", () => {
    const plan = planOf();
    // The only light is turned by hand: what it loses is what it has to give again.
    const words = (below: number, lowest: number, lost: number): string => {
      const source = lamp(below, lowest);
      return powerWords(plan, withSource(plan, 0, atPower(source, -lost)), source);
    };
    expect(words(1, 6, 0.7)).toBe(", with 0.7 stop more power for the same reading");
    // ISO 200 and 0.4 stop are ISO 264: ISO 320 is the next on the dial.
    expect(words(1, 6, 1.4)).toMatch(/1\.4 stop more .* 0\.4 stop more than key has \(ISO 320/);
    expect(words(1, 2, -2)).toMatch(/2\.0 stop less .* 1\.0 stop lower than key goes/);
    expect(words(1, 6, 0.04)).toBe("");
  });
});

describe("what is the light itself", () => {
  const lit = (light: string): string => `halfshade 1
recipe "Wall"
room { size: 4.2 x 5.5 x 2.6 m, mark: from(left: 1.6 m, back: 1.6 m), walls { reflectance: 70 % } }
set { scrim silk { size: 1 x 1 m, at: offset(left: 1 m, ahead: 70 cm, up: 1.4 m), faces: face, loses: 1 stop } }
subject { height: 1.7 m }
light key { role: key, shape: disc(18 cm), calibration: metered(f/16, at: 2 m, ISO 100), ${light} }
camera { held: upright, focal_length: 85 mm, aperture: f/5.6, shutter: 1/125 s, sensitivity: ISO 200, distance: 3 m, height: 1.5 m }
intent { lit_to_shadow: 4 stop }
`;
  const wall = lit(
    "position: offset(left: 60 cm, ahead: 90 cm, up: 1.9 m), aim: offset(left: 1.6 m, ahead: 50 cm, up: 1.9 m), into: wall_left",
  );

  test("is not covered with black, whatever it does for the shaded side", () => {
    const plan = planFromText(wall);
    expect(litOwners(plan)).toEqual(["wall left"]);
    const shaded = plan.scene.stations.find(({ name }) => name === "shaded_cheek");
    if (shaded === undefined) throw new Error("no cheek");
    const owners = blackenUntil(plan, shaded, null, () => false)?.owners ?? [];
    expect(owners).toHaveLength(3);
    expect(owners).not.toContain("wall left");
    expect(remedyOf("ratio-off", wall)).not.toContain("left wall");
    expect(
      litOwners(planFromText(lit("position: offset(left: 1.4 m, ahead: 1.1 m, up: 2.2 m), through: silk"))),
    ).toEqual(["silk"]);
    expect(litOwners(planFromText(wall.replace("into: wall_left", "into: wall_left, power: off")))).toEqual(
      [],
    );
  });

  test("is kept white where its colour fills the shade", () => {
    const tinted = wall.replace(
      "walls { reflectance: 70 % }",
      'walls { reflectance: 70 % }, wall left { reflectance: 70 %, tint: "green" }',
    );
    expect(remedyOf("bounce-colour", tinted)).toContain("It is the light itself");
    expect(remedyOf("bounce-colour", tinted)).not.toContain("black");
  });
});

describe("lamps of one wish whose dials differ", () => {
  const pair = (one: string, two: string, key = "full", wish = "2 stop over"): string => `halfshade 1
recipe "Two dials"
room { size: 5 x 8 x 3 m }
set { flat back { size: 3 x 2.6 m, at: offset(behind: 1.8 m), secured: fixed, reflectance: 80 % } }
subject { height: 1.7 m }
light key { role: key, shape: disc(60 cm), calibration: metered(f/11, at: 2 m, ISO 100), distance: 1.5 m, bearing: left(40 deg), height: 2.1 m, power: ${key} }
light west { role: background, shape: disc(18 cm), calibration: metered(f/11, at: 2 m, ISO 100), lowest_power: 1/16, position: offset(left: 1.6 m, behind: 0.6 m, up: 1.5 m), aim: back, power: ${one} }
light east { role: background, shape: disc(18 cm), calibration: metered(f/11, at: 2 m, ISO 100), lowest_power: 1/16, position: offset(right: 1.6 m, behind: 0.6 m, up: 1.5 m), aim: back, power: ${two} }
camera { held: upright, focal_length: 85 mm, aperture: f/8, shutter: 1/160 s, sensitivity: ISO 100, distance: 2.6 m, height: 1.5 m }
intent { background: ${wish} face.disc(towards: key) }
`;
  const words = (...shot: Parameters<typeof pair>): string => remedyOf("background-off", pair(...shot));

  test("are at full power only where they are, and the rest have what they have", () => {
    // 1/8 is three stops below full, 1/2 one.
    expect(words("1/8", "1/2")).toMatch(
      /^With west and east turned up by 1\.0 stop, east is at full power \(west has 2\.0 stop left\):/,
    );
    expect(words("1/2", "1/2")).toMatch(/^Turned up by 1\.0 stop, west and east are at full power:/);
    expect(words("full", "1/4", "full", "1 stop over")).toMatch(
      /^west has no power left \(east has 2\.0 stop left\), and/,
    );
    expect(words("full", "full", "full", "1 stop over")).toMatch(/^west and east have no power left, and/);
  });

  test("end at the bottom only where they do, and the rest are turned down", () => {
    // 1/8 is one stop above the lowest, 1/1 four.
    const dark = words("1/8", "full", "1/8", "1 stop under");
    const down = numberAfter(dark, "Turn east down by", "stop");
    expect(dark).toMatch(/; west can be turned down by only 1\.0 stop: put a neutral gel .* before it,/);
    expect(numberAfter(dark, "gel of", "stop")).toBeGreaterThanOrEqual(down - 1);
    expect(numberAfter(dark, "gel of", "stop")).toBeLessThan(down - 0.5 + 0.01);
    const both = words("1/8", "1/16", "1/32", "2 stop under");
    expect(both).toMatch(
      /^west and east can be turned down by only 1\.0 stop and 0\.0 stop: .* before each,/,
    );
  });
});
