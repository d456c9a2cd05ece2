import { readdirSync, readFileSync } from "node:fs";
import { run } from "../../src/pipeline.js";
import type { Report, ReportLight } from "../../src/report/schema/report.js";
import { withOurKits } from "../helpers/kits.js";

const folder = new URL("../../examples/", import.meta.url);

/** The files of the examples' folder by name, in order. */
export const files: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith(".light"))
  .sort();

/** The recipes among them: all but the kit and the session. */
export const recipes: readonly string[] = files.filter(
  (name) => !["foundry-kit.light", "first-evening.light"].includes(name),
);

/** The text of an example. */
export function textOf(name: string): string {
  return readFileSync(new URL(name, folder), "utf8");
}

const kept = new Map<string, Report>();

/** The report of an example, worked out once. */
export function reportOf(name: string): Report {
  const before = kept.get(name);
  if (before !== undefined) return before;
  const outcome = run({ name, text: textOf(name) }, withOurKits);
  if (outcome.evaluated === null) throw new Error(`${name} has no report`);
  kept.set(name, outcome.evaluated.report);
  return outcome.evaluated.report;
}

/** A light of a report. */
export function lightOf(name: string, light: string): ReportLight {
  const found = reportOf(name).lights.find((row) => row.name === light);
  if (found === undefined) throw new Error(`${name} has no light ${light}`);
  return found;
}

/** Direct luminous exposure at a station, lx s, of all lights or of one. */
export function exposureAt(
  name: string,
  station: string,
  light: string | null = null,
  receptor = "disc",
): number {
  const found = reportOf(name).stations.find((row) => row.name === station && row.receptor === receptor);
  if (found === undefined) throw new Error(`${name} has no station ${station}`);
  if (light === null) return found.exposure.direct;
  const share = found.exposure.lights.find((row) => row.name === light);
  if (share === undefined) throw new Error(`${name} has no light ${light}`);
  return share.direct;
}

/** A result that the report gives unasked, by the words in which one asks for it. */
export function resultOf(name: string, text: string): number | null {
  const found = reportOf(name).results.find((row) => row.text === text);
  if (found === undefined) throw new Error(`${name} has no result ${text}`);
  return found.value;
}

/** The value found for the expectation that begins with some words. */
export function foundFor(name: string, words: string): number | null {
  const found = reportOf(name).expectations.filter((row) => row.text.startsWith(`expect ${words}`));
  if (found.length !== 1) throw new Error(`${name} has ${found.length} expectations of ${words}`);
  return found[0]?.value ?? null;
}
