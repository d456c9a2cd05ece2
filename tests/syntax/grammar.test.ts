import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { printFile } from "../../src/format/print-node.js";
import { RecipeParser } from "../../src/syntax/grammar.js";
import { parseFile } from "../../src/syntax/parse.js";
import { tokenKinds } from "../../src/text/kinds.js";
import { lex } from "../../src/text/lex.js";
import { anyFile } from "../helpers/recipes.js";
import { belongs } from "../helpers/recogniser.js";

/** Findings of the parser about things that the grammar does not rule out by its shape alone. */
const beyondShape: ReadonlySet<string> = new Set([
  "header.missing",
  "header.word",
  "header.version",
  "header.newer",
  "header.place",
  "number.side-by-side",
  "number.grouped",
  "number.mixed-join",
  "f-number.slash",
  "iso.form",
  "head.with",
  "head.like",
  "statement.place",
  "title.place",
  "setting.outside",
  "limit.operators",
  "limit.depth",
  "comma.extra",
]);

describe("the grammar", () => {
  it("passes the library's own validation", () => {
    expect(() => new RecipeParser({ skipValidations: false })).not.toThrow();
  });

  it("holds every text that is printed from a tree", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const { tokens } = lex({ name: "a", text: printFile(file) }, () => {});
        expect(belongs(tokens)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it("says the same as the parser about texts with one token changed", () => {
    const kinds = tokenKinds.filter((kind) => kind.role !== "mistake");
    let wrong = 0;
    fc.assert(
      fc.property(
        anyFile,
        fc.nat(),
        fc.nat(),
        fc.constantFrom("drop", "double", "swap"),
        (file, place, other, edit) => {
          const source = { name: "a", text: printFile(file) };
          const { tokens } = lex(source, () => {});
          const at = place % tokens.length;
          const token = tokens[at];
          if (token === undefined) return;
          const { start, end } = { start: token.startOffset, end: token.endOffset + 1 };
          const with2 = tokens[other % tokens.length]?.image ?? kinds[0]?.label ?? "";
          const text =
            edit === "drop"
              ? `${source.text.slice(0, start)} ${source.text.slice(end)}`
              : edit === "double"
                ? `${source.text.slice(0, end)} ${token.image} ${source.text.slice(end)}`
                : `${source.text.slice(0, start)} ${with2} ${source.text.slice(end)}`;
          const again: Diagnostic[] = [];
          const changed = lex({ name: "a", text }, (diagnostic) => again.push(diagnostic));
          if (again.length > 0) return;
          const found: Diagnostic[] = [];
          parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic));
          const inGrammar = belongs(changed.tokens);
          const surely = belongs(changed.tokens, false);
          const codes = found.map((diagnostic) => diagnostic.code);
          if (!inGrammar) wrong++;
          if (!inGrammar) expect(codes.length, text).toBeGreaterThan(0);
          else if (surely)
            expect(
              codes.filter((code) => !beyondShape.has(code)),
              text,
            ).toEqual([]);
        },
      ),
      { numRuns: 400 },
    );
    expect(wrong).toBeGreaterThan(50);
  });
});
