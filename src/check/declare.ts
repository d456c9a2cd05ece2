import type { Block, File } from "../syntax/ast.js";
import { blockRow, blocks, topKinds } from "../vocabulary/index.js";
import { nearKinds } from "./block.js";
import { functionRow } from "./claims/results.js";
import { type Context, contextOf, type Declared, here, report } from "./context.js";
import { declareDefinition } from "./define.js";
import type { Kits } from "./kits/kits.js";
import { bringIn } from "./kits/use.js";
import { declareLet } from "./lets.js";
import { declaredKey, readingWords, takenNames } from "./places.js";

const pieces = new Set([
  "flat",
  "paper",
  "card",
  "scrim",
  "table",
  "box",
  "sphere",
  "capsule",
  "disc",
  "panel",
]);

/** Takes note of everything in the file that has a name, before anything refers to it; order never matters. */
export function declareAll(ctx: Context, file: File, kits: Kits): void {
  for (const item of file.items) {
    if (item.kind === "let") declareLet(ctx, item);
    else if (item.kind === "use") bringIn(ctx, item, kits);
  }
  for (const item of file.items) {
    if (item.kind === "define") declareDefinition(ctx, item);
  }
  for (const item of file.items) if (item.kind === "block") declareBlock(ctx, item);
}

const blocksIn = (block: Block): readonly Block[] =>
  block.entries.flatMap((entry) => (entry.kind === "block" && entry.over !== true ? [entry] : []));

const headOf = (block: Block): string => block.words.map((word) => word.text).join(" ");

/** A block inside another, with the file that it stands in. */
interface Part {
  readonly part: Block;
  readonly ctx: Context;
}

/** The blocks inside a block: its own, also two of one name, and those it takes over by `like`. */
function partsOf(ctx: Context, block: Block): readonly Part[] {
  const parts: Part[] = blocksIn(block).map((part) => ({ part, ctx }));
  const seen = new Set<Block>();
  let from = block;
  let there = ctx;
  while (!seen.has(from)) {
    seen.add(from);
    const name = from.like?.parts.map((part) => part.text).join(".");
    const entry = name === undefined ? undefined : there.definitions.get(name);
    if (entry === undefined) break;
    const home = contextOf(there, entry);
    const heads = new Set(parts.map(({ part }) => headOf(part)));
    from = entry.statement.block;
    there = home;
    for (const part of blocksIn(from)) if (!heads.has(headOf(part))) parts.push({ part, ctx: home });
  }
  return parts;
}

function declareBlock(ctx: Context, block: Block): void {
  const word = block.words[0]?.text ?? "";
  // What a misspelt kind names is known by that name, so that only the kind is complained about.
  const kind = blockRow(word) === null ? nearKinds(word, topKinds)[0] : word;
  const name = block.words[1]?.text ?? "";
  if (kind === "subject") {
    ctx.subjects.push(name);
    if (name !== "") declare(ctx, "subject", name, null, block);
    declarePoints(ctx, block, name);
  } else if (kind === "light" && name !== "") declare(ctx, "light", name, null, block);
  else if (kind === "point" && name !== "") declare(ctx, "point", name, null, block);
  else if (kind === "set" || kind === "room") {
    for (const { part, ctx: home } of partsOf(ctx, block)) {
      const partWord = part.words[0]?.text ?? "";
      const partKind =
        blockRow(partWord) === null ? (nearKinds(partWord, blocks[kind].parts)[0] ?? "") : partWord;
      const partName = part.words[1]?.text ?? "";
      if (partName === "") continue;
      if (pieces.has(partKind)) declare(home, "piece", partName, null, part);
      else if (partKind === "opening") declare(home, "opening", partName, null, part);
    }
  }
}

function declarePoints(ctx: Context, block: Block, owner: string): void {
  for (const { part, ctx: home } of partsOf(ctx, block)) {
    const name = part.words[0]?.text === "point" ? part.words[1]?.text : undefined;
    if (name !== undefined) declare(home, "point", name, owner, part);
  }
}

function declare(
  ctx: Context,
  kind: Declared["kind"],
  name: string,
  owner: string | null,
  block: Block,
): void {
  const span = block.words[1]?.span ?? block.span;
  if (name.includes(".")) report(ctx, "name.point", span, { name });
  // A subject's own `point face` moves the standard one; no other block may take such a name.
  const movesBodyPoint = kind === "point" && owner !== null && takenNames.has(name);
  const isReading = kind === "point" && owner !== null && readingWords.has(name);
  if (
    isReading ||
    (takenNames.has(name) && !movesBodyPoint) ||
    (functionRow(name) !== null && functionRow(name)?.args.length === 0)
  ) {
    report(ctx, "name.taken", span, { name });
    return;
  }
  const key = declaredKey(name, owner);
  const before = ctx.declared.get(key);
  if (before !== undefined) {
    report(
      ctx,
      "name.twice",
      span,
      { name },
      { related: [{ place: before.place, text: "used first here" }] },
    );
    return;
  }
  const named = ctx.lets.get(name);
  if (named !== undefined) {
    report(
      ctx,
      "name.twice",
      span,
      { name },
      {
        related: [{ place: here(ctx, named.statement.name.span), text: "a `let` has this name" }],
      },
    );
    return;
  }
  ctx.declared.set(key, { kind, name, owner, place: here(ctx, span), block });
}
