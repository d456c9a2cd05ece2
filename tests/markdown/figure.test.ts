import MarkdownIt from "markdown-it";
import rehypeStringify from "rehype-stringify";
import { remark } from "remark";
import remarkRehype from "remark-rehype";
import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import {
  compile,
  drawFigure,
  evaluateSetUps,
  kitsAmong,
  renderSvg,
  run,
  tableChart,
  tablesOf,
} from "../../src/index.js";
import { markdownItHalfshade, refreshPage, remarkHalfshade } from "../../src/markdown/index.js";
import { page, recipe } from "./pages.js";

const { evaluated } = run({ name: "loom.light", text: recipe });
if (evaluated === null) throw new Error("the recipe has mistakes");
const plan = drawFigure(evaluated, "plan");
if (typeof plan === "string") throw new Error(plan);
const svg = renderSvg(plan, { width: 720, theme: "light" }).trimEnd();

/** A recipe whose title tries to leave the figure. */
const hostile = recipe.replace("The weaver at the loom", "</svg><img src=x> <!-- /halfshade --> & `*_");

const byMarkdownIt = (text: string) => new MarkdownIt({ html: true }).use(markdownItHalfshade).render(text);
const byRemark = (text: string) =>
  String(remark().use(remarkHalfshade).use(remarkRehype).use(rehypeStringify).processSync(text));

/** Elements and attributes of the figure in a page of HTML, in order, as a strict reader of XML has them. */
function elementsOf(html: string): readonly string[] {
  const figure = /<figure>[\s\S]*<\/figure>/.exec(html)?.[0] ?? "";
  const found: string[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    found.push(`${name} ${JSON.stringify(Object.entries(attributes).sort())}`);
  });
  parser.on("text", (text) => {
    if (text.trim() !== "") found.push(text);
  });
  parser.write(figure).close();
  return found;
}

describe("a figure in a page", () => {
  test("is the figure itself, whatever reads the page", () => {
    const want = elementsOf(`<figure>${svg}</figure>`);
    expect(want).toContain(plan.title);
    expect(byMarkdownIt(page("halfshade figure plan"))).toContain(`<figure>\n${svg}\n</figure>`);
    expect(elementsOf(byRemark(page("halfshade figure plan")))).toEqual(want);
  });

  test("stays words where a page is written as Markdown again, and the page around it stays", () => {
    const text = String(remark().use(remarkHalfshade).processSync(page("halfshade figure plan")));
    expect(text).toContain(plan.title);
    expect(text).not.toContain("<svg");
    expect(text).toMatch(/^# A lesson\n\nBefore\.\n[\s\S]*\nAfter\.\n$/);
  });

  test("is one block of HTML in a refreshed page, for whoever reads that", () => {
    const read = kitsAmong(new Map([["loom.light", recipe]]));
    const marks = 'A\n\n<!-- halfshade figure plan of "loom.light" -->\n<!-- /halfshade -->\n\nB\n';
    const done = refreshPage(marks, { read });
    expect(done.problems).toEqual([]);
    const html = new MarkdownIt({ html: true }).render(done.text);
    expect(html).toContain(`<figure>\n${svg}\n</figure>`);
    expect(html.replace(/<figure>[\s\S]*<\/figure>/, "")).not.toMatch(/<p>(?!A|B)/);
    expect(refreshPage(done.text, { read }).blocks.map(({ stale }) => stale)).toEqual([false]);
  });

  test("may be of a variant, and of one light", () => {
    const farther = evaluateSetUps(evaluated.recipe, { titles: ["Farther out"] })[1];
    const drawn = farther === undefined ? "" : drawFigure(farther, "throw", { light: "key" });
    if (typeof drawn === "string") throw new Error(drawn);
    const html = byMarkdownIt(page('halfshade figure throw light "key" variant "Farther out"'));
    expect(html).toContain(renderSvg(drawn, { width: 720, theme: "light" }).trimEnd());
    expect(html).not.toContain(byMarkdownIt(page("halfshade figure throw")));
  });

  test("of the fall-off may be of one light too, and of other figures there is no one light", () => {
    const drawn = drawFigure(evaluated, "falloff", { light: "key" });
    if (typeof drawn === "string") throw new Error(drawn);
    expect(byMarkdownIt(page('halfshade figure falloff light "key"'))).toContain(
      renderSvg(drawn, { width: 720, theme: "light" }).trimEnd(),
    );
    expect(byMarkdownIt(page('halfshade figure ratio light "key"'))).toMatch(/belongs to .*figure falloff/);
  });

  test("that is not there is said in its place", () => {
    expect(byMarkdownIt(page('halfshade figure throw light "rim"'))).toMatch(
      /no light of that name; there is key/,
    );
    expect(byMarkdownIt(page("halfshade figure plna"))).toMatch(/no figure &quot;plna&quot;/);
  });

  test("carries no text of a recipe out of itself", () => {
    for (const html of [
      byMarkdownIt(page("halfshade figure plan", hostile)),
      byRemark(page("halfshade figure plan", hostile)),
    ]) {
      expect(html).not.toMatch(/<img|<!--/);
      expect(html.match(/<\/svg>/g)).toHaveLength(1);
      expect(elementsOf(html).join("\n")).toContain("</svg><img src=x> <!-- /halfshade --> & `*_");
    }
    const read = kitsAmong(new Map([["loom.light", hostile]]));
    const marks = '<!-- halfshade figure plan of "loom.light" -->\n<!-- /halfshade -->\n';
    const once = refreshPage(marks, { read });
    expect(once.problems).toEqual([]);
    expect(refreshPage(once.text, { read }).text).toBe(once.text);
    expect(new MarkdownIt({ html: true }).render(once.text)).not.toMatch(/<img/);
  });
});

describe("a chart in a page", () => {
  const [table] = tablesOf(compile({ name: "loom.light", text: recipe }));
  if (table === undefined) throw new Error("no table");
  const chart = tableChart(table, [...table.work()]);
  if (typeof chart === "string") throw new Error(chart);
  const drawn = renderSvg(chart, { width: 720, theme: "light" }).trimEnd();

  test("is the table as the command draws it, by its title or as one of all", () => {
    const want = `<figure>\n${drawn}\n</figure>`;
    expect(byMarkdownIt(page('halfshade chart "Walk the lamp in"'))).toContain(want);
    expect(byMarkdownIt(page("halfshade chart"))).toContain(want);
    const both = recipe.replace(
      /table "[\s\S]*$/,
      (one) => `${one}${one.replace("Walk the lamp in", "Again")}`,
    );
    const html = byMarkdownIt(page("halfshade chart", both));
    expect(html.match(/<figure>/g)).toHaveLength(2);
    expect(html).toContain("<title>Again</title>");
  });

  test("comes into a refreshed page, and is then not stale", () => {
    const read = kitsAmong(new Map([["loom.light", recipe]]));
    const marks = '<!-- halfshade chart "Walk the lamp in" of "loom.light" -->\n<!-- /halfshade -->\n';
    const done = refreshPage(marks, { read });
    expect(done.problems).toEqual([]);
    expect(done.text).toContain(drawn);
    expect(refreshPage(done.text, { read }).blocks.map(({ stale }) => stale)).toEqual([false]);
  });

  test("that cannot be is said in its place", () => {
    expect(byMarkdownIt(page('halfshade chart "Walk"'))).toMatch(/no table &quot;Walk&quot;/);
    expect(byMarkdownIt(page('halfshade chart variant "Farther out"'))).toMatch(/leave .*variant.* away/);
    const blind = recipe
      .replace("power: 1/2", "power: off")
      .replace(/show .*/, 'show f_number(face.disc(towards: key)) "Reads"');
    expect(byMarkdownIt(page("halfshade chart", blind))).toMatch(/no column of numbers/);
  });
});
