import { describe, expect, test } from "vitest";
import { fencesOf } from "./fences.js";
import { allPages, type Page } from "./pages.js";
import { runExamples } from "./shell.js";

/** Files that a page shows, by the name in the mark above them. */
function filesOf(page: Page): ReadonlyMap<string, string> {
  return new Map(
    fencesOf(page.text).flatMap((fence) => {
      const name = fence.marks.get("file");
      return name === undefined ? [] : [[name, fence.text] as const];
    }),
  );
}

const pages = allPages().filter((page) => page.text.includes("```console\n"));

describe("commands in the pages print what the page shows", () => {
  test.each(pages.map((page) => [page.path, page] as const))("%s", async (_path, page) => {
    const fences = fencesOf(page.text).filter((fence) => fence.language === "console");
    const results = await runExamples(
      fences.map((fence) => fence.text),
      filesOf(page),
    );
    for (const [index, fence] of fences.entries()) {
      expect(results[index], `${page.path}:${fence.line}`).toBe(fence.text);
    }
  });
});

test("another output is found", async () => {
  const right = "$ halfshade calc stops_for_pops pops=4\n2 stop\n$ echo $?\n0\n";
  expect(await runExamples([right, right.replace("2 stop", "3 stop")], new Map())).toEqual([right, right]);
});
