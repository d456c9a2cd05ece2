import { printNode } from "../../format/print-node.js";
import { printName } from "../../format/print-value.js";
import type { Block, Entry, File, Property, Variant } from "../../syntax/ast.js";
import { blockRow } from "../../vocabulary/index.js";
import type { Change } from "../change/change.js";
import { headOf, mergeable } from "../change/edit.js";
import { here, type Reporter, replace, report } from "../context.js";

/**
 * Reports blocks of a variant that stand in its base already: a variant changes one value by its path. Gives the
 * variant without them.
 */
export function withoutRepeats(to: Reporter, base: File, variant: Variant): Variant {
  const removed = new Set(
    variant.lines.flatMap((line) => (line.kind === "remove" ? [line.path.parts.at(-1)?.text] : [])),
  );
  const isRemoved = (block: Block): boolean => removed.has((block.words[1] ?? block.words[0])?.text);
  const lines = variant.lines.flatMap((line): Variant["lines"] => {
    if (line.kind !== "block" || isRemoved(line)) return [line];
    const own = ownBlock(base, line);
    if (own === null || !mergeable(line)) return isRepeated(to, line, own) ? [] : [line];
    const entries = line.entries.filter(
      (piece) => piece.kind !== "block" || isRemoved(piece) || !isRepeated(to, piece, ownPiece(own, piece)),
    );
    return [{ ...line, entries }];
  });
  return { ...variant, lines };
}

/** What a variant changes in its base, in the order of its lines. */
export function changesOf(variant: Variant): readonly Change[] {
  return variant.lines.flatMap((line): readonly Change[] => {
    switch (line.kind) {
      case "property":
        return [
          { kind: "set", path: line.path, value: line.value, companion: line.companion, span: line.span },
        ];
      case "remove":
        return [{ kind: "remove", path: line.path }];
      case "block":
        return [{ kind: "add", block: line }];
      default:
        return [];
    }
  });
}

function ownBlock(file: File, block: Block): Block | null {
  for (const item of file.items) if (item.kind === "block" && headOf(item) === headOf(block)) return item;
  return null;
}

function ownPiece(owner: Block, piece: Block): Block | null {
  for (const own of owner.entries) if (own.kind === "block" && headOf(own) === headOf(piece)) return own;
  return null;
}

function isRepeated(to: Reporter, block: Block, own: Block | null): boolean {
  const row = blockRow(block.words[0]?.text ?? "");
  if (own === null || row === null || row.anyText === true) return false;
  const name = block.words[1] ?? block.words[0];
  const head = block.words[block.words.length - 1];
  if (name === undefined || head === undefined) return false;
  const changed = changes(block.entries, own.entries).map(
    (entry) => `${printName(name)}.${printNode(entry)}`,
  );
  const span = { start: block.span.start, end: head.span.end };
  const simple = block.like === null && block.entries.every((entry) => entry.kind === "property");
  report(
    to,
    "variant.repeats",
    span,
    { head: headOf(block), path: changed[0] ?? `${name.text}.${row.properties[0]?.name ?? "at"}: ...` },
    {
      related: [
        {
          place: here(to, {
            start: own.span.start,
            end: own.words[own.words.length - 1]?.span.end ?? own.span.end,
          }),
          text: "it stands here",
        },
      ],
      fixes:
        simple && changed.length > 0
          ? [replace(to, `write \`${changed.join("`, `")}\``, block.span, changed.join(", "))]
          : [],
    },
  );
  return true;
}

/** The properties that say something else than the recipe does. */
function changes(entries: readonly Entry[], own: readonly Entry[]): readonly Property[] {
  const said = new Set(own.flatMap((entry) => (entry.kind === "property" ? [printNode(entry)] : [])));
  return entries.flatMap((entry) =>
    entry.kind === "property" && !said.has(printNode(entry)) ? [entry] : [],
  );
}
