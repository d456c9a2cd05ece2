import { printNode } from "../format/print-node.js";
import { printName } from "../format/print-value.js";
import type { Block, Entry, File, Property, Variant } from "../syntax/ast.js";
import { blockRow } from "../vocabulary/index.js";
import { type Change, changeFile } from "./change/change.js";
import { type Context, here, replace, report } from "./context.js";

/** Reports what a variant changes though it is not there, and blocks of it that stand in the recipe already. */
export function checkVariant(ctx: Context, file: File, variant: Variant): void {
  if (variant.from === null) changeFile(file, changesOf(variant), ctx);
  for (const line of variant.lines) {
    if (line.kind !== "block") continue;
    if (line.words[0]?.text === "set") {
      for (const piece of line.entries)
        if (piece.kind === "block") checkRepeated(ctx, piece, ownPiece(file, piece));
    } else {
      checkRepeated(ctx, line, ownBlock(file, line));
    }
  }
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

const headOf = (block: Block): string => block.words.map((word) => word.text).join(" ");

function ownBlock(file: File, block: Block): Block | null {
  for (const item of file.items) if (item.kind === "block" && headOf(item) === headOf(block)) return item;
  return null;
}

function ownPiece(file: File, piece: Block): Block | null {
  for (const item of file.items) {
    if (item.kind !== "block" || item.words[0]?.text !== "set") continue;
    for (const own of item.entries) if (own.kind === "block" && headOf(own) === headOf(piece)) return own;
  }
  return null;
}

function checkRepeated(ctx: Context, block: Block, own: Block | null): void {
  const row = blockRow(block.words[0]?.text ?? "");
  if (own === null || row === null || row.anyText === true) return;
  const name = block.words[1] ?? block.words[0];
  const head = block.words[block.words.length - 1];
  if (name === undefined || head === undefined) return;
  const changed = changes(block.entries, own.entries).map(
    (entry) => `${printName(name)}.${printNode(entry)}`,
  );
  const span = { start: block.span.start, end: head.span.end };
  const simple = block.like === null && block.entries.every((entry) => entry.kind === "property");
  report(
    ctx,
    "variant.repeats",
    span,
    { head: headOf(block), path: changed[0] ?? `${name.text}.${row.properties[0]?.name ?? "at"}: ...` },
    {
      related: [
        {
          place: here(ctx, {
            start: own.span.start,
            end: own.words[own.words.length - 1]?.span.end ?? own.span.end,
          }),
          text: "it stands here",
        },
      ],
      fixes:
        simple && changed.length > 0
          ? [replace(ctx, `write \`${changed.join("`, `")}\``, block.span, changed.join(", "))]
          : [],
    },
  );
}

/** The properties that say something else than the recipe does. */
function changes(entries: readonly Entry[], own: readonly Entry[]): readonly Property[] {
  const said = new Set(own.flatMap((entry) => (entry.kind === "property" ? [printNode(entry)] : [])));
  return entries.flatMap((entry) =>
    entry.kind === "property" && !said.has(printNode(entry)) ? [entry] : [],
  );
}
