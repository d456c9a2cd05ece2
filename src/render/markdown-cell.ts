import { markdownText } from "./markdown-escape.js";

/** A number with what belongs to it: nothing in it means anything to Markdown inside a cell. */
const quiet =
  /^(?:f\/|ISO |EV |full - )?-?[\d.:/]+(?: \+0\.\d)?(?: \(-?[\d.]+ stop\))?(?: ?(?:%|[a-zA-Z]+(?: s)?))?$|^-$/;

/** A text in a cell: one line, and no border of the table. */
export const cellText = (text: string): string =>
  text === "" ? " " : quiet.test(text) ? text : markdownText(text);
