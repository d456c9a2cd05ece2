/** Signs that nobody sees on a screen: controls, formats, line separators, private and unassigned ones, halves of pairs. */
const unseen = /[\p{C}\p{Zl}\p{Zp}]/gu;

const byNumber = (character: string): string => {
  if (character === "\n") return "\\n";
  if (character === "\t") return "\\t";
  const code = character.codePointAt(0) ?? 0;
  return code >= 0xd800 && code <= 0xdfff ? "\ufffd" : `\\u{${code.toString(16)}}`;
};

/**
 * A text in quotation marks, with the escapes of the language. Whatever it holds, reading it gives the same text again,
 * except for halves of surrogate pairs, which no file can hold.
 */
export function quote(text: string): string {
  return `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replace(unseen, byNumber)}"`;
}
