import type { Block, File, Name, Path } from "../../syntax/ast.js";
import { blockRow, blocks, topKinds } from "../../vocabulary/index.js";
import type { Context, DefineEntry } from "../context.js";
import type { KitLook } from "../kits/look.js";
import { blockAt, blockOfItem, type Trail } from "./edit.js";

/** How far a path leads into the blocks of a file. */
export interface Found {
  /** The way to the last block; null where not even the first name is one. */
  readonly trail: Trail | null;
  /** Blocks that are on the path but not yet in the file, outermost first; they go into the block of the trail. */
  readonly missing: readonly Block[];
  /** The names behind the last block: usually one, the property. */
  readonly rest: readonly Name[];
}

/** Blocks that exist with all their defaults though nothing is written: a path may set a value in one. */
const unwritten = ["intent", "meter", "tolerances", "thresholds"];

/** Which item is the `let` that a path names; -1 for none. */
export const letIndex = (file: File, { parts }: Path): number =>
  parts.length === 1
    ? file.items.findIndex((item) => item.kind === "let" && item.name.text === parts[0]?.text)
    : -1;

/** Follows a path from block to block: by name, by kind where a kind has no name, or by both (`wall.left`). */
export function follow(file: File, path: Path, kits: KitLook): Found {
  const start = first(file, path.parts, kits);
  if (start === null) return { trail: null, missing: [], rest: path.parts };
  let { trail, rest } = start;
  const missing: Block[] = [...start.missing];
  for (;;) {
    const block: Block | null = missing[missing.length - 1] ?? (trail === null ? null : blockAt(file, trail));
    const step = block === null ? null : inside(file, block, rest, kits);
    if (step === null || trail === null) return { trail, missing, rest };
    rest = step.rest;
    if (step.index === null || missing.length > 0) missing.push(step.block);
    else trail = [...trail, step.index];
  }
}

/** The first block of a path: one that stands by itself, a piece of the set, a part of the room, or a definition. */
function first(file: File, parts: readonly Name[], kits: KitLook): Found | null {
  const single = file.items.findIndex(
    (item) => item.kind === "block" && item.words.length === 1 && isKind(item, parts),
  );
  if (single >= 0) return { trail: [single], missing: [], rest: parts.slice(1) };
  const index = file.items.findIndex(
    (item) => item.kind === "block" && item.words.length > 1 && isNamed(item, parts[0]),
  );
  if (index >= 0) return { trail: [index], missing: [], rest: parts.slice(1) };
  const piece = inContainer(file, parts, true, kits);
  if (piece !== null) return piece;
  const defined = file.items.findIndex((item) => item.kind === "define" && isNamed(item.block, parts[0]));
  if (defined >= 0) return { trail: [defined], missing: [], rest: parts.slice(1) };
  const kind = file.items.findIndex((item) => item.kind === "block" && isKind(item, parts));
  if (kind >= 0) return { trail: [kind], missing: [], rest: parts.slice(2) };
  const word = parts[0];
  if (word !== undefined && unwritten.includes(word.text)) {
    return { trail: null, missing: [empty([word])], rest: parts.slice(1) };
  }
  return inContainer(file, parts, false, kits);
}

/** A piece of the set or a part of the room without the word `set` or `room`. */
function inContainer(file: File, parts: readonly Name[], byName: boolean, kits: KitLook): Found | null {
  for (const [index, item] of file.items.entries()) {
    if (item.kind !== "block" || !["set", "room"].includes(item.words[0]?.text ?? "")) continue;
    const step = inside(file, item, parts, kits);
    const named = step !== null && step.rest.length === parts.length - 1 && step.block.words.length > 1;
    if (step === null || (byName && !named)) continue;
    return step.index === null
      ? { trail: [index], missing: [step.block], rest: step.rest }
      : { trail: [index, step.index], missing: [], rest: step.rest };
  }
  return null;
}

interface Step {
  /** Null where the block is not written in its owner: it is taken over by `like`, or all its values are defaults. */
  readonly index: number | null;
  readonly block: Block;
  readonly rest: readonly Name[];
}

function inside(file: File, owner: Block, parts: readonly Name[], kits: KitLook): Step | null {
  const row = blockRow(owner.words[0]?.text ?? "");
  const word = parts[0];
  if (row === null || word === undefined || row.parts.length === 0) return null;
  const taken = (block: Block): readonly Name[] | null => {
    if (isNamed(block, word) && blockRow(block.words[0]?.text ?? "")?.names === undefined)
      return parts.slice(1);
    return isKind(block, parts) ? parts.slice(block.words.length > 1 ? 2 : 1) : null;
  };
  const isProperty = row.properties.some((property) => property.name === word.text);
  for (const [index, entry] of owner.entries.entries()) {
    const rest = entry.kind === "block" ? taken(entry) : null;
    if (entry.kind === "block" && rest !== null) return { index, block: entry, rest };
  }
  for (const block of inherited(file, owner, kits)) {
    const rest = taken(block);
    if (rest !== null) return { index: null, block, rest };
  }
  if (isProperty || !row.parts.includes(word.text)) return null;
  const part = blockRow(word.text);
  const name = parts[1];
  if (part?.named === "none") return { index: null, block: empty([word]), rest: parts.slice(1) };
  if (name === undefined || part?.names?.includes(name.text) !== true) return null;
  return { index: null, block: empty([word, name]), rest: parts.slice(2) };
}

/**
 * The blocks inside the definitions that a block is like, the nearest first. One of a kit is not copied, since its words
 * mean what they mean in the kit: it is an empty block that goes over it.
 */
export function inherited(file: File, block: Block, kits: KitLook): readonly Block[] {
  return definitionsOf(file, block, kits).flatMap(({ block: from, kit }) =>
    from.entries.flatMap((entry): readonly Block[] => {
      if (entry.kind !== "block") return [];
      return kit ? [{ ...empty(entry.words), over: true }] : [entry];
    }),
  );
}

/** A definition that a block is like or with. */
export interface Taken {
  readonly block: Block;
  /** Whether it stands in a kit. */
  readonly kit: boolean;
}

interface Search extends Taken {
  readonly look: (name: string) => Search | null;
}

/** The definitions that a block is like or with, the nearest first; each once. */
export function definitionsOf(file: File, block: Block, kits: KitLook): readonly Taken[] {
  const inKit = (entry: DefineEntry | null | undefined, home: Context | null): Search | null => {
    const there = entry?.home ?? home;
    if (entry === null || entry === undefined || there === null) return null;
    const look = (name: string): Search | null => inKit(there.definitions.get(name), there);
    return { block: entry.statement.block, kit: true, look };
  };
  const here = (name: string): Search | null => {
    const item = file.items.find((one) => one.kind === "define" && one.block.words[1]?.text === name);
    const own = blockOfItem(item);
    return own === null ? inKit(kits.find(name), null) : { block: own, kit: false, look: here };
  };
  const found: Taken[] = [];
  const waiting: Search[] = [{ block, kit: false, look: here }];
  for (let from = waiting.shift(); from !== undefined; from = waiting.shift()) {
    for (const path of [...(from.block.like === null ? [] : [from.block.like]), ...from.block.companions]) {
      const next = from.look(path.parts.map((part) => part.text).join("."));
      if (next === null || found.some((known) => known.block === next.block)) continue;
      found.push(next);
      waiting.push(next);
    }
  }
  return found;
}

const isNamed = (block: Block, name: Name | undefined): boolean =>
  name !== undefined && block.words[1]?.text === name.text;

/** Whether a path starts with the kind of a block, and with its name behind it where it has one. */
function isKind(block: Block, [kind, name]: readonly Name[]): boolean {
  if (kind === undefined || kind.quoted || block.words[0]?.text !== kind.text) return false;
  return block.words.length === 1 || isNamed(block, name);
}

const empty = (words: readonly Name[]): Block => ({
  kind: "block",
  span: { start: words[0]?.span.start ?? 0, end: words[words.length - 1]?.span.end ?? 0 },
  words,
  like: null,
  companions: [],
  entries: [],
  damaged: false,
});

/** Everything that a path may start with, for suggestions. */
export function startNames(file: File, kits: KitLook): readonly string[] {
  const names = new Set<string>();
  for (const item of file.items) {
    if (item.kind === "let") names.add(item.name.text);
    const block = blockOfItem(item);
    if (block === null) continue;
    const word = block.words[0]?.text ?? "";
    const name = block.words[1]?.text;
    if (name !== undefined) names.add(name);
    else if ((topKinds as readonly string[]).includes(word)) names.add(word);
    if (item.kind !== "block" || (word !== "set" && word !== "room")) continue;
    for (const part of [...block.entries, ...inherited(file, block, kits)]) {
      const own = part.kind === "block" ? part.words[1]?.text : undefined;
      if (own !== undefined && part.kind === "block" && part.words[0]?.text !== "wall") names.add(own);
    }
    if (word === "room") {
      for (const part of blocks.room.parts) if (blockRow(part)?.named === "none") names.add(part);
    }
  }
  return [...names];
}
