import { readFileSync } from "node:fs";
import { bench, describe } from "vitest";
import { compile } from "../../src/compile.js";
import { tablesOf } from "../../src/pipeline.js";
import { inForm } from "../../src/render/tables/form.js";
import { withOurKits } from "../helpers/kits.js";

/**
 * Rows of lesson tables of `examples/window.light` (two lamps, a room, a set of panels, stool and bench, a seated
 * person; three columns: a disc at the face, lit to shaded cheek, a dome held against the aperture). Baseline: the same
 * columns for one row, evaluated from text: read, checked, built and lit anew. Clock: CPU time of the process, least of
 * 5 rounds taken in turn. `quick` changes a power, `written` writes those rows as CSV, too, `moved` moves the fill with
 * bounced light included.
 */
const text = readFileSync(new URL("../../examples/window.light", import.meta.url), "utf8");
const ROUNDS = Number(process.env.TABLE_ROUNDS ?? 5);

const table = (sweep: string): string => `${text}
table "bench" {
  sweep ${sweep}
  show face.disc(towards: bay_light), lit_to_shadow(face), stops_from_aperture(face.dome(towards: camera))
}
`;

const made = (sweep: string) => {
  const [first] = tablesOf(compile({ name: "window.light", text: table(sweep) }, withOurKits));
  if (first === undefined) throw new Error("the bench's own table is wrong");
  return first;
};

const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return user + system;
};

/** Microseconds for each of some rows, those that come first left out. */
function perRow(rows: Iterator<unknown>, count: number): number {
  rows.next();
  const start = cpu();
  for (let i = 0; i < count; i++) rows.next();
  return (cpu() - start) / count;
}

const contenders = {
  naive: (): number => {
    const start = cpu();
    for (const _ of made("fill.power over [full]").work());
    return cpu() - start;
  },
  quick: (): number => perRow(made("fill.power from full to 1/64 count 4000").work(), 3990),
  written: (): number => perRow(inForm("csv", [made("fill.power from full to 1/64 count 4000")], 80), 3990),
  moved: (): number => perRow(made("fill.distance from 1.5 m to 2 m count 40").work(), 38),
};

const least = new Map<string, number>();
for (let round = 0; round < ROUNDS; round++) {
  for (const [name, run] of Object.entries(contenders)) {
    least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, run()));
  }
}
const [naive = Number.NaN, quick = Number.NaN, written = Number.NaN, moved = Number.NaN] = [
  "naive",
  "quick",
  "written",
  "moved",
].map((name) => least.get(name));
const line = `a row from text ${(naive / 1000).toFixed(1)} ms; quick ${(naive / quick).toFixed(0)} times cheaper, written ${(naive / written).toFixed(0)}; with a lamp moved ${(moved / naive).toFixed(2)} of it`;

describe(line, () => {
  bench(
    "a table of 100 powers",
    () => {
      for (const _ of made("fill.power from full to 1/64 count 100").work());
    },
    { iterations: 3, time: 0 },
  );
});
