import type { Token } from "../../src/text/token.js";

/** Signs beside which blanks may come and go without anything being read differently. */
const loose = new Set([
  "Comma",
  "OpenRound",
  "CloseRound",
  "OpenSquare",
  "CloseSquare",
  "OpenBrace",
  "CloseBrace",
]);

/**
 * The same text with other blanks: every gap on a line gets some of `blanks`, indents too; a gap beside a bracket or
 * comma may vanish. Line ends, texts and comments stay.
 */
export function respaced(text: string, tokens: readonly Token[], choose: (count: number) => number): string {
  const blanks = [" ", "  ", "\t", " \t ", "\u00a0"];
  const blank = (): string => blanks[choose(blanks.length)] ?? " ";
  let out = "";
  let last = 0;
  let before = "NewLine";
  const gap = (inner: string, after: string): string => {
    const comment = inner.indexOf("#");
    if (comment >= 0) return `${inner.slice(0, comment)}${inner.slice(comment).replace(/\n[ \t]*$/, "\n")}`;
    const ends = inner.split("\n");
    if (ends.length > 1) return `${ends.map(() => (choose(2) === 0 ? "" : blank())).join("\n")}`;
    if (before === "Comma" && /^(?:Numeral|Fraction|Ratio)$/.test(after)) return blank();
    if (inner !== "")
      return loose.has(before) || loose.has(after) ? (choose(3) === 0 ? "" : blank()) : blank();
    return loose.has(before) || loose.has(after) ? (choose(3) === 0 ? blank() : "") : "";
  };
  for (const token of tokens) {
    if (token.tokenType.name === "NewLine") continue;
    out += gap(text.slice(last, token.startOffset), token.tokenType.name) + token.image;
    last = token.endOffset + 1;
    before = token.tokenType.name;
  }
  return out + text.slice(last);
}
