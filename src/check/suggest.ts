import { editDistance } from "../syntax/near.js";

/** A longer word is no slip of a name, and comparing takes the square of its length. */
const LONGEST = 40;

/**
 * The names nearest to a misspelt word, best first: at most three, and none that differs in more than a third of its
 * letters, since a far-fetched suggestion is worse than none. Where only capitals differ, nothing else is suggested.
 */
export function nearNames(word: string, names: Iterable<string>): readonly string[] {
  if (word.length > LONGEST) return [];
  const limit = Math.max(1, Math.floor(word.length / 3));
  const found: { name: string; steps: number }[] = [];
  for (const name of names) {
    const steps = editDistance(word.toLowerCase(), name.toLowerCase());
    if (steps <= limit) found.push({ name, steps });
  }
  found.sort((a, b) => a.steps - b.steps || (a.name < b.name ? -1 : 1));
  const sameLetters = found.filter((entry) => entry.steps === 0);
  return (sameLetters.length > 0 ? sameLetters : found.slice(0, 3)).map((entry) => entry.name);
}

/** "Perhaps `a` or `b`." with the known names as fall-back. */
export function suggestion(near: readonly string[], known: readonly string[], nothing: string): string {
  if (near.length > 0) return `Perhaps ${near.map((name) => `\`${name}\``).join(" or ")}?`;
  if (known.length === 0) return nothing;
  return `Known here: ${listNames(known)}.`;
}

/** Names as a list for a message, cut where it would become a wall of words. */
export function listNames(names: readonly string[], most = 16): string {
  const shown = names.slice(0, most).join(", ");
  return names.length > most ? `${shown} and ${names.length - most} more` : shown;
}
