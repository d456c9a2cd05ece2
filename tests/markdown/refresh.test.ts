import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile, kitsAmong, partsMarkdown, tableParts, tablesOf } from "../../src/index.js";
import { refreshPage } from "../../src/markdown/index.js";
import { marksOf } from "../../src/markdown/marks.js";
import { recipe } from "./pages.js";

const broken = recipe.replace("1.70 m", "170");
const read = kitsAmong(
  new Map([
    ["loom.light", recipe],
    ["broken.light", broken],
  ]),
);
const options = { page: "lesson.md", read };
const open = '<!-- halfshade table "Walk the lamp in" of "loom.light" -->';
const close = "<!-- /halfshade -->";
const table = partsMarkdown(tablesOf(compile({ name: "loom.light", text: recipe })).flatMap(tableParts));

describe("a marked block", () => {
  test("is replaced, and everything else stays", () => {
    const page = `# A\n\n${open}\nold\n\nold\n${close}\n\nend`;
    const made = refreshPage(page, options);
    expect(made.problems).toEqual([]);
    expect(made.text).toBe(`# A\n\n${open}\n\n${table}\n${close}\n\nend`);
    expect(made.text).toContain("| 2 m | 17.1 |");
    expect(made.blocks).toEqual([
      { line: 3, order: 'table "Walk the lamp in" of "loom.light"', stale: true },
    ]);
  });

  test("that was refreshed is not stale, and refreshing again changes nothing", () => {
    const once = refreshPage(`${open}\n${close}\n`, options);
    const twice = refreshPage(once.text, options);
    expect(twice.text).toBe(once.text);
    expect(twice.blocks.map(({ stale }) => stale)).toEqual([false]);
    const number = refreshPage(once.text.replace("17.1", "17.2"), options);
    expect(number.blocks.map(({ stale }) => stale)).toEqual([true]);
    expect(number.text).toBe(once.text);
  });

  test("keeps the page's line ends, byte order mark and missing last line end", () => {
    const page = `\ufeffa \r\n${open}\r\nold\r\n${close}\r\nmixed\nend`;
    const { text } = refreshPage(page, options);
    expect(text.startsWith(`\ufeffa \r\n${open}\r\n\r\n`)).toBe(true);
    expect(text.endsWith(`\r\n${close}\r\nmixed\nend`)).toBe(true);
    expect(text.slice(text.indexOf(open), text.indexOf("mixed"))).not.toMatch(/[^\r]\n/);
  });

  test("may have the text of its recipe with it, marks and fences in it included", () => {
    const text = recipe.replace("halfshade 1\n", `halfshade 1\n# ${close}\n# \`\`\`\n`);
    const given = { ...options, read: kitsAmong(new Map([["loom.light", text]])) };
    const page = `<!-- halfshade headline code of "loom.light" -->\n${close}\nend\n`;
    const once = refreshPage(page, given);
    expect(once.text).toContain("````light\nhalfshade 1\n");
    expect(refreshPage(once.text, given)).toEqual({ ...once, blocks: [{ ...once.blocks[0], stale: false }] });
  });

  test("in fenced code is an example", () => {
    for (const fence of ["```", "~~~~"]) {
      const page = `${fence}html\n${open}\n${fence}\n\n${open}\nold\n${close}\n`;
      const { text, blocks } = refreshPage(page, options);
      expect(blocks.map(({ line }) => line)).toEqual([5]);
      expect(text.startsWith(`${fence}html\n${open}\n${fence}\n\n${open}\n\n`)).toBe(true);
    }
  });

  test("others of the page are untouched by it: any text around blocks stays byte for byte", () => {
    const around = fc.string({
      unit: fc.constantFrom("a", "\n", "\r\n", " ", "<!-- x -->", "|", "é"),
      maxLength: 12,
    });
    fc.assert(
      fc.property(around, around, fc.constantFrom("\n", "\r\n"), (before, after, end) => {
        const [head, tail] = [`${before}${end}${open}${end}`, `${close}${end}${after}`];
        const { text } = refreshPage(`${head}old${end}${tail}`, options);
        expect(text.startsWith(head)).toBe(true);
        expect(text.endsWith(tail)).toBe(true);
      }),
      { numRuns: 20 },
    );
  });
});

describe("what is wrong with marks", () => {
  test.each([
    [`${open}\nold\n`, 1, /not closed before the page ends: write `<!-- \/halfshade -->`/],
    [`a\n${open}\n${open}\n${close}\n`, 2, /not closed before another begins at line 3/],
    [`a\n${close}\n`, 2, /none is open here/],
    [`<!-- halfshade report\n-->\n`, 1, /does not end in `-->` on its own line/],
    [`${open} more\n${close}\n`, 1, /does not end in `-->`/],
    [`<!-- halfshade reprot of "loom.light" -->\n${close}\n`, 1, /no view "reprot"/],
    [`<!-- halfshade report -->\n${close}\n`, 1, /names no recipe: write `of "FILE.light"`/],
    [`<!-- halfshade report of "none.light" -->\n${close}\n`, 1, /none\.light/],
    [`<!-- halfshade report of "/etc/x.light" -->\n${close}\n`, 1, /no path of a recipe/],
    [`<!-- halfshade table "Walk" of "loom.light" -->\n${close}\n`, 1, /no table "Walk"/],
  ])("%j: line %i", (page, line, words) => {
    const { text, problems } = refreshPage(page, options);
    expect(problems[0]?.line).toBe(line);
    expect(problems[0]?.message).toMatch(words);
    expect(text).toBe(page);
  });

  test("a recipe with mistakes is told with its own lines, and other blocks are worked out", () => {
    const page = `<!-- halfshade report of "broken.light" -->\nkept\n${close}\n\n${open}\n${close}\n`;
    const { text, problems, blocks } = refreshPage(page, options);
    expect(problems.map(({ line, findings }) => [line, findings?.split("\n")[0]])).toEqual([
      [1, "broken.light:4:19  error"],
    ]);
    expect(text).toContain("\nkept\n");
    expect(blocks.map(({ stale }) => stale)).toEqual([true]);
  });

  test("words that only begin like a mark are none", () => {
    expect(marksOf("<!-- halfshades -->\n<!-- halfshade-x -->\n    <!-- halfshade -->\n")).toEqual({
      blocks: [],
      problems: [],
    });
  });
});
