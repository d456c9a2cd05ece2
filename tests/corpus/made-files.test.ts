import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { grammarFiles } from "../generate/grammar-files.js";
import { corpusFolder } from "./folder.js";

const folder = new URL("../../grammar/", import.meta.url).pathname;

test.each([...grammarFiles])(
  "%s is what the program says; make it anew with tests/generate/all.ts",
  (path, make) => {
    expect(readFileSync(folder + path, "utf8")).toBe(make());
  },
);

test("nothing lies beside a text that is gone", () => {
  for (const half of ["accept", "reject"]) {
    const names = readdirSync(corpusFolder + half);
    const texts = new Set(names.filter((name) => name.endsWith(".light")).map((name) => name.slice(0, -6)));
    const orphans = names.filter(
      (name) => !texts.has(name.replace(/\.(light|tokens|ast\.json|model\.json|diagnostics\.json)$/, "")),
    );
    expect(orphans).toEqual([]);
  }
});
