import { expect, test } from "vitest";
import { catalogue } from "../../src/diagnostics/catalogue/index.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { coarseRun } from "../helpers/coarse-run.js";
import { withOurKits } from "../helpers/kits.js";
import { corpusTexts, keptBeside } from "./folder.js";
import { findingsOf, modelOf, tokensOf, treeOf } from "./layers.js";
import { fromCaller, fromFiles, fromModels, fromWriter, tooLargeToKeep } from "./unreachable.js";

const accepted = corpusTexts("accept");

test("every code has a near miss", () => {
  const names = new Set(accepted.map(({ name }) => name));
  const elsewhere = new Set<string>([
    ...fromFiles,
    ...fromWriter,
    ...fromModels,
    ...fromCaller,
    ...tooLargeToKeep.keys(),
  ]);
  expect(Object.keys(catalogue).filter((code) => !names.has(code) && !elsewhere.has(code))).toEqual(
    ["limit.operators"].filter((code) => !names.has(code)),
  );
});

test.each(accepted)("$name has no error, and not the finding it is near to", (text) => {
  const found = findingsOf(text);
  expect(found.filter(({ severity, code }) => severity === "error" || code === text.name)).toEqual([]);
});

test.each(accepted)("$name: tokens, tree and model are those that were reviewed", (text) => {
  expect(tokensOf(text)).toBe(keptBeside("accept", text.name, "tokens"));
  expect(treeOf(text)).toBe(keptBeside("accept", text.name, "ast.json"));
  expect(modelOf(text)).toBe(keptBeside("accept", text.name, "model.json"));
});

test.each(accepted)("$name goes through every stage", ({ name, text }) => {
  const outcome = coarseRun({ name: `${name}.light`, text }, withOurKits);
  if (outcome.recipe?.kind !== "recipe") return;
  expect(reportSchema.safeParse(outcome.evaluated?.report).error).toBeUndefined();
});
