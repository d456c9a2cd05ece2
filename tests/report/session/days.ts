import { kitsAmong } from "../../../src/check/kits/texts.js";
import { compile } from "../../../src/compile.js";
import { evaluateReading } from "../../../src/report/evaluate/reading.js";
import type { SessionReport } from "../../../src/report/schema/session.js";
import { buildScene } from "../../../src/scene/build.js";
import { evaluateSession } from "../../../src/set-ups.js";
import { sceneLight } from "../../../src/transport/scene-light.js";

/** A boat shed with a key, a fill and a cloth behind the sitter. */
export const shed = `halfshade 1
recipe "The boat shed"
room {
  size: 5 x 6 x 3 m
  mark: from(left: 2.5 m, back: 2.2 m)
  walls { reflectance: 50 % }
  ceiling { reflectance: 60 % }
  floor { reflectance: 20 % }
}
subject { height: 1.72 m }
light key {
  role: key
  shape: disc(60 cm)
  output: 1200 lm s
  distance: 2 m
  bearing: left(40 deg)
  height: 2.3 m
  power: full - 2 stop
}
light fill {
  shape: disc(60 cm)
  output: 1200 lm s
  distance: 2.6 m
  bearing: right(50 deg)
  height: 1.8 m
  power: full - 3.5 stop
}
camera {
  held: upright
  focal_length: 70 mm
  aperture: f/8
  shutter: 1/125 s
  sensitivity: ISO 200
  distance: 3 m
  height: 1.4 m
}
`;

/** Where the meter is held in the shed. */
export const places = [
  "face.disc(towards: key)",
  "face.disc(towards: fill)",
  "face.dome(towards: camera)",
  "shaded_cheek",
  "chest.disc(towards: key)",
  "shin.disc(towards: key)",
] as const;

/** What a session of a recipe comes to; throws with the findings of a text that has any error. */
export function day(recipe: string, lines: readonly string[]): SessionReport {
  const text = `halfshade 1\nsession "A day" of "./plan.light"\nmeasured {\n${lines.join("\n")}\n}\n`;
  const read = kitsAmong(new Map([["plan.light", recipe]]));
  const { session, diagnostics } = compile({ name: "day.light", text }, { read });
  if (session === null) throw new Error(diagnostics.map(({ code }) => code).join(", "));
  return evaluateSession(session);
}

/** What a meter would show in a set-up, in lx s, off by so many stops at each place in turn. */
export function metered(
  truth: string,
  at: readonly string[],
  noise: readonly number[] = [0],
): readonly string[] {
  const lines = at.map((place) => `${place} is 1 lx s`);
  const text = `halfshade 1\nsession "Truth" of "./plan.light"\nmeasured {\n${lines.join("\n")}\n}\n`;
  const read = kitsAmong(new Map([["plan.light", truth]]));
  const { session, diagnostics } = compile({ name: "day.light", text }, { read });
  if (session === null) throw new Error(diagnostics.map(({ code }) => code).join(", "));
  const scene = buildScene(session.plan, () => undefined);
  const plan = { recipe: session.plan, scene, light: sceneLight(scene) };
  return session.readings.map(({ what, reading }, i) => {
    const exposure = evaluateReading(plan, reading).reading?.exposure ?? Number.NaN;
    return `${what} is ${(exposure * Math.exp((noise[i % noise.length] ?? 0) * Math.LN2)).toFixed(6)} lx s`;
  });
}

/** The reading at a place. */
export function readingAt(report: SessionReport, what: string): SessionReport["readings"][number] {
  const found = report.readings.find((row) => row.what === what);
  if (found === undefined) throw new Error(`no reading of ${what}`);
  return found;
}

/** What is found of a lamp. */
export function lampOf(report: SessionReport, name: string): SessionReport["lamps"][number] {
  const found = report.lamps.find((row) => row.name === name);
  if (found === undefined) throw new Error(`no lamp ${name}`);
  return found;
}
