import type { Span } from "../../core/span.js";
import type { Value } from "../../syntax/ast.js";
import { parseFile } from "../../syntax/parse.js";

/**
 * A value that stands in no text of its own, read from the way a recipe writes it. All its parts carry the place of
 * the statement that asked for it. Null for a text that is no value.
 */
export function parseValue(written: string, span: Span): Value | null {
  const parsed = parseFile({ name: "value", text: `light a {\n  b: ${written}\n}\n` }, () => {});
  const block = parsed.file.items[0];
  const entry = block?.kind === "block" ? block.entries[0] : undefined;
  if (entry?.kind !== "property" || entry.value.kind === "damaged") return null;
  return placed(entry.value, span) as Value;
}

/** A tree with every span replaced; trees are plain data. */
function placed(node: unknown, span: Span): unknown {
  if (Array.isArray(node)) return node.map((part) => placed(part, span));
  if (typeof node !== "object" || node === null) return node;
  return Object.fromEntries(
    Object.entries(node).map(([key, part]) => [key, key === "span" ? span : placed(part, span)]),
  );
}
