import { expect, test } from "vitest";
import { allSources } from "./source-tree.js";

/** A file above this is split. */
const MOST_LINES = 500;
/** Tables of published numbers and the grammar are as long as they are. */
const excepted = (path: string): boolean => path.includes("/data/") || path === "syntax/grammar.ts";

const lines = (text: string): number => text.split("\n").length - (text.endsWith("\n") ? 1 : 0);

test("no file of src is longer than 500 lines", () => {
  const long = allSources()
    .filter((file) => !excepted(file.path) && lines(file.text) > MOST_LINES)
    .map((file) => `${file.path}: ${lines(file.text)} lines`);
  expect(long).toEqual([]);
});

test("the middle file is short", () => {
  const sizes = allSources()
    .map((file) => lines(file.text))
    .sort((a, b) => a - b);
  expect(sizes[sizes.length >> 1]).toBeLessThanOrEqual(120);
});
