import type { Argument, Reference, Value } from "../../syntax/ast.js";
import { bare } from "../words.js";

/** A word with or without brackets: its word and its arguments; null for anything else or for a dotted path. */
export function asCall(
  value: Value,
): { readonly word: string; readonly call: Reference; readonly args: readonly Argument[] } | null {
  const inner = bare(value);
  if (inner.kind !== "reference" || inner.path.parts.length !== 1) return null;
  return { word: inner.path.parts[0]?.text ?? "", call: inner, args: inner.args ?? [] };
}

/** Arguments sorted by name, and those without one in order. `twice` is a name given more than once. */
export interface SortedArguments {
  readonly plain: readonly Value[];
  readonly named: ReadonlyMap<string, Argument>;
  readonly twice: string | null;
}

/** Sorts the arguments of a call. */
export function sortArguments(args: readonly Argument[]): SortedArguments {
  const plain: Value[] = [];
  const named = new Map<string, Argument>();
  let twice: string | null = null;
  for (const argument of args) {
    if (argument.name === null) plain.push(argument.value);
    else if (named.has(argument.name.text)) twice = argument.name.text;
    else named.set(argument.name.text, argument);
  }
  return { plain, named, twice };
}

/** The first name that is not allowed, or the one given twice, as the trouble of a message; null if all is well. */
export function argumentTrouble(
  sorted: SortedArguments,
  allowed: readonly string[],
  plainAllowed: number,
): string | null {
  if (sorted.twice !== null) return `gets \`${sorted.twice}\` twice`;
  for (const name of sorted.named.keys()) {
    if (!allowed.includes(name)) {
      return allowed.length === 0
        ? `takes no \`${name}\``
        : `takes no \`${name}\`; it may have ${allowed.join(", ")}`;
    }
  }
  if (sorted.plain.length > plainAllowed)
    return `has ${sorted.plain.length} plain arguments where at most ${plainAllowed} belong`;
  return null;
}
