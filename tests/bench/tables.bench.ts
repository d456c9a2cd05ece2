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
 * bounced light included. A moved lamp alone is worked out anew, so what it costs of a whole set-up depends on how many
 * lamps that has: both are told for the two of the example, and for three.
 */
const text = readFileSync(new URL("../../examples/window.light", import.meta.url), "utf8");
const ROUNDS = Number(process.env.TABLE_ROUNDS ?? 5);

/** A third lamp, from behind. */
const THIRD = `
light behind_her like great_head with cloak {
  role: rim
  aim: far_side
  distance: 2.4 m
  bearing: left(150 deg)
  elevation: 30 deg
  power: 20 Ws
}
`;

const table = (sweep: string, more: string): string => `${text}${more}
table "bench" {
  sweep ${sweep}
  show face.disc(towards: bay_light), lit_to_shadow(face), stops_from_aperture(face.dome(towards: camera))
}
`;

const made = (sweep: string, more = "") => {
  const [first] = tablesOf(compile({ name: "window.light", text: table(sweep, more) }, withOurKits));
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

function fromText(more = ""): number {
  const start = cpu();
  for (const _ of made("fill.power over [full]", more).work());
  return cpu() - start;
}

const moving = (more = ""): number =>
  perRow(made("fill.distance from 1.5 m to 2 m count 40", more).work(), 38);

const contenders = {
  naive: (): number => fromText(),
  quick: (): number => perRow(made("fill.power from full to 1/64 count 4000").work(), 3990),
  written: (): number => perRow(inForm("csv", [made("fill.power from full to 1/64 count 4000")], 80), 3990),
  moved: (): number => moving(),
  naiveOfThree: (): number => fromText(THIRD),
  movedOfThree: (): number => moving(THIRD),
};

const least = new Map<string, number>();
for (let round = 0; round < ROUNDS; round++) {
  for (const [name, run] of Object.entries(contenders)) {
    least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, run()));
  }
}
const of = (name: keyof typeof contenders): number => least.get(name) ?? Number.NaN;
const times = (name: keyof typeof contenders): string => (of("naive") / of(name)).toFixed(0);
const line = [
  `a row from text ${(of("naive") / 1000).toFixed(1)} ms`,
  `quick ${times("quick")} times cheaper, written ${times("written")}`,
  `with one of two lamps moved ${(of("moved") / of("naive")).toFixed(2)} of it, with one of three ${(of("movedOfThree") / of("naiveOfThree")).toFixed(2)}`,
].join("; ");

describe(line, () => {
  bench(
    "a table of 100 powers",
    () => {
      for (const _ of made("fill.power from full to 1/64 count 100").work());
    },
    { iterations: 3, time: 0 },
  );
});
