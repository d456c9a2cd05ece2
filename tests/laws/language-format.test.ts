import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Formatted, formatText } from "../../src/format/format.js";
import { printFile } from "../../src/format/print-node.js";
import { parseFile } from "../../src/syntax/parse.js";
import { lex } from "../../src/text/lex.js";
import { canonicalUnit } from "../../src/units/spellings.js";
import { anyFile } from "../helpers/recipes.js";
import { respaced } from "../helpers/respace.js";

const format = (text: string): Formatted => formatText({ name: "a", text }, { canonicalUnit });
const formatted = (text: string): string => {
  const { text: result, diagnostics, fault } = format(text);
  expect(diagnostics.map((diagnostic) => diagnostic.code)).toEqual([]);
  expect(fault, text).toBe(false);
  return result ?? "";
};

/** The printed text of any tree with remarks put in: behind lines, and on lines of their own. */
const withComments = fc
  .tuple(
    anyFile,
    fc.array(fc.tuple(fc.nat(), fc.boolean(), fc.constantFrom("#", "# one", "#two", "#  three")), {
      maxLength: 6,
    }),
  )
  .map(([file, comments]) => {
    const text = printFile(file);
    const { tokens } = lex({ name: "a", text }, () => {});
    const ends = tokens
      .filter((token) => token.tokenType.name === "NewLine")
      .map((token) => token.startOffset);
    const edits = comments
      .map(([at, own, comment]) => ({
        at: ends[at % ends.length] ?? 0,
        text: own ? `\n${comment}` : ` ${comment}`,
      }))
      .sort((a, b) => b.at - a.at);
    const result = edits.reduce(
      (before, edit) => before.slice(0, edit.at) + edit.text + before.slice(edit.at),
      text,
    );
    return { text: result, count: lex({ name: "a", text: result }, () => {}).comments.length };
  });

describe("the formatter", () => {
  it("changes nothing that it has formatted", () => {
    fc.assert(
      fc.property(withComments, ({ text }) => {
        const once = formatted(text);
        expect(formatted(once)).toBe(once);
        expect(format(once).changed).toBe(false);
      }),
      { numRuns: 500 },
    );
  });

  it("keeps every comment", () => {
    fc.assert(
      fc.property(withComments, ({ text, count }) => {
        const { comments } = parseFile({ name: "a", text: formatted(text) }, () => {});
        expect(comments.length).toBe(count);
      }),
      { numRuns: 300 },
    );
  });

  it("brings a text with other blanks back to the same bytes", () => {
    fc.assert(
      fc.property(withComments, fc.infiniteStream(fc.nat()), ({ text }, stream) => {
        const once = formatted(text);
        const { tokens } = lex({ name: "a", text: once }, () => {});
        const choose = (count: number): number => (stream.next().value ?? 0) % count;
        const other = respaced(once, tokens, choose);
        expect(format(other).diagnostics, other).toEqual([]);
        expect(formatted(other)).toBe(once);
        expect(formatted(once.replaceAll("\n", "\r\n"))).toBe(once);
      }),
      { numRuns: 500 },
    );
  });

  it("leaves what code prints nearly as it is: only blanks and the spelling of units differ", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const text = printFile(file);
        const names = (source: string): string =>
          lex({ name: "a", text: source }, () => {})
            .tokens.map((token) => token.tokenType.name)
            .join(" ")
            .replaceAll("Degree", "Name");
        expect(names(formatted(text))).toBe(names(text));
      }),
      { numRuns: 200 },
    );
  });
});
