import type { Block, Entry, File, Item } from "../../syntax/ast.js";

/** The way to a block: its index among the file's items, then among the entries of each block on the way. */
export type Trail = readonly [item: number, ...entries: number[]];

/** The block at the end of a trail; of a `define` the block it holds. */
export function blockAt(file: File, trail: Trail): Block | null {
  const [first, ...rest] = trail;
  let block = blockOfItem(file.items[first]);
  for (const index of rest) {
    const entry: Entry | undefined = block?.entries[index];
    block = entry?.kind === "block" ? entry : null;
  }
  return block;
}

/** The words before the brace of a block as one text: `light key`. */
export const headOf = (block: Block): string => block.words.map((word) => word.text).join(" ");

/** Whether a block holds nothing but blocks, so that it may add them to one of the same words. */
export const mergeable = (block: Block): boolean =>
  block.like === null &&
  block.companions.length === 0 &&
  block.entries.length > 0 &&
  block.entries.every((entry) => entry.kind === "block");

/** The block that an item is or holds. */
export function blockOfItem(item: Item | undefined): Block | null {
  if (item?.kind === "block") return item;
  return item?.kind === "define" ? item.block : null;
}

/** The file with the block at the end of a trail replaced; without it where `edit` gives null. */
export function editBlock(file: File, trail: Trail, edit: (block: Block) => Block | null): File {
  const [first, ...rest] = trail;
  const item = file.items[first];
  const block = blockOfItem(item);
  if (item === undefined || block === null) return file;
  const edited = rest.length === 0 ? edit(block) : editInside(block, rest, edit);
  const items =
    edited === null
      ? file.items.filter((_, index) => index !== first)
      : swap<Item>(file.items, first, item.kind === "define" ? { ...item, block: edited } : edited);
  return { ...file, items };
}

function editInside(block: Block, way: readonly number[], edit: (block: Block) => Block | null): Block {
  const [first = -1, ...rest] = way;
  const entry = block.entries[first];
  if (entry?.kind !== "block") return block;
  const edited = rest.length === 0 ? edit(entry) : editInside(entry, rest, edit);
  const entries =
    edited === null
      ? block.entries.filter((_, index) => index !== first)
      : swap<Entry>(block.entries, first, edited);
  return { ...block, entries };
}

/** A list with one row replaced. */
export const swap = <T>(rows: readonly T[], index: number, row: T): readonly T[] =>
  rows.map((old, i) => (i === index ? row : old));
