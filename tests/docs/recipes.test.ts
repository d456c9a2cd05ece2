import { describe, expect, test } from "vitest";
import { fencesOf } from "./fences.js";
import { allPages } from "./pages.js";
import { saidOf } from "./recipes.js";

const pages = allPages()
  .map((page) => ({
    path: page.path,
    fences: fencesOf(page.text).filter((one) => one.language === "halfshade"),
  }))
  .filter((page) => page.fences.length > 0);

describe("recipes in the pages mean something, except where an error is meant", () => {
  test.each(pages.map((page) => [page.path, page] as const))("%s", (_path, { path, fences }) => {
    for (const fence of fences) {
      const { findings: found, open } = saidOf(fence);
      const meant = fence.marks.get("error");
      const place = `${path}:${fence.line}`;
      if (meant !== undefined) {
        expect([...new Set(found.map((one) => one.code))], place).toEqual(meant.split(" "));
        continue;
      }
      expect(found, place).toEqual([]);
      expect(open.map((one) => one.split(":")[0]).join(" "), `${place}\n${open.join("\n")}`).toBe(
        fence.marks.get("open") ?? "",
      );
    }
  });
});

test("a broken recipe is found", () => {
  const page =
    "```halfshade\nlight rim { distnace: 2 m }\n```\n\n<!-- error: syntax.colon-missing -->\n```halfshade\nx\n```\n";
  const [first] = fencesOf(page);
  expect(first && saidOf(first).findings.map((one) => one.code)).toContain("property.unknown");
});
