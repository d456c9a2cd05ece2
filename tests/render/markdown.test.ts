import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { renderMarkdown } from "../../src/render/markdown.js";
import { markdownText } from "../../src/render/markdown-escape.js";
import { sample } from "./sample-report.js";

const whole = renderMarkdown(sample);

/** Undoes the escapes of CommonMark inside a line; what is left is what a reader sees. */
const seen = (markdown: string) =>
  markdown
    .replace(/\\([!-/:-@[-`{-~])/g, "$1")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&");

describe("a user's text in Markdown", () => {
  const nasty = fc.string({
    unit: fc.oneof(
      fc.constantFrom(..."!\"#$%&'()*+,-./:;<=>?@[\\]^_`{|}~ 1a".split("")),
      fc.constantFrom("http://", "www.", "&amp;", "1. ", "| ", "--", "](", "<b>", "\n"),
    ),
    maxLength: 20,
  });

  test("is read as it was", () => {
    fc.assert(
      fc.property(nasty, (text) => {
        expect(seen(markdownText(text))).toBe(text.replace(/[\s\0]+/g, " ").trim());
      }),
      { numRuns: 1000 },
    );
  });

  test("keeps no sign that starts a link, a picture, code, emphasis, a tag, an entity, a table cell or a block", () => {
    fc.assert(
      fc.property(nasty, (text) => {
        const bare = markdownText(text)
          .replace(/&(lt|gt|amp);/g, "X")
          .replace(/\\[!-/:-@[-`{-~]/g, "X");
        expect(bare).not.toMatch(/[<>&[\]`*_|~!#\\^]/);
        expect(markdownText(text)).not.toMatch(/^(\d+[.)] |[-+=] ?|#)/);
        expect(bare).not.toMatch(/https?:\/\/|www\./i);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("the report as Markdown", () => {
  test("has the same parts as the text", () => {
    const order = [
      "# Potter's wheel",
      "## Set-up",
      "## Camera",
      "## Picture",
      "## Lights",
      "### key",
      "## Readings",
      "## Results",
    ];
    const more = ["## Expectations: 1 passed", "## Warnings", "## Assumed", "## Not claimed"];
    const places = [...order, ...more].map((heading) => whole.indexOf(heading));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test("has tables whose rows all have as many cells as their titles", () => {
    for (const table of whole.split("\n\n").filter((part) => part.startsWith("|"))) {
      const counts = table.split("\n").map((line) => (line.replace(/\\\|/g, "").match(/\|/g) ?? []).length);
      expect(new Set(counts).size).toBe(1);
    }
  });

  test("has no tag of a user's, and no link", () => {
    expect(whole).not.toMatch(/<[a-z]/i);
    expect(whole).toContain("&lt;script&gt;");
    expect(whole).not.toMatch(/\]\(/);
  });

  test("says verdicts, severities and remedies in words", () => {
    expect(seen(whole)).toContain(
      "**Stop:** key The head of key is 8 cm under the ceiling. (lamp-near-ceiling)",
    );
    expect(seen(whole)).toContain("What to do: lower it by 17 cm");
    expect(seen(whole)).toContain("| failed | f/5.6 +0.5 | 0.5 stop under |");
  });
});
