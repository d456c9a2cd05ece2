import { distance } from "fastest-levenshtein";

/** ` Perhaps "check"?`, with a blank in front, or nothing where no word is near. */
export function near(written: string, words: readonly string[]): string {
  const limit = written.length < 5 ? 1 : Math.ceil(written.length / 3);
  const found = words
    .map((word) => ({ word, steps: distance(written.toLowerCase(), word.toLowerCase()) }))
    .filter(({ word, steps }) => steps <= limit || (written.length > 2 && word.startsWith(written)))
    .sort((a, b) => a.steps - b.steps || (a.word < b.word ? -1 : 1))
    .slice(0, 3);
  return found.length === 0 ? "" : ` Perhaps ${found.map(({ word }) => `"${word}"`).join(" or ")}?`;
}
