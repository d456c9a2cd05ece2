import { MAX_DEPTH } from "../core/limits.js";
import { CloseBrace, CloseRound, CloseSquare, OpenBrace, OpenRound, OpenSquare } from "../text/kinds.js";
import type { Token } from "../text/token.js";

/** What a look at the brackets alone tells before anything is parsed. */
export interface Depths {
  /** Index of the first bracket that is nested too deep, or -1. */
  readonly tooDeep: number;
  /** True when more braces are opened than closed. */
  readonly unbalanced: boolean;
  /** True when round or square brackets are not as many opened as closed. */
  readonly unpaired: boolean;
}

/** Counts brackets. The parser recurses once for each open one, closed or not, so this comes before it. */
export function depthsOf(tokens: readonly Token[]): Depths {
  let depth = 0;
  let braces = 0;
  let brackets = 0;
  let tooDeep = -1;
  for (let index = 0; index < tokens.length; index++) {
    const type = tokens[index]?.tokenType;
    if (type === OpenBrace || type === OpenRound || type === OpenSquare) {
      depth++;
      if (type === OpenBrace) braces++;
      else brackets++;
      if (depth > MAX_DEPTH && tooDeep < 0) tooDeep = index;
    } else if (type === CloseBrace || type === CloseRound || type === CloseSquare) {
      if (depth > 0) depth--;
      if (type !== CloseBrace) brackets--;
      else if (braces > 0) braces--;
    }
  }
  return { tooDeep, unbalanced: braces > 0, unpaired: brackets !== 0 };
}
