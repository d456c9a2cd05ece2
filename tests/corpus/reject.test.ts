import { expect, test } from "vitest";
import { type Code, catalogue } from "../../src/diagnostics/catalogue/index.js";
import type { CatalogueRow } from "../../src/diagnostics/catalogue/row.js";
import { run } from "../../src/pipeline.js";
import { withOurKits } from "../helpers/kits.js";
import { applyFix } from "./fixes.js";
import { corpusTexts, keptBeside } from "./folder.js";
import { findingsJson, findingsOf } from "./layers.js";
import { fromCaller, fromFiles, fromModels, fromWriter, tooLargeToKeep } from "./unreachable.js";

const rows: Readonly<Record<string, CatalogueRow>> = catalogue;
const refused = corpusTexts("reject");

/** The first finding of the severity that a code has. */
function firstOf(text: string, code: string): string | undefined {
  const severity = rows[code]?.severity;
  return run({ name: `${code}.light`, text }, withOurKits).diagnostics.find(
    (found) => found.severity === severity,
  )?.code;
}

test("every code has a text that causes it, or a reason why none does", () => {
  const covered = new Set<string>([
    ...refused.map(({ name }) => name),
    ...fromFiles,
    ...fromWriter,
    ...fromModels,
    ...fromCaller,
    ...tooLargeToKeep.keys(),
  ]);
  expect((Object.keys(catalogue) as Code[]).filter((code) => !covered.has(code))).toEqual([]);
  expect(refused.map(({ name }) => name).filter((name) => !Object.hasOwn(catalogue, name))).toEqual([]);
});

test.each(refused)("$name is what is found first", ({ name, text }) => {
  expect(firstOf(text, name)).toBe(name);
});

test.each([...tooLargeToKeep])("%s is found in a text too large to keep", (code, text) => {
  expect(firstOf(text, code)).toBe(code);
});

test.each(refused)("$name: the findings are those that were reviewed", (text) => {
  expect(findingsJson(text, findingsOf(text))).toBe(keptBeside("reject", text.name, "diagnostics.json"));
});

test("one cause gives one error, almost always", () => {
  const errors = refused.map((text) => ({
    name: text.name,
    codes: findingsOf(text).flatMap((found) => (found.severity === "error" ? [found.code] : [])),
  }));
  expect(errors.filter(({ codes }) => codes.length > 1)).toEqual([]);
});

const withFixes = refused.filter((text) => findingsOf(text).some(({ fixes }) => fixes.length > 0));

test.each(withFixes)("$name: each fix takes the finding away and brings no other error", ({ name, text }) => {
  for (const found of findingsOf({ name, text })) {
    for (const fix of found.fixes) {
      const after = findingsOf({ name, text: applyFix(text, fix) });
      const wrong = after.filter(({ code, severity }) => code === found.code || severity === "error");
      expect(wrong.map(({ code, place }) => `${fix.title}: ${code} at ${place.start}`)).toEqual([]);
    }
  }
});
