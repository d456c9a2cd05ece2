import type { Span } from "../../core/span.js";
import { printPath } from "../../format/print-value.js";
import type { Block, Entry, File, Item, Name, Path, Property, Value } from "../../syntax/ast.js";
import { blockRow } from "../../vocabulary/index.js";
import { siblingsOf } from "../../vocabulary/siblings.js";
import { type Reporter, report } from "../context.js";
import type { KitLook } from "../kits/look.js";
import { unknownProperty } from "../properties.js";
import { blockAt, editBlock, headOf, mergeable, swap } from "./edit.js";
import { type Found, follow, letIndex } from "./find.js";
import { nowhere } from "./nowhere.js";
import { removeAt } from "./remove.js";

/**
 * One change of a recipe. `set` gives a property, or a `let`, another value; `remove` takes out a block, or a property
 * that is written in its own block; `add` puts a block in; one that holds only blocks, like `set { flat ... }`, adds them to the one that is there.
 */
export type Change =
  | {
      readonly kind: "set";
      readonly path: Path;
      readonly value: Value;
      readonly companion: Name | null;
      /** Where the change is written; findings point there. */
      readonly span: Span;
    }
  | { readonly kind: "remove"; readonly path: Path }
  | { readonly kind: "add"; readonly block: Block };

/**
 * A file with some values changed, as if it had been written so. A property replaces its like and those that say the
 * same thing in another way; one that a definition gives is written into the block itself. All changes hold together:
 * two that contradict each other are both in the file, for the checker to see. A change whose path leads nowhere is
 * reported and left out.
 * @param kits - What the kits of the file define, for the parts that its blocks have from them.
 */
export function changeFile(file: File, changes: readonly Change[], to: Reporter, kits: KitLook): File {
  const own = new Set<Entry>();
  return changes.reduce((changed, change) => {
    switch (change.kind) {
      case "set":
        return setValue(changed, change, own, to, kits);
      case "remove":
        return removeAt(changed, change.path, to, kits);
      case "add":
        return add(changed, change.block);
      default:
        return change satisfies never;
    }
  }, file);
}

function setValue(
  file: File,
  change: Extract<Change, { kind: "set" }>,
  own: Set<Entry>,
  to: Reporter,
  kits: KitLook,
): File {
  const { path, value } = change;
  const let_ = letIndex(file, path);
  if (let_ >= 0) return setLet(file, let_, value, path, to);
  const found = follow(file, path, kits);
  const last = found.missing[found.missing.length - 1] ?? (found.trail && blockAt(file, found.trail));
  if (last === null) {
    nowhere(file, path, to, kits);
    return file;
  }
  const [word, ...more] = found.rest;
  const row = blockRow(last.words[0]?.text ?? "");
  if (row === null) return file; // the kind is unknown, and that is said where it stands
  if (word === undefined) {
    const example = row.properties[0];
    report(to, "path.short", path.span, {
      path: printPath(path),
      example: `${printPath(path)}.${example?.name ?? "..."}: ${example?.example ?? "..."}`,
    });
    return file;
  }
  const property: Property = {
    kind: "property",
    span: change.span,
    path: { kind: "path", span: word.span, parts: [word] },
    companion: change.companion,
    value,
  };
  if (!row.properties.some((one) => one.name === word.text)) {
    unknownProperty(to, row, property, word.text);
    return file;
  }
  if (more.length > 0) {
    report(to, "path.long", path.span, { path: printPath(path), name: word.text });
    return file;
  }
  own.add(property);
  const put = (block: Block): Block => ({
    ...block,
    entries: [
      ...block.entries.filter((entry) => own.has(entry) || !replaces(row.kind, property, entry)),
      property,
    ],
  });
  return place(file, found, put);
}

/** Whether a property takes the place of another entry of its block. */
function replaces(kind: string, property: Property, entry: Entry): boolean {
  if (entry.kind !== "property" || entry.path.parts.length !== 1) return false;
  const name = property.path.parts[0]?.text ?? "";
  const other = entry.path.parts[0]?.text ?? "";
  if (siblingsOf(kind, name).includes(other)) return true;
  return other === name && entry.companion?.text === property.companion?.text;
}

/** Puts the blocks that are not yet there into their owner, and edits the innermost. */
function place(file: File, { trail, missing }: Found, edit: (block: Block) => Block): File {
  if (missing.length === 0) return trail === null ? file : editBlock(file, trail, edit);
  const made = missing.reduceRight<Block | null>(
    (inner, block) =>
      inner === null ? edit(block) : { ...block, entries: [...without(block, inner), inner] },
    null,
  );
  if (made === null) return file;
  if (trail === null) return { ...file, items: [...file.items, made] };
  return editBlock(file, trail, (block) => ({ ...block, entries: [...block.entries, made] }));
}

/** The entries of a block without the inner block that is put in anew. */
const without = (block: Block, inner: Block): readonly Entry[] =>
  block.entries.filter((entry) => entry.kind !== "block" || headOf(entry) !== headOf(inner));

function setLet(file: File, index: number, value: Value, path: Path, to: Reporter): File {
  const item = file.items[index];
  if (item?.kind !== "let") return file;
  if (
    value.kind === "text" ||
    value.kind === "unknown" ||
    value.kind === "list" ||
    value.kind === "relation"
  ) {
    report(to, "path.let", path.span, { name: item.name.text });
    return file;
  }
  return { ...file, items: swap<Item>(file.items, index, { ...item, value }) };
}

function add(file: File, block: Block): File {
  const index = file.items.findIndex((item) => item.kind === "block" && headOf(item) === headOf(block));
  if (index >= 0 && mergeable(block)) {
    return editBlock(file, [index], (owner) => ({
      ...owner,
      entries: [...owner.entries, ...block.entries],
    }));
  }
  return { ...file, items: [...file.items, block] };
}
