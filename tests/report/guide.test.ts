import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { intentThresholds } from "../../src/report/intent/build.js";
import { explainWarning, warningCodes, warningsGuide } from "../../src/report/rules/explain.js";
import { rules } from "../../src/report/rules/index.js";
import { sessionThresholds } from "../../src/report/session/limits.js";
import { thresholdTable } from "../../src/vocabulary/thresholds.js";

const guide = readFileSync(new URL("../../docs/guide/warnings.md", import.meta.url), "utf8");

test("the guide is what the rules say; make it anew with tests/generate/warnings-guide.ts", () => {
  expect(guide).toBe(warningsGuide());
});

test("every rule has its section and every section its rule", () => {
  const sections = [...guide.matchAll(/^## (.+)$/gm)].map((match) => match[1]);
  expect(sections).toEqual(warningCodes);
  expect(new Set(warningCodes).size).toBe(warningCodes.length);
  for (const code of warningCodes) expect(code).toMatch(/^[a-z]+(-[a-z]+)+$|^[a-z]+$/);
});

test("pages are found by code and by nothing else", () => {
  expect(explainWarning("low-sun")).toContain("15 deg");
  expect(explainWarning("constructor")).toBeNull();
});

test("every threshold is used by a rule, a wish or a session", () => {
  const used = new Set<string>([
    ...rules.flatMap((rule) => rule.thresholds),
    ...intentThresholds,
    ...sessionThresholds,
  ]);
  expect(thresholdTable.map((row) => row.name).filter((name) => !used.has(name))).toEqual([]);
});

test("thresholds that a page names in words are those of the table", () => {
  for (const rule of rules) {
    for (const name of rule.thresholds) {
      const row = thresholdTable.find((candidate) => candidate.name === name);
      const said = new RegExp(`\`${name}\` \\((\\d+(?:\\.\\d+)?) ?(cm|ms|m|deg|stop|mired|N|%)?`).exec(
        rule.page.when,
      );
      if (said === null || row === undefined) continue;
      const value =
        Number(said[1]) * (said[2] === "cm" || said[2] === "%" ? 0.01 : said[2] === "ms" ? 0.001 : 1);
      expect(value, name).toBeCloseTo(row.value, 12);
    }
  }
});
