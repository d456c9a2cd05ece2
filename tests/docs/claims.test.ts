import { expect, test } from "vitest";
import { run } from "../../src/pipeline.js";
import { fencesOf } from "./fences.js";
import { readPage } from "./pages.js";

/** What the front page says is missing, beside the words by which a report says the same. */
const MISSING: readonly (readonly [page: string, report: string])[] = [
  ["Shadows are those of the plain figure", "Shadows are those of the plain figure"],
];

test("the front page and the reports agree on what is missing", () => {
  const { text } = readPage("README.md");
  const recipe = fencesOf(text).find((fence) => fence.language === "halfshade");
  const { evaluated } = run({ name: "front-page.light", text: recipe?.text ?? "" });
  const said = (evaluated?.report.not_claimed ?? []).join("\n");
  const prose = text.replaceAll(/\s+/g, " ");
  for (const [page, report] of MISSING) {
    expect(prose.includes(page), page).toBe(said.includes(report));
  }
});
