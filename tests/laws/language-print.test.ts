import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Diagnostic } from "../../src/diagnostics/diagnostic.js";
import { printFile } from "../../src/format/print-node.js";
import { parseFile } from "../../src/syntax/parse.js";
import { bare } from "../helpers/bare.js";
import { anyFile } from "../helpers/recipes.js";

describe("printing and parsing", () => {
  it("gives every tree back, places aside", () => {
    fc.assert(
      fc.property(anyFile, (file) => {
        const text = printFile(file);
        const found: Diagnostic[] = [];
        const parsed = parseFile({ name: "a", text }, (diagnostic) => found.push(diagnostic));
        expect(found.map((diagnostic) => `${diagnostic.code} at ${diagnostic.place.start}`)).toEqual([]);
        expect(bare(parsed.file)).toEqual(bare(file));
      }),
      { numRuns: 1500 },
    );
  });
});
