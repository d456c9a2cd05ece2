import { expect, test } from "vitest";
import { printDiagnostics } from "../../src/diagnostics/print.js";
import { asSentence } from "../../src/diagnostics/print-sentence.js";
import { run } from "../../src/pipeline.js";

test("a name of the recipe keeps its letters at the start of a sentence", () => {
  expect(asSentence("key is off", ["key"])).toBe("key is off.");
  expect(asSentence("keys are off", ["key"])).toBe("Keys are off.");
  expect(asSentence("the key is off", ["key", null])).toBe("The key is off.");
});

test("findings are printed without a width and without colours unless they are asked for", () => {
  const text = 'halfshade 1\nrecipe "A slip"\nsubject { height: 176 }\n';
  const { diagnostics } = run({ name: "slip.light", text });
  const printed = printDiagnostics(diagnostics, { textOf: () => text });
  expect(printed).toBe(
    printDiagnostics(diagnostics, { textOf: () => text, width: 80, paint: (_, words) => words }),
  );
  expect(printed).toContain("slip.light:3:19");
});
