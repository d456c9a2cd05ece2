import rehypeStringify from "rehype-stringify";
import { remark } from "remark";
import remarkGfm from "remark-gfm";
import remarkRehype from "remark-rehype";
import { describe, expect, test } from "vitest";
import { kitsAmong, renderMarkdown, run } from "../../src/index.js";
import { type PageOptions, remarkHalfshade } from "../../src/markdown/index.js";
import { page, recipe } from "./pages.js";

const made = (text: string, options: PageOptions = {}) =>
  remark().use(remarkGfm).use(remarkHalfshade, options).processSync({ value: text, path: "lesson.md" });
const html = (text: string, options: PageOptions = {}) =>
  String(remark().use(remarkHalfshade, options).use(remarkRehype).use(rehypeStringify).processSync(text));
const { evaluated } = run({ name: "lesson.md", text: recipe });
const headline = evaluated?.report.headline ?? "";

/** What remark makes of our own Markdown, for comparing meanings and not escapes. */
const read = (text: string) => String(remark().use(remarkGfm).processSync(text));

describe("a fence in a page that remark reads", () => {
  test("becomes the report, as the Markdown view has it", () => {
    if (evaluated === null) throw new Error("the recipe has mistakes");
    const view = renderMarkdown(evaluated.report);
    const whole = `# A lesson\n\nBefore.\n\n${view}\nAfter.\n`;
    // Line numbers of expectations are those of the page and are in no view.
    expect(String(made(page("halfshade headings 1")))).toBe(read(whole));
  });

  test("has its headings below those of the page, at the level that is asked for", () => {
    const headings = (text: string) => text.match(/^#+ /gm)?.map((mark) => mark.length - 1) ?? [];
    expect(headings(String(made(page("halfshade")))).slice(0, 3)).toEqual([1, 2, 3]);
    expect(headings(String(made(page("halfshade headings 4")))).slice(0, 3)).toEqual([1, 4, 5]);
    expect(Math.max(...headings(String(made(page("halfshade headings 6")))))).toBe(6);
    expect(headings(String(made(page("halfshade"), { headings: 5 }))).slice(0, 3)).toEqual([1, 5, 6]);
  });

  test("may be the headline alone, with the text of the recipe before it", () => {
    expect(String(made(page("halfshade headline")))).toBe(
      `# A lesson\n\nBefore.\n\n${read(`**${headline}**`)}\nAfter.\n`,
    );
    expect(String(made(page("halfshade headline code")))).toContain(`\`\`\`light\n${recipe}\`\`\`\n\n**`);
  });

  test("may be a variant", () => {
    const text = String(made(page('halfshade headline variant "Farther out"')));
    expect(text).not.toContain(read(headline).trim());
    expect(text).toContain("**");
    expect(String(made(page('halfshade variant "Closer"')))).toMatch(/no variant "Closer".*"Farther out"/);
  });

  test("may be one of the tables, or all of them", () => {
    const text = String(made(page('halfshade table "Walk the lamp in"')));
    // A disc of 60 cm whose middle is 1, 2 and 4 m away, by d = 2 atan(r / D): 33.4, 17.06 and 8.58 deg.
    expect(text.match(/^\|.*$/gm)?.map((row) => row.replace(/ /g, ""))).toEqual([
      "|key.distance|Size(deg)|",
      expect.stringMatching(/^\|-+:\|-+:\|$/),
      "|1m|33.4|",
      "|2m|17.1|",
      "|4m|8.58|",
    ]);
    expect(text).toContain("## Walk the lamp in");
    expect(String(made(page("halfshade table")))).toBe(text);
  });

  test.each([
    ['halfshade table "Walk"', recipe, /no table "Walk". It has "Walk the lamp in"/],
    ['halfshade table variant "Farther out"', recipe, /leave `variant` away/],
    ["halfshade table", 'halfshade 1\nrecipe "Bare"\n', /has no table. Write one/],
  ])("%s that cannot be is said", (info, text, words) => {
    expect(String(made(page(info, text))).replace(/\\(.)/g, "$1")).toMatch(words);
  });

  test("is found in lists and quotations, and other fences are left alone", () => {
    const quoted = page("halfshade headline").replace(/^/gm, "> ");
    expect(String(made(quoted))).toContain(read(`> **${headline}**`).trim());
    expect(String(made(page("halfshades")))).toContain("```halfshades\n");
    expect(String(made(page("text halfshade")))).toContain("```text halfshade\n");
  });

  test("needs no table extension to become HTML, and keeps the texts of a user texts", () => {
    const nasty = recipe.replace("The weaver at the loom", "<script>x</script> | [a](http://b)");
    const text = html(page("halfshade", nasty));
    expect(text).toContain("<table>");
    expect(text).not.toMatch(/<script|<a /);
    expect(text).toContain("&#x3C;script>");
  });
});

describe("what is wrong in a page", () => {
  test("stands in place of the fence, with the line of the page", () => {
    const file = made(page("halfshade", recipe.replace("1.70 m", "170")));
    const text = String(file);
    // The fence opens at line 5, the height stands in the fourth line of the recipe.
    expect(text).toContain("**halfshade:** lesson.md, line 5: The recipe has mistakes.");
    expect(text).toContain("lesson.md:9:19  error");
    expect(text).toContain("After.");
    expect(file.messages.map(({ line, source, reason }) => [line, source, reason])).toEqual([
      [5, "halfshade", "The recipe has mistakes."],
    ]);
  });

  test.each([
    ["halfshade reprot", recipe, /line 5: There is no view "reprot"/],
    ['halfshade of "a.light"', "", /no files are read here/],
    ['halfshade of "a.light"', recipe, /holds a recipe and names the file "a.light" as well/],
    ['halfshade of "../../etc/passwd"', "", /no path of a recipe/],
    ['halfshade of "/etc/a.light"', "", /no path of a recipe/],
    ['halfshade of "http://a.light"', "", /no path of a recipe/],
    ["halfshade", 'halfshade 1\nkit "Lamps"\n', /is a kit, and there is nothing to work out/],
    ["halfshade", "", /The recipe has mistakes/],
    ["halfshade", "<b>\n", /The recipe has mistakes/],
  ])("%s of %j", (info, text, words) => {
    const seen: string[] = [];
    const out = String(made(page(info, text), { onProblem: ({ message }) => seen.push(message) }));
    expect(seen).toHaveLength(1);
    expect(out.replace(/\\(.)/g, "$1")).toMatch(words);
  });

  test("an expectation that fails is said in the report and is no mistake of the page", () => {
    const file = made(page("halfshade", recipe.replace("> 10 deg", "> 90 deg")));
    expect(file.messages).toEqual([]);
    expect(String(file)).toContain("| failed");
  });
});

describe("a file that a page names", () => {
  const texts = new Map([
    ["plans/loom.light", recipe],
    ["plans/broken.light", recipe.replace("1.70 m", "170")],
    [
      "plans/kitted.light",
      recipe
        .replace("subject", 'use straw from "./gels.light"\n\nsubject')
        .replace("shape:", "gel: straw\n  shape:"),
    ],
    ["plans/gels.light", 'halfshade 1\nkit "Gels"\ndefine gel straw { warms: 60 mired }\n'],
  ]);
  const read = kitsAmong(texts);
  const of = (file: string) =>
    String(made(page(`halfshade headline of "${file}"`, ""), { read, page: "lesson.md" }));

  test("is read by the reader that was given, and its kits from where it is", () => {
    expect(of("plans/loom.light")).toBe(String(made(page("halfshade headline"))));
    expect(of("plans/kitted.light")).not.toMatch(/halfshade:/);
  });

  test("has its own lines in what is wrong with it", () => {
    expect(of("plans/broken.light")).toContain("plans/broken.light:4:19  error");
    expect(of("plans/none.light")).toMatch(/lesson.md, line 5: .*plans\/none.light/);
  });
});
