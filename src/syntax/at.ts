import type { Token } from "../text/token.js";
import type { File } from "./ast.js";
import { children, type Node } from "./walk.js";

/**
 * The nodes that hold an offset, the file first and the smallest last. An offset between two characters belongs to
 * the node that ends there as well as to the one that starts there; of two such nodes the later one is taken.
 */
export function nodesAt(file: File, offset: number): readonly Node[] {
  const chain: Node[] = [];
  let node: Node | undefined = file;
  while (node !== undefined) {
    chain.push(node);
    node = lastThatHolds(children(node), offset);
  }
  return chain;
}

function lastThatHolds(nodes: readonly Node[], offset: number): Node | undefined {
  let found: Node | undefined;
  for (const node of nodes) if (node.span.start <= offset && offset <= node.span.end) found = node;
  return found;
}

/** Index of the last token that starts at or before an offset, or -1. */
export function tokenIndexAt(tokens: readonly Token[], offset: number): number {
  let low = 0;
  let high = tokens.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((tokens[middle]?.startOffset ?? 0) <= offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
