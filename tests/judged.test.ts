import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compile } from "../src/compile.js";
import { evaluateSetUps, judgeSetUps } from "../src/set-ups.js";
import { withOurKits } from "./helpers/kits.js";

const folder = new URL("../examples/", import.meta.url);

describe("what a check is told without the rest of a report", () => {
  for (const name of ["window.light", "lessons/what-changed.light"]) {
    test(`is what the reports of ${name} say`, () => {
      const text = readFileSync(new URL(name, folder), "utf8");
      const source = { name, text };
      const { recipe } = compile(source, withOurKits);
      if (recipe === null) throw new Error(`${name} is wrong`);
      const told = judgeSetUps(recipe, { source });
      const whole = evaluateSetUps(recipe, { source }).map(({ report, diagnostics }) => ({
        expectations: report.expectations,
        warnings: report.warnings,
        diagnostics,
        variant: report.variant,
      }));
      expect(told).toEqual(whole);
      expect(told.flatMap((row) => row.expectations).length).toBeGreaterThan(0);
    });
  }
});
