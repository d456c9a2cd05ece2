import { expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { renderText } from "../../src/render/text.js";
import { reportSchema } from "../../src/report/schema/report.js";
import { coarseRun } from "../helpers/coarse-run.js";
import { withOurKits } from "../helpers/kits.js";
import { runs } from "../helpers/runs.js";
import { drawFrom } from "../model/random/draw.js";
import { unsound } from "./finite.js";
import { mutant } from "./mutate.js";
import { allTexts } from "./texts.js";

const wanted = runs(30).numRuns;
/** Recipes are worked out to their reports; kits and sessions have none. */
const recipes = allTexts.filter((text) => text.includes("\nrecipe "));

test("a changed text without errors is worked out to a report of finite numbers", () => {
  const wrong: string[] = [];
  let worked = 0;
  for (let seed = 1; worked < wanted && wrong.length < 5; seed++) {
    const text = mutant(drawFrom(seed), recipes);
    if (!compile({ name: "fuzz.light", text }, withOurKits).sound) continue;
    worked++;
    try {
      const { evaluated, diagnostics } = coarseRun({ name: "fuzz.light", text }, withOurKits);
      const outside = diagnostics.find(({ place }) => place.start < 0 || place.end > text.length);
      if (outside !== undefined) wrong.push(`seed ${seed}: ${outside.code} lies outside of the text`);
      if (evaluated === null) continue;
      const bad =
        unsound(evaluated.report) ?? reportSchema.safeParse(evaluated.report).error?.message ?? null;
      if (bad !== null) wrong.push(`seed ${seed}: ${bad}`);
      if (/NaN|Infinity|undefined/.test(renderText(evaluated.report))) {
        if (!/NaN|Infinity|undefined/.test(text))
          wrong.push(`seed ${seed}: the text of the report holds no number`);
      }
    } catch (error) {
      wrong.push(`seed ${seed}: ${error instanceof Error ? error.stack : error}`);
    }
  }
  expect(wrong).toEqual([]);
});
