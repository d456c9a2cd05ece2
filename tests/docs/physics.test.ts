import { describe, expect, test } from "vitest";
import { allQuantities } from "../../src/quantities/registry.js";
import { fencesOf } from "./fences.js";
import { allPages, type Page, readPage } from "./pages.js";
import { calcExample } from "./run-calc.js";

const pages = allPages().filter((page) => page.path.startsWith("docs/physics/"));
const HEADING = /^## `([^`]+)`$/gm;

/** Sections of the physics pages by the quantity in their heading, in order. */
const sections = pages.flatMap((page) => {
  const heads = [...page.text.matchAll(HEADING)];
  return heads.map((head, index) => ({
    page: page.path,
    name: head[1] ?? "",
    text: page.text.slice(head.index, heads[index + 1]?.index ?? page.text.length),
  }));
});

test("every quantity has one section, and every section is of a quantity", () => {
  const names = allQuantities().map((quantity) => quantity.name);
  expect(sections.map((section) => section.name).sort()).toEqual([...names].sort());
});

test("every section has its table, a formula, what it tells, where it ends, and an example of itself", () => {
  const lacking = sections.flatMap(({ page, name, text }) => {
    const fences = fencesOf(text);
    const parts: readonly (readonly [string, boolean])[] = [
      ["the made part", text.includes(`<!-- made: quantity ${name} -->`)],
      ["a formula", fences.some((fence) => fence.language === "text")],
      ["what it tells", /\*\*What it tells you\.\*\* \S/.test(text)],
      ["where it ends", /\*\*Where it ends\.\*\* \S/.test(text)],
      [
        "an example",
        fences.some((fence) => fence.language === "calc" && fence.text.includes(`$ halfshade calc ${name}`)),
      ],
    ];
    return parts.filter(([, there]) => !there).map(([part]) => `${page}, ${name}: lacks ${part}`);
  });
  expect(lacking).toEqual([]);
});

/** Files that a page shows, by the name in the mark above them. */
function filesOf(page: Page): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const fence of fencesOf(page.text)) {
    const name = fence.marks.get("file");
    if (name !== undefined) files.set(name, fence.text);
  }
  return files;
}

const pagesWithCalc = allPages().filter((page) => page.text.includes("```calc\n"));

describe("examples of calc print what the page says", () => {
  test.each(pagesWithCalc.map((page) => [page.path, page] as const))("%s", (_path, page) => {
    const files = filesOf(page);
    for (const fence of fencesOf(page.text)) {
      if (fence.language !== "calc") continue;
      expect(calcExample(fence.text, files), `${page.path}:${fence.line}`).toBe(fence.text);
    }
  });

  test("there are at least as many as quantities", () => {
    const count = pagesWithCalc.flatMap((page) =>
      fencesOf(page.text).flatMap((fence) =>
        fence.language === "calc" ? [...fence.text.matchAll(/^\$ /gm)] : [],
      ),
    ).length;
    expect(count).toBeGreaterThanOrEqual(allQuantities().length);
  });

  test("a wrong digit is found", () => {
    const right = "$ halfshade calc stops_for_pops pops=4\n2 stop\n";
    expect(calcExample(right, new Map())).toBe(right);
    expect(calcExample(right.replace("2 stop", "2.1 stop"), new Map())).not.toBe(
      right.replace("2 stop", "2.1 stop"),
    );
  });
});

test("no page of physics is left out of the list", () => {
  const list = pages.find((page) => page.path === "docs/physics/README.md");
  for (const page of pages) {
    const name = page.path.slice("docs/physics/".length);
    if (name !== "README.md") expect(list?.text, name).toContain(`(${name})`);
  }
});

test("the front page says how many formulas there are", () => {
  expect(readPage("README.md").text).toContain(`${allQuantities().length} formulas`);
});
