import { visibleLine } from "./print-visible.js";

/** Words as a sentence: a capital letter in front, unless a name of the recipe stands there, and a full stop behind. */
export function asSentence(words: string, names: readonly (string | null)[] = []): string {
  const text = visibleLine(words);
  if (text === "") return "";
  // A sentence that starts with a name, such as distance_m, keeps it as it is.
  const named = names.some((name) => name !== null && name !== "" && startsWithName(text, name));
  const capital = named || /^\w*[_\d]/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

/** Whether words begin with a name and do not go on with it. */
export function startsWithName(words: string, name: string): boolean {
  return words.startsWith(name) && !/^[\p{L}\p{N}_]/u.test(words.slice(name.length));
}
