import { distance } from "fastest-levenshtein";

/** The names most like a mistyped one, nearest first, at most `limit`; none that differ in more than half. */
export function nearNames(written: string, names: readonly string[], limit = 3): readonly string[] {
  const word = written.toLowerCase();
  return names
    .map((name) => ({ name, far: farness(word, name.toLowerCase()) }))
    .filter(({ far }) => far <= 0.5)
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, limit)
    .map(({ name }) => name);
}

/** Edits as a share of the longer word; a name that starts with the whole word or holds it counts as near. */
function farness(word: string, name: string): number {
  const edits = distance(word, name) / Math.max(1, word.length, name.length);
  if (word.length < 3) return edits;
  if (name.startsWith(word)) return Math.min(edits, 0.1);
  return name.includes(word) ? Math.min(edits, 0.4) : edits;
}

/** ` Did you mean a, b?` with a space before it; nothing when no name is near. */
export function didYouMean(written: string, names: readonly string[]): string {
  const near = nearNames(written, names);
  return near.length > 0 ? ` Did you mean ${near.join(", ")}?` : "";
}
