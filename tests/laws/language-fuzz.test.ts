import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { parseFile } from "../../src/syntax/parse.js";
import { children, type Node } from "../../src/syntax/walk.js";
import { randomFrom } from "../helpers/random.js";
import { recipeTexts } from "../helpers/recipe-texts.js";

/** Parses a text and checks that findings, fixes and nodes stay inside it. Gives the number of findings. */
function survive(text: string): number {
  const found: Diagnostic[] = [];
  const { file, complete } = parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic));
  const inside = (span: { start: number; end: number }): boolean =>
    span.start >= 0 && span.start <= span.end && span.end <= text.length;
  for (const { place, fixes, related } of found) {
    const places = [
      place,
      ...related.map((label) => label.place),
      ...fixes.flatMap((fix) => fix.edits.map((edit) => edit.place)),
    ];
    if (!places.every(inside))
      throw new Error(`a place outside of the text: ${JSON.stringify(found)} in ${JSON.stringify(text)}`);
  }
  const look = (node: Node): void => {
    if (!inside(node.span)) throw new Error(`a node outside of the text: ${JSON.stringify(node)}`);
    for (const child of children(node)) look(child);
  };
  look(file);
  if (complete !== (found.length === 0)) throw new Error("complete, and yet something was found");
  if (complete && JSON.stringify(file).includes('"damaged"')) {
    if (/"kind":"damaged"|"damaged":true/.test(JSON.stringify(file)))
      throw new Error("a hole that nobody was told of");
  }
  return found.length;
}

const bits =
  '{ } ( ) [ ] : , ; " ` # = == + - * / +- ? . x 1 1/2 f/8 ISO is within like with and """ \' \\ \u202e é ½ e3 % ° table expect hold variant @ _ 5\' 3:1'
    .split(" ")
    .concat("\n", " ", "\r\n", "\t");

describe("texts with one change", () => {
  it("give a result, and mostly few findings", () => {
    const random = randomFrom(20_261_124);
    const below = (limit: number): number => Math.floor(random() * limit);
    const runs = process.env.FC_RUNS === undefined ? 20_000 : 200_000;
    let few = 0;
    for (let run = 0; run < runs; run++) {
      const text = recipeTexts[below(recipeTexts.length)] ?? "";
      const at = below(text.length);
      const bit = bits[below(bits.length)] ?? "";
      const edits = [
        text.slice(0, at) + bit + text.slice(at),
        text.slice(0, at) + text.slice(at + 1 + below(8)),
        text.slice(0, at) + bit + text.slice(at + 1),
        text.slice(0, at) + text.slice(at + below(60)),
        text.slice(0, at),
      ];
      if (survive(edits[below(edits.length)] ?? "") <= 4) few++;
    }
    expect(few / runs).toBeGreaterThan(0.92);
  });
});

describe("any text", () => {
  it("of any characters gives a result", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 80 }), (text) => {
        survive(text);
      }),
      { numRuns: 4000 },
    );
  });

  it("of any bytes gives a result", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        survive(new TextDecoder().decode(bytes));
        survive(`halfshade 1\nrecipe "r"\nlight key { ${new TextDecoder("latin1").decode(bytes)} }`);
      }),
      { numRuns: 4000 },
    );
  });

  it("of words and signs of the language gives a result", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.constantFrom(...bits, "light", "key", "a", "2 m", "let", "solve", "measured", "sweep", "over"),
          { maxLength: 40 },
        ),
        (words) => {
          survive(`halfshade 1\nrecipe "r"\n${words.join(" ")}`);
        },
      ),
      { numRuns: 6000 },
    );
  });
});
