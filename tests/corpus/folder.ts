import { readdirSync, readFileSync } from "node:fs";

/** The folder of texts that the language accepts or refuses, for us and for other programs that read it. */
export const corpusFolder = new URL("../../grammar/corpus/", import.meta.url).pathname;

/** One text of the corpus. `name` is its file's name without the ending. */
export interface CorpusText {
  readonly name: string;
  readonly text: string;
}

/** Every text of one half of the corpus, by name. */
export function corpusTexts(half: "accept" | "reject"): readonly CorpusText[] {
  return readdirSync(corpusFolder + half)
    .filter((file) => file.endsWith(".light"))
    .map((file) => file.slice(0, -".light".length))
    .sort()
    .map((name) => ({ name, text: readFileSync(`${corpusFolder}${half}/${name}.light`, "utf8") }));
}

/** What is kept beside a text, or null where nothing is. */
export function keptBeside(half: "accept" | "reject", name: string, ending: string): string | null {
  try {
    return readFileSync(`${corpusFolder}${half}/${name}.${ending}`, "utf8");
  } catch {
    return null;
  }
}
