import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { allQuantities } from "../../src/quantities/registry.js";
import { blocks } from "../../src/vocabulary/index.js";
import { AREAS, errorsPage } from "../generate/errors.js";
import { makePart } from "../generate/page-parts.js";
import { regionsOf, remake } from "../generate/regions.js";
import { fencesOf } from "./fences.js";
import { allPages, ROOT, readPage } from "./pages.js";

const pages = allPages();

describe("made parts of pages are as they would be made now (npm run docs:write makes them)", () => {
  test.each(
    pages.filter((page) => regionsOf(page.text).length > 0).map((page) => [page.path, page] as const),
  )("%s", (_path, page) => {
    expect(remake(page.text, makePart)).toBe(page.text);
  });

  test("docs/errors.md", () => {
    expect(readPage("docs/errors.md").text).toBe(errorsPage());
  });

  test("a part that is out of date is found", () => {
    const page = "<!-- made: tolerances -->\nold\n<!-- /made -->\n";
    expect(remake(page, makePart)).not.toBe(page);
  });
});

test("every kind of block has its table on exactly one page", () => {
  const shown = pages.flatMap((page) => regionsOf(page.text).filter((one) => one.kind === "block"));
  expect(shown.map((one) => one.of).sort()).toEqual(Object.keys(blocks).sort());
});

test("every quantity has its table on exactly one page", () => {
  const shown = pages.flatMap((page) => regionsOf(page.text).filter((one) => one.kind === "quantity"));
  expect(shown.map((one) => one.of).sort()).toEqual(
    allQuantities()
      .map((quantity) => quantity.name)
      .sort(),
  );
});

test("links between pages lead somewhere", () => {
  const broken = pages.flatMap((page) => {
    const prose = fencesOf(page.text).reduceRight(
      (text, fence) => text.slice(0, fence.start) + text.slice(fence.end),
      page.text,
    );
    return [...prose.matchAll(/\]\(([^)#\s]+\.md)(?:#[^)]*)?\)/g)]
      .map(([, target = ""]) => new URL(target, `file:///${page.path}`).pathname.slice(1))
      .filter((target) => !existsSync(join(ROOT, target)))
      .map((target) => `${page.path} -> ${target}`);
  });
  expect(broken).toEqual([]);
});

test("every area of codes has a heading of its own", () => {
  const bare = [...readPage("docs/errors.md").text.matchAll(/^### ([\w-]+)\./gm)]
    .map(([, area = ""]) => area)
    .filter((area) => !AREAS.has(area));
  expect([...new Set(bare)]).toEqual([]);
});
