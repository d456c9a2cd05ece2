import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { corpusTexts } from "../corpus/folder.js";

test("the corpus is worked out with frozen objects, without __proto__ and without code from texts", () => {
  const root = new URL("../..", import.meta.url).pathname;
  const said = execFileSync(
    process.execPath,
    [
      "--disable-proto=throw",
      "--disallow-code-generation-from-strings",
      "--import",
      "tsx",
      "tests/fuzz/frozen-run.ts",
    ],
    { cwd: root, encoding: "utf8" },
  );
  expect(Number(said)).toBe(3 * (corpusTexts("accept").length + corpusTexts("reject").length));
});
