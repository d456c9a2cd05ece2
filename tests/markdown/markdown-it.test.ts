import MarkdownIt from "markdown-it";
import { describe, expect, test } from "vitest";
import { partsHtml, reportParts, run } from "../../src/index.js";
import { markdownItHalfshade, type PageOptions } from "../../src/markdown/index.js";
import { page, recipe } from "./pages.js";

const made = (text: string, options: PageOptions = {}) =>
  new MarkdownIt().use(markdownItHalfshade, options).render(text);
const { evaluated } = run({ name: "lesson.md", text: recipe });

describe("a fence in a page that markdown-it reads", () => {
  test("becomes the report, with the page around it as it was", () => {
    if (evaluated === null) throw new Error("the recipe has mistakes");
    const around = new MarkdownIt().render(page("text", "")).split(/<pre>[\s\S]*<\/pre>\n/);
    expect(made(page("halfshade headings 1"))).toBe(around.join(partsHtml(reportParts(evaluated.report))));
  });

  test("is what markdown-it makes of the Markdown view, borders of cells aside", async () => {
    if (evaluated === null) throw new Error("the recipe has mistakes");
    const { renderMarkdown } = await import("../../src/index.js");
    const theirs = new MarkdownIt().render(renderMarkdown(evaluated.report));
    const flat = (html: string) => html.replace(/\n/g, "").replaceAll("&#39;", "'");
    expect(flat(partsHtml(reportParts(evaluated.report)))).toBe(flat(theirs));
  });

  test("leaves other fences to the rule that was there", () => {
    expect(made(page("text"))).toBe(new MarkdownIt().render(page("text")));
    const own = new MarkdownIt();
    own.renderer.rules.fence = () => "<hr>";
    expect(own.use(markdownItHalfshade).render(page("text"))).toContain("<hr>");
  });

  test("says what is wrong in place, with lines of the page, and nothing a user wrote is a tag", () => {
    const seen: number[] = [];
    const options: PageOptions = { page: "lesson.md", onProblem: ({ line }) => seen.push(line) };
    const text = made(page("halfshade", recipe.replace("1.70 m", "<b>")), options);
    expect(text).toContain("<p><strong>halfshade:</strong> lesson.md, line 5: The recipe has mistakes.</p>");
    expect(text).toContain("lesson.md:9:19  error");
    expect(text).not.toMatch(/<b\b/);
    expect(text).toContain("height: &lt;b&gt;");
    expect(made(page("halfshade <img>"), options)).not.toMatch(/<img/);
    expect(seen).toEqual([5, 5]);
  });
});
