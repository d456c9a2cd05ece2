import type { Place } from "../core/span.js";
import type { Fix } from "../diagnostics/diagnostic.js";
import type { BlockModel, Origins } from "../model/types.js";
import type { Block, Name } from "../syntax/ast.js";
import { type BlockKind, blockRow, blocks, topKinds } from "../vocabulary/index.js";
import type { BlockRow } from "../vocabulary/property.js";
import { kindSynonyms } from "../vocabulary/synonyms.js";
import { type Context, here, type Owned, ownedBy, replace, report } from "./context.js";
import { chooseCalibration, type Expanded, expand, withOver } from "./like.js";
import { type ReadProperties, readProperties } from "./properties.js";
import { listNames, nearNames } from "./suggest.js";
import { aKind } from "./words.js";

/** A block with what was read of it. */
export interface CheckedBlock {
  readonly kind: BlockKind;
  readonly name: string | null;
  readonly block: Block;
  /** The context of the file that the block stands in: a part may come from a kit. */
  readonly home: Context;
  readonly read: ReadProperties;
  readonly parts: readonly CheckedBlock[];
  /** False where something it is like could not be found, or the parser had to repair it. */
  readonly complete: boolean;
  /** A modifier for which the head has no calibration. */
  readonly unpaired: string | null;
}

/** The kind of a block, looked up among those that may stand here. Null after a finding. */
export function kindOf(
  ctx: Context,
  block: Block,
  allowed: readonly string[],
  where: string,
): BlockRow | null {
  const word = block.words[0];
  if (word === undefined) return null;
  const row = blockRow(word.text);
  if (row !== null && allowed.includes(row.kind)) return row;
  if (row !== null) {
    report(ctx, "block.misplaced", word.span, { kind: aKind(word.text), where, remedy: homeOf(row.kind) });
    return null;
  }
  const near = nearKinds(word.text, allowed);
  report(
    ctx,
    "block.unknown",
    word.span,
    { word: word.text, kinds: listNames(allowed, 40) },
    {
      ...(near.length > 0 ? { help: `Perhaps ${near.map((name) => `\`${name}\``).join(" or ")}?` } : {}),
      fixes: near.map((name) => {
        const named =
          blockRow(name)?.named === "needed" && block.words.length === 1 ? `${name} ${word.text}` : name;
        return replace(ctx, `write \`${named}\``, word.span, named);
      }),
    },
  );
  return null;
}

/** The kinds that may have been meant by a word that is none. */
export function nearKinds(word: string, allowed: readonly string[]): readonly string[] {
  const meant = kindSynonyms.get(word.toLowerCase());
  return meant !== undefined && allowed.includes(meant) ? [meant] : nearNames(word, allowed);
}

/** Where a kind of block belongs, as a sentence. */
function homeOf(kind: string): string {
  const homes = Object.values(blocks).filter((row) => (row.parts as readonly string[]).includes(kind));
  if (homes.length > 0)
    return `It belongs inside \`${homes.map((row) => row.kind).join("` or `")} { ... }\`.`;
  if ((topKinds as readonly string[]).includes(kind)) return "It stands by itself, outside other blocks.";
  return `It is only defined: \`define ${kind} NAME { ... }\`.`;
}

/** The name of a block, as its kind demands. */
export function blockName(ctx: Context, block: Block, row: BlockRow): string | null {
  const [kind, name, extra] = block.words;
  if (kind === undefined) return null;
  if (extra !== undefined) {
    const like = nearNames(extra.text, ["like"]).length > 0;
    report(
      ctx,
      "block.words",
      extra.span,
      { word: extra.text },
      like
        ? { help: "Perhaps `like`?", fixes: [replace(ctx, "write `like`", extra.span, "like")] }
        : { fixes: oneName(ctx, block.words.slice(1)) },
    );
  }
  if (name === undefined) {
    if (row.named === "needed") {
      report(ctx, "block.name-missing", kind.span, {
        kind: row.kind,
        example: row.names?.[0] ?? exampleName(row.kind),
      });
    }
    return null;
  }
  if (row.named === "none") {
    report(ctx, "block.name-unwanted", name.span, { kind: row.kind });
    return null;
  }
  if (row.names !== undefined && !row.names.includes(name.text)) {
    const near = nearNames(name.text, row.names);
    report(
      ctx,
      "block.name-wrong",
      name.span,
      { kind: row.kind, name: name.text, names: row.names.join(", ") },
      {
        fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, name.span, candidate)),
      },
    );
    return null;
  }
  return name.text;
}

/** Several words made one name in backticks. */
function oneName(ctx: Context, words: readonly Name[]): readonly Fix[] {
  const [first, last] = [words[0], words[words.length - 1]];
  if (first === undefined || last === undefined || words.some((word) => word.quoted)) return [];
  const name = `\`${words.map((word) => word.text).join(" ")}\``;
  return [replace(ctx, `write ${name}`, { start: first.span.start, end: last.span.end }, name)];
}

/** A name that one of a kind may have, for messages. */
export function exampleName(kind: string): string {
  const examples: ReadonlyMap<string, string> = new Map([
    ["light", "key"],
    ["flat", "back"],
    ["paper", "roll"],
    ["card", "white"],
    ["scrim", "silk"],
    ["point", "hand"],
    ["table", "bench"],
    ["subject", "ana"],
    ["gel", "straw"],
    ["modifier", "octa"],
    ["camera", "full_frame"],
    ["opening", "window"],
  ]);
  return examples.get(kind) ?? "one";
}

/**
 * Checks a block of a known kind: what it takes over, its properties, and the blocks inside it.
 * @param over - What goes over its entries though it stands elsewhere.
 */
export function checkBlock(
  ctx: Context,
  block: Block,
  row: BlockRow,
  over: readonly Owned[] = [],
): CheckedBlock {
  const name = blockName(ctx, block, row);
  const written: Expanded =
    block.like === null && block.companions.length === 0
      ? { entries: ownedBy(ctx, block.entries), complete: true, companions: [] }
      : expand(ctx, block, row.kind);
  const expanded: Expanded = { ...written, entries: withOver(row.kind, written.entries, over) };
  const chosen =
    row.kind === "light"
      ? chooseCalibration(expanded.entries, expanded.companions)
      : { entries: expanded.entries, unpaired: null };
  const read = readProperties(row, chosen.entries);
  return {
    kind: row.kind as BlockKind,
    name,
    block,
    home: ctx,
    read,
    parts: checkParts(row, chosen.entries),
    complete: expanded.complete && !block.damaged,
    unpaired: chosen.unpaired,
  };
}

function checkParts(row: BlockRow, entries: readonly Owned[]): readonly CheckedBlock[] {
  const parts: CheckedBlock[] = [];
  const seen = new Map<string, Place>();
  for (const { entry, ctx, over } of entries) {
    if (entry.kind !== "block") continue;
    const part = kindOf(ctx, entry, row.parts, `inside ${aKind(row.kind).toLowerCase()}`);
    if (part === null) continue;
    const head = entry.words.map((word) => word.text).join(" ");
    const before = seen.get(head);
    if (before !== undefined && (part.named === "none" || part.names !== undefined)) {
      report(
        ctx,
        "block.twice",
        entry.words[0]?.span ?? entry.span,
        { kind: head },
        {
          related: [{ place: before, text: "the first is here" }],
        },
      );
      continue;
    }
    seen.set(head, here(ctx, entry.span));
    parts.push(checkBlock(ctx, entry, part, over));
  }
  return parts;
}

/** The model of a checked block. The vocabulary's readers made the values, so their types are those of its rows. */
export function toModel<K extends BlockKind>(checked: CheckedBlock): BlockModel<K> {
  const origins: Origins = {
    block: here(checked.home, checked.block.span),
    properties: checked.read.places as ReadonlyMap<string, Place>,
  };
  const row: BlockRow = blocks[checked.kind];
  const { values } = checked.read;
  const ordered: (readonly [string, unknown])[] = [];
  for (const { name } of row.properties) if (values.has(name)) ordered.push([name, values.get(name)]);
  return {
    block: checked.kind,
    name: checked.name,
    ...Object.fromEntries(ordered),
    parts: checked.parts.map(toModel),
    origins,
  } as unknown as BlockModel<K>;
}
