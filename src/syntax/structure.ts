import {
  CloseBrace,
  CloseRound,
  CloseSquare,
  Comma,
  NewLine,
  OpenBrace,
  OpenRound,
  OpenSquare,
} from "../text/kinds.js";
import type { Token } from "../text/token.js";

/** Which brackets belong together, by token index; worked out only for a text with mistakes. */
export interface Structure {
  /** For every token the innermost bracket that is open there and is closed later, or -1. */
  readonly around: Int32Array;
  /** For every opening bracket the index of its closing one, or -1. */
  readonly closer: Int32Array;
}

/**
 * Pairs the brackets of a text that may be wrong. A closing brace closes every round or square bracket inside it;
 * a line end closes those that could not go on over it (only behind an opening bracket or a comma can they).
 */
export function structureOf(tokens: readonly Token[]): Structure {
  const count = tokens.length;
  const around = new Int32Array(count).fill(-1);
  const closer = new Int32Array(count).fill(-1);
  const stack: number[] = [];
  for (let index = 0; index < count; index++) {
    around[index] = stack[stack.length - 1] ?? -1;
    const type = tokens[index]?.tokenType;
    if (type === OpenBrace || type === OpenRound || type === OpenSquare) stack.push(index);
    else if (type === CloseBrace) pair(tokens, stack, closer, index, OpenBrace);
    else if (type === CloseRound) pair(tokens, stack, closer, index, OpenRound);
    else if (type === CloseSquare) pair(tokens, stack, closer, index, OpenSquare);
    else if (type === NewLine && !goesOn(tokens, index)) {
      while (stack.length > 0 && tokens[stack[stack.length - 1] ?? 0]?.tokenType !== OpenBrace) stack.pop();
    }
  }
  for (let index = 0; index < count; index++) {
    let outer = around[index] ?? -1;
    if (outer >= 0 && (closer[outer] ?? -1) < 0 && tokens[outer]?.tokenType !== OpenBrace) {
      outer = around[outer] ?? -1;
      around[index] = outer;
    }
  }
  return { around, closer };
}

function pair(
  tokens: readonly Token[],
  stack: number[],
  closer: Int32Array,
  index: number,
  opener: unknown,
): void {
  let place = stack.length - 1;
  while (place >= 0) {
    const type = tokens[stack[place] ?? 0]?.tokenType;
    if (type === opener) break;
    if (type === OpenBrace) return;
    place--;
  }
  if (place < 0) return;
  closer[stack[place] ?? 0] = index;
  stack.length = place;
}

/** Whether a bracket may stay open over the line end at `index`. */
function goesOn(tokens: readonly Token[], index: number): boolean {
  const before = tokens[index - 1]?.tokenType;
  const after = tokens[index + 1]?.tokenType;
  return (
    before === OpenRound ||
    before === OpenSquare ||
    before === Comma ||
    after === CloseRound ||
    after === CloseSquare
  );
}

/** The token at which reading goes on inside brackets: the next comma or the closing bracket of the innermost pair. */
export function endOfMember(tokens: readonly Token[], structure: Structure, from: number): number {
  const outer = from < tokens.length ? (structure.around[from] ?? -1) : -1;
  if (outer < 0 || tokens[outer]?.tokenType === OpenBrace) return endOfLine(tokens, structure, from);
  const close = structure.closer[outer] ?? -1;
  for (let index = from; index < close; index++) {
    if (tokens[index]?.tokenType === Comma && structure.around[index] === outer) return index;
    const inner = structure.closer[index] ?? -1;
    if (inner > index && inner < close) index = inner;
  }
  return close;
}

/** The token at which reading goes on after a line that could not be read: line end, `}`, or a comma between settings. */
export function endOfLine(tokens: readonly Token[], structure: Structure, from: number): number {
  const inBraces = braceAround(tokens, structure, from) >= 0;
  for (let index = from; index < tokens.length; index++) {
    const type = tokens[index]?.tokenType;
    if (type === NewLine || type === CloseBrace) return index;
    if (type === Comma && inBraces && isBetweenSettings(tokens, structure, index)) return index;
    const inner = structure.closer[index] ?? -1;
    if (inner > index) index = inner;
  }
  return tokens.length;
}

function isBetweenSettings(tokens: readonly Token[], structure: Structure, index: number): boolean {
  const outer = structure.around[index] ?? -1;
  return outer >= 0 && tokens[outer]?.tokenType === OpenBrace;
}

/** The innermost open brace around a token, or -1. */
export function braceAround(tokens: readonly Token[], structure: Structure, from: number): number {
  let outer = structure.around[Math.min(from, tokens.length - 1)] ?? -1;
  while (outer >= 0 && tokens[outer]?.tokenType !== OpenBrace) outer = structure.around[outer] ?? -1;
  return outer;
}
