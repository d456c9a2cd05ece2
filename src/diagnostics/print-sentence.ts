import { visibleLine } from "./print-visible.js";

/** A catalogue's words as a sentence: a capital letter in front, a full stop behind. */
export function asSentence(words: string): string {
  const text = visibleLine(words);
  if (text === "") return "";
  // A sentence that starts with a name, such as distance_m, keeps it as it is.
  const capital = /^\w*[_\d]/.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
