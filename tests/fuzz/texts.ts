import { readdirSync, readFileSync } from "node:fs";
import { corpusTexts } from "../corpus/folder.js";

const folder = new URL("../../examples/", import.meta.url).pathname;

/** Every text of the corpus and of the examples. */
export const allTexts: readonly string[] = [
  ...corpusTexts("accept").map(({ text }) => text),
  ...corpusTexts("reject").map(({ text }) => text),
  ...readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".light"))
    .sort()
    .map((name) => readFileSync(folder + name, "utf8")),
];
