/**
 * Characters that a terminal obeys or hides instead of showing: C0 and C1 controls, DEL, soft hyphen, marks of writing
 * direction, joiners and spaces of no width, line and paragraph separators, tags, lone surrogates.
 */
const hostile =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]|[\u{e0000}-\u{e0fff}]|\p{Surrogate}/gu;

const escaped = (character: string): string =>
  `\\u{${(character.codePointAt(0) ?? 0).toString(16).padStart(2, "0")}}`;

/** A text that can be shown on a terminal: every hidden or obeyed character as `\u{..}`; line ends and tabs stay. */
export function visible(text: string): string {
  return text.replace(hostile, escaped);
}

/** The same for a text that must stay on one line: line ends and tabs are shown as `\u{..}` too. */
export function visibleLine(text: string): string {
  return visible(text).replace(/[\t\n]/g, escaped);
}
