import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printFile } from "../../src/format/print-node.js";
import { nodesAt, tokenIndexAt } from "../../src/syntax/at.js";
import { parseFile } from "../../src/syntax/parse.js";
import { type Node, walk } from "../../src/syntax/walk.js";
import { recipeTexts } from "../helpers/recipe-texts.js";
import { anyFile } from "../helpers/recipes.js";

/** Every object in a tree that has a kind and a place, found without knowing the tree. */
function kindsIn(value: unknown, found: string[] = []): string[] {
  if (Array.isArray(value)) for (const each of value) kindsIn(each, found);
  else if (typeof value === "object" && value !== null) {
    if ("kind" in value && "span" in value) found.push(String(value.kind));
    for (const each of Object.values(value)) kindsIn(each, found);
  }
  return found;
}

describe("walking a tree", () => {
  it("meets every node once", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const met: string[] = [];
        walk(file, (node) => met.push(node.kind));
        expect([...met].sort()).toEqual(kindsIn(file).sort());
      }),
      { numRuns: 300 },
    );
  });
});

describe("the nodes at an offset", () => {
  it("go from the file down to a name", () => {
    const text = "halfshade 1\nlight key { aim: offset(left: throw) }\n";
    const { file, tokens } = parseFile({ name: "a", text }, () => {});
    const kinds = (offset: number): readonly string[] => nodesAt(file, offset).map((node) => node.kind);
    expect(kinds(text.indexOf("throw") + 2)).toEqual([
      "file",
      "block",
      "property",
      "reference",
      "reference",
      "path",
      "name",
    ]);
    expect(kinds(text.indexOf("{") + 1)).toEqual(["file", "block"]);
    expect(kinds(text.indexOf("aim") + 3)).toEqual(["file", "block", "property", "path", "name"]);
    expect(tokens[tokenIndexAt(tokens, text.indexOf("throw") + 2)]?.image).toBe("throw");
    expect(tokenIndexAt(tokens, -1)).toBe(-1);
  });

  it("each hold it and lie in each other", () => {
    for (const text of [
      ...recipeTexts,
      printFile(fc.sample(anyFile, { numRuns: 1, seed: 7 })[0] ?? ({} as never)),
    ]) {
      const { file } = parseFile({ name: "a", text }, () => {});
      for (let offset = 0; offset <= text.length; offset += 7) {
        const chain: readonly Node[] = nodesAt(file, offset);
        chain.forEach(({ span }, index) => {
          expect(span.start <= offset && offset <= span.end).toBe(true);
          const outer = chain[index - 1]?.span;
          if (outer !== undefined) expect(outer.start <= span.start && span.end <= outer.end).toBe(true);
        });
      }
    }
  });
});
