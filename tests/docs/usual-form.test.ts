import { describe, expect, test } from "vitest";
import { formatText } from "../../src/format/format.js";
import { canonicalUnit } from "../../src/units/spellings.js";
import { fencesOf } from "./fences.js";
import { allPages } from "./pages.js";

const pages = allPages()
  .filter((page) => page.path !== "docs/errors.md")
  .map((page) => ({
    path: page.path,
    fences: fencesOf(page.text).filter(
      (fence) =>
        fence.language === "halfshade" && fence.text.startsWith("halfshade ") && !fence.marks.has("error"),
    ),
  }))
  .filter((page) => page.fences.length > 0);

describe("whole recipes in the pages are in their usual form", () => {
  test.each(pages.map((page) => [page.path, page] as const))("%s", (_path, { path, fences }) => {
    for (const fence of fences) {
      const { text } = formatText({ name: "example.light", text: fence.text }, { canonicalUnit });
      expect(text, `${path}:${fence.line}`).toBe(fence.text);
    }
  });
});
