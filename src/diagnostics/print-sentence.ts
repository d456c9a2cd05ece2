import { visibleLine } from "./print-visible.js";

/** A catalogue's words as a sentence: a capital letter in front, a full stop behind. */
export function asSentence(words: string): string {
  const text = visibleLine(words);
  if (text === "") return "";
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
