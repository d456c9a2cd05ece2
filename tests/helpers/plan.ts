import { disc, fractionOfFull, metered, sphere } from "../../src/model/make/lamps.js";
import { at, left, offset, tape } from "../../src/model/make/points.js";
import { size, volume } from "../../src/model/make/sizes.js";
import { sunlight } from "../../src/model/make/surroundings.js";
import type { LightModel, Recipe, SetModel } from "../../src/model/types.js";
import type { Plan } from "../../src/report/plan.js";
import type { Rule, RuleFinding } from "../../src/report/rules/rule.js";
import { buildScene } from "../../src/scene/build.js";
import { sceneLight } from "../../src/transport/scene-light.js";
import { cm, deg, fNumber, iso, m, mm, number, percent, shutterOneOver } from "../../src/units/make.js";
import { block, recipe } from "./models.js";

type LightFields = Parameters<typeof block<"light">>[2];

/** A person 1.70 m tall on the mark: face at 1.586 m. Black, so that nothing bounces and sums by hand hold. */
export const person = block("subject", null, { height: m(1.7), skin: percent(0), cloth: percent(0) });

/** An upright camera 3.5 m from the mark, lens at 1.3 m, 85 mm, f/8, 1/125 s, ISO 200. */
export const camera = block("camera", null, {
  held: "upright",
  focal_length: mm(85),
  aperture: fNumber(8),
  shutter: shutterOneOver(125),
  sensitivity: iso(200),
  distance: tape(m(3.5)),
  height: m(1.3),
});

/** A camera 4 m before the mark, 1.5 m high, upright, that is focused far away: at the mark it takes in 24 / f of 4 m. */
export const far = (focal: number, more: object = {}) =>
  block("camera", null, {
    ...camera,
    focal_length: mm(focal),
    distance: tape(m(4)),
    height: m(1.5),
    focus: at(m(0), m(1e9), m(1.5)),
    ...more,
  });

/** A dish of 20 cm metered at f/8 from 2 m, 2.4 m away on the slant at camera-left, 2.2 m up, at 1/2 power. */
export function dish(fields: Partial<LightFields> = {}, name = "key"): LightModel {
  return block("light", name, {
    shape: disc(cm(20)),
    calibration: metered(fNumber(11), m(2), iso(100)),
    power: fractionOfFull({ ...number(0.5), written: "1/2" }),
    distance: tape(m(2.4)),
    bearing: left(deg(35)),
    height: m(2.2),
    ...fields,
  } as LightFields);
}

/** A bare bulb of 8 cm that gives f/5.6 at 2 m, otherwise as the dish. */
export function bulb(fields: Partial<LightFields> = {}, name = "key"): LightModel {
  return dish({ shape: sphere(cm(8)), calibration: metered(fNumber(5.6), m(2), iso(100)), ...fields }, name);
}

/** The same dish, placed along the floor: 2 m from the mark, which keeps its spot when its height changes. */
export function dishOnFloor(fields: Partial<LightFields> = {}, name = "key"): LightModel {
  return block("light", name, {
    shape: disc(cm(20)),
    calibration: metered(fNumber(11), m(2), iso(100)),
    power: fractionOfFull({ ...number(0.5), written: "1/2" }),
    floor_distance: tape(m(2)),
    bearing: left(deg(35)),
    height: m(2.2),
    ...fields,
  } as LightFields);
}

/** A room of 5 x 7 x 2.8 m with the mark in its middle. */
export const room = block("room", null, { size: volume(m(5), m(7), m(2.8)) });

/** A wish for sunlight at 30 deg. */
export const sun = block("intent", null, { pass_for: sunlight(deg(30)) });

/** A white flat behind the subject: 1.5 m wide, 2 m high, 60 cm behind the mark. */
export const flat = block("flat", "back", { size: size(m(1.5), m(2)), at: offset({ behind: cm(60) }) });

/** A set with these pieces in it. */
export function setOf(...parts: SetModel["parts"]): SetModel {
  return block("set", null, { parts }) as SetModel;
}

/** A plan of person, dish and camera, changed as a test says. */
export function planOf(parts: Partial<Recipe> = {}): Plan {
  const made = recipe({ subjects: [person], lights: [dish()], camera, ...parts });
  const scene = buildScene(made, () => undefined);
  return { recipe: made, scene, light: sceneLight(scene) };
}

/** What a rule finds in a plan. */
export function findings(rule: Rule, parts: Partial<Recipe> = {}): readonly RuleFinding[] {
  return rule.check(planOf(parts));
}

/** The only finding of a rule; throws where there is none or more than one. */
export function finding(rule: Rule, parts: Partial<Recipe> = {}): RuleFinding {
  const found = findings(rule, parts);
  if (found.length !== 1 || found[0] === undefined) {
    throw new Error(`${rule.code}: ${found.length} findings: ${found.map((row) => row.message).join(" | ")}`);
  }
  return found[0];
}

/** The number before a unit in a sentence, where it stands after some words: `numberAfter(text, "to", "m")`. */
export function numberAfter(text: string, words: string, unit: string): number {
  const match = new RegExp(`${words}\\s+(-?\\d+(?:\\.\\d+)?)\\s*${unit}\\b`).exec(text);
  if (match?.[1] === undefined) throw new Error(`no "${words} ... ${unit}" in: ${text}`);
  return Number(match[1]);
}
