import { NewLine, OpenBrace } from "../text/kinds.js";
import type { Token } from "../text/token.js";
import type { Structure } from "./structure.js";

/**
 * The opening brace that most likely lacks its partner. The layout is the hint: a closing brace at the start of a
 * line that stands further left than the line of the brace it closes belongs to an outer block. Where the layout
 * says nothing, the innermost brace that is still open at the end.
 */
export function firstUnclosed(text: string, tokens: readonly Token[], structure: Structure): Token | null {
  let innermost: Token | null = null;
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index];
    if (token === undefined || token.tokenType !== OpenBrace) continue;
    const closer = structure.closer[index] ?? -1;
    if (closer < 0) {
      innermost = token;
      continue;
    }
    const closing = tokens[closer];
    if (closing === undefined || tokens[closer - 1]?.tokenType !== NewLine) continue;
    const edge = lineStart(text, closing.startOffset);
    const before = text.slice(edge, closing.startOffset);
    if (before.trim() === "" && before.length < indent(text, token.startOffset)) return token;
  }
  return innermost;
}

function lineStart(text: string, at: number): number {
  let start = at;
  while (start > 0 && text.charCodeAt(start - 1) !== 10 && text.charCodeAt(start - 1) !== 13) start--;
  return start;
}

function indent(text: string, at: number): number {
  const start = lineStart(text, at);
  let end = start;
  while (text.charCodeAt(end) === 32 || text.charCodeAt(end) === 9) end++;
  return end - start;
}
