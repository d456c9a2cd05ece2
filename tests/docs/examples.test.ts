import { describe, expect, test } from "vitest";
import { compile } from "../../src/compile.js";
import { tablesOf } from "../../src/pipeline.js";
import { results } from "../../src/vocabulary/results.js";
import { examplesPage } from "../generate/examples-page.js";
import { withOurKits } from "../helpers/kits.js";
import { examples } from "./examples.js";
import { fencesOf } from "./fences.js";
import { allPages, readPage } from "./pages.js";
import { wholeRecipe } from "./recipes.js";

const all = examples();

test("there are at least 300, those of the page of findings not counted", () => {
  expect(all.filter(({ page }) => page !== "docs/errors.md").length).toBeGreaterThanOrEqual(300);
});

test("they are numbered through, and the list is as it would be made now (npm run docs:write makes it)", () => {
  expect(all.map(({ number }) => number)).toEqual(all.map((_, index) => index + 1));
  expect(readPage("docs/examples.md").text).toBe(examplesPage());
});

test("no other fence looks like a recipe or a command that nobody runs", () => {
  const known = new Set([
    "halfshade",
    "console",
    "calc",
    "ts",
    "text",
    "sh",
    "json",
    "csv",
    "html",
    "yaml",
    "js",
    "ebnf",
    "markdown",
  ]);
  const other = allPages().flatMap(({ path, text }) =>
    fencesOf(text).flatMap(({ language, line }) =>
      known.has(language) ? [] : [`${path}:${line} ${language}`],
    ),
  );
  expect(other).toEqual([]);
});

test("every result has an example on its page", () => {
  const page = all.filter(({ page: path }) => path === "docs/guide/results.md");
  const text = page.map(({ fence }) => fence.text).join("\n");
  const lacking = results
    .map(({ name }) => name)
    .filter((name) => !new RegExp(`^expect .*\\b${name}\\b`, "m").test(text));
  expect(lacking).toEqual([]);
});

describe("tables of the examples come out", () => {
  const withTables = all.filter(
    ({ fence }) =>
      fence.language === "halfshade" && /^table "/m.test(fence.text) && !fence.marks.has("error"),
  );
  test.each(withTables.map((one) => [`${one.page}:${one.fence.line}`, one] as const))(
    "%s",
    (_, { fence }) => {
      const tables = tablesOf(compile({ name: "example.light", text: wholeRecipe(fence) }, withOurKits));
      expect(tables.length).toBeGreaterThan(0);
      for (const table of tables) {
        const rows = [...table.work()];
        expect(rows.length).toBe(table.rows);
        for (const row of rows)
          expect(row.some(({ value, text }, i) => i > 0 && (value ?? text) !== null)).toBe(true);
      }
    },
  );
});
