import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ebnf } from "../generate/ebnf.js";
import { tokensJson } from "../generate/tokens.js";

const grammar = new URL("../../grammar/", import.meta.url);

test("the grammar file is what the parser runs by; make it anew with tests/generate/all.ts", () => {
  expect(readFileSync(new URL("halfshade.ebnf", grammar), "utf8")).toBe(ebnf());
});

test("the token file is what the lexer knows; make it anew with tests/generate/all.ts", () => {
  expect(readFileSync(new URL("tokens.json", grammar), "utf8")).toBe(tokensJson());
});
