import { asSentence } from "../diagnostics/print-sentence.js";
import { seenLight } from "../scene/lit/seen.js";
import { bearingOf, elevationOf } from "./geometry/directions.js";
import { whyNoLight } from "./light/no-light.js";
import { fNumberOf, readingAt, stopsFromAperture } from "./light/reading.js";
import { sizeFrom } from "./light/size.js";
import { faceWords, firstSubject, keyOf, lightsOn, type Plan, stationOf } from "./plan.js";
import { headSpill } from "./rules/head-spill.rule.js";
import { keyLight } from "./rules/key-light.js";
import { fixed, list } from "./say/number.js";
import { overUnder, sideWords } from "./say/over-under.js";
import { sayAngle, sayFNumber } from "./say/quantity.js";
import type { ReportExpectation, ReportWarning } from "./schema/report.js";
import { hardnessPhrase } from "./words.js";

/** A light this steep, in degrees, comes from overhead, whatever its bearing (common practice, no source). */
const OVERHEAD = 80;

/** One plain sentence that a photographer can act on: the light, the reading, and how many findings wait. */
export function headline(
  plan: Plan,
  warnings: readonly ReportWarning[],
  expectations: readonly ReportExpectation[],
): string {
  const parts = [lightPart(plan), readingPart(plan), findings(warnings, expectations)];
  const words = parts.filter((part) => part !== "").join("; ");
  const names = [...plan.scene.sources, ...plan.scene.subjects].map((row) => row.name);
  return asSentence(words, names);
}

function lightPart(plan: Plan): string {
  const { scene } = plan;
  const key = keyOf(scene);
  const subject = firstSubject(scene);
  if (lightsOn(scene).length === 0) return "no light is on";
  if (subject === null) return withNobody(scene);
  if (key === null) return "no light is the key";
  const seen = seenLight(key);
  const size = sizeFrom(seen, subject.face);
  const side = bearingOf(subject.face, seen.centre);
  const elevation = elevationOf(subject.face, seen.centre);
  const where = side === null || elevation >= OVERHEAD ? "from overhead" : `from ${sideWords(side)}`;
  const height = `at ${sayAngle(elevation)}`;
  if (size === null) return `${key.name} does not show its lit side to the face`;
  const lit = keyLight(plan);
  const spill = lit === null ? null : headSpill(plan, lit);
  const past =
    spill === null ? "" : `, and ${hardnessPhrase(spill.size).toLowerCase()} light straight from its head`;
  return `${hardnessPhrase(size.equivalent)} light ${where} ${height}${past}`;
}

/** Without a person: the key or else the first light that is on, from where it is aimed. */
function withNobody(scene: Plan["scene"]): string {
  const source = keyOf(scene) ?? lightsOn(scene)[0];
  const light = source === undefined ? undefined : seenLight(source);
  const size = light === undefined ? null : sizeFrom(light, light.aim);
  if (light === undefined || size === null) return "there is no subject to take the light from";
  const steep = sayAngle(elevationOf(light.aim, light.centre));
  return `there is no subject; ${light.name} is a ${hardnessPhrase(size.equivalent).toLowerCase()} light on its aim at ${steep}`;
}

function readingPart(plan: Plan): string {
  const { scene, recipe } = plan;
  const subject = firstSubject(scene);
  const station = subject === null ? null : stationOf(scene, subject, "face");
  if (station === null) return "";
  const reading = readingAt(plan, station);
  if (!(reading.exposure > 0)) return `${faceWords(scene)} ${whyNoLight(scene, station.at, station.facing)}`;
  const fNumber = fNumberOf(scene, reading.exposure, reading.constant);
  if (fNumber === null) return `${faceWords(scene)} gets ${Number(reading.exposure.toPrecision(2))} lx s`;
  const at = recipe.camera?.sensitivity?.written ?? `ISO ${fixed(scene.camera?.iso ?? 0, 0)}`;
  const base = `${faceWords(scene)} reads ${sayFNumber(fNumber)} at ${at}`;
  const off = stopsFromAperture(scene, reading.exposure, reading.constant);
  return off === null ? base : `${base}, ${overUnder(off, "the set aperture")}`;
}

function findings(warnings: readonly ReportWarning[], expectations: readonly ReportExpectation[]): string {
  const parts: string[] = [];
  for (const [severity, noun] of [
    ["stop", "stop"],
    ["check", "check"],
    ["note", "note"],
  ] as const) {
    const amount = warnings.filter((row) => row.severity === severity).length;
    if (amount > 0) parts.push(`${fixed(amount, 0)} ${noun}${amount === 1 ? "" : "s"}`);
  }
  const missed = expectations.filter((row) => row.outcome !== "passed").length;
  if (missed > 0) parts.push(`${fixed(missed, 0)} of ${fixed(expectations.length, 0)} expectations not met`);
  return list(parts);
}
