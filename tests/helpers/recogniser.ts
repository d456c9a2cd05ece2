import type { Token } from "../../src/text/token.js";
import { type Production, productions } from "../generate/ebnf.js";

/**
 * Tells whether a row of tokens belongs to the published grammar, by the grammar alone and without our parser:
 * every way through it is followed at once, so that no precedence, gate or look-ahead plays a part. With `soft` false
 * the words of the language cannot be names.
 */
export function belongs(tokens: readonly Token[], soft = true): boolean {
  const rules = new Map(productions().map((rule) => [rule.name ?? "", rule.definition ?? []]));
  const known = new Map<string, ReadonlySet<number>>();

  const sequence = (parts: readonly Production[], from: number): ReadonlySet<number> => {
    let ends: ReadonlySet<number> = new Set([from]);
    for (const part of parts) {
      const next = new Set<number>();
      for (const end of ends) for (const after of one(part, end)) next.add(after);
      ends = next;
      if (ends.size === 0) break;
    }
    return ends;
  };

  const repeated = (parts: readonly Production[], from: number): Set<number> => {
    const all = new Set([from]);
    const work = [from];
    for (let at = work.pop(); at !== undefined; at = work.pop()) {
      for (const end of sequence(parts, at)) {
        if (all.has(end)) continue;
        all.add(end);
        work.push(end);
      }
    }
    return all;
  };

  const one = (node: Production, from: number): ReadonlySet<number> => {
    const parts = node.definition ?? [];
    switch (node.type) {
      case "Terminal":
        return fits(tokens[from], node.name ?? "", from === tokens.length, soft)
          ? new Set([from + 1])
          : new Set();
      case "NonTerminal": {
        const key = `${node.name}@${from}`;
        const before = known.get(key);
        if (before !== undefined) return before;
        const ends = sequence(rules.get(node.name ?? "") ?? [], from);
        known.set(key, ends);
        return ends;
      }
      case "Option":
        return new Set([from, ...sequence(parts, from)]);
      case "Repetition":
        return repeated(parts, from);
      case "RepetitionMandatory": {
        const ends = new Set<number>();
        for (const end of sequence(parts, from)) for (const after of repeated(parts, end)) ends.add(after);
        return ends;
      }
      case "Alternation": {
        const ends = new Set<number>();
        for (const part of parts) for (const end of one(part, from)) ends.add(end);
        return ends;
      }
      default:
        return sequence(parts, from);
    }
  };

  return one({ type: "NonTerminal", name: "file" } as Production, 0).has(tokens.length + 1);
}

function fits(token: Token | undefined, name: string, atEnd: boolean, soft: boolean): boolean {
  if (token === undefined) return atEnd && name === "EOF";
  const type = token.tokenType;
  if (type.name === name) return true;
  if (!soft && type.name.endsWith("Word")) return false;
  return (type.CATEGORIES ?? []).some((category) => category.name === name);
}
