import type { Block, File } from "../syntax/ast.js";
import { blockRow, blocks, definableKinds, topKinds } from "../vocabulary/index.js";
import { exampleName, nearKinds } from "./block.js";
import { functionRow } from "./claims/results.js";
import { type Context, type Declared, here, report } from "./context.js";
import { declareLet } from "./lets.js";
import { declaredKey, readingWords, takenNames } from "./places.js";
import { aKind } from "./words.js";

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
export function declareAll(ctx: Context, file: File): void {
  for (const item of file.items) {
    if (item.kind === "let") declareLet(ctx, item);
    else if (item.kind === "define") declareDefinition(ctx, item.block, item);
  }
  for (const item of file.items) if (item.kind === "block") declareBlock(ctx, item);
}

const blocksIn = (block: Block): readonly Block[] =>
  block.entries.flatMap((entry) => (entry.kind === "block" ? [entry] : []));

const headOf = (block: Block): string => block.words.map((word) => word.text).join(" ");

/** The blocks inside a block: its own, also two of one name, and those it takes over by `like`. */
function partsOf(ctx: Context, block: Block): readonly Block[] {
  const parts = [...blocksIn(block)];
  const seen = new Set<string>();
  for (let from: Block | undefined = block; from !== undefined; ) {
    const name: string | undefined = from.like?.parts.map((part) => part.text).join(".");
    if (name === undefined || seen.has(name)) break;
    seen.add(name);
    const heads = new Set(parts.map(headOf));
    from = ctx.definitions.get(name)?.statement.block;
    if (from !== undefined) parts.push(...blocksIn(from).filter((part) => !heads.has(headOf(part))));
  }
  return parts;
}

function declareDefinition(
  ctx: Context,
  block: Block,
  statement: Extract<File["items"][number], { kind: "define" }>,
): void {
  const [kind, name] = block.words;
  if (kind === undefined) return;
  const row = blockRow(kind.text);
  if (row === null) return; // said when the block itself is checked
  if (!(definableKinds as readonly string[]).includes(kind.text)) {
    report(ctx, "define.kind", kind.span, { kind: aKind(kind.text), kinds: definableKinds.join(", ") });
    return;
  }
  if (name === undefined) {
    report(ctx, "block.name-missing", kind.span, {
      kind: `define ${kind.text}`,
      example: kind.text === "light" ? "strobe" : exampleName(kind.text),
    });
    return;
  }
  if (name.text.includes(".")) report(ctx, "name.point", name.span, { name: name.text });
  const before = ctx.definitions.get(name.text);
  if (before !== undefined) {
    const first = before.statement.block.words[1]?.span ?? before.statement.span;
    report(
      ctx,
      "define.twice",
      name.span,
      { name: name.text },
      {
        related: [{ place: here(ctx, first), text: "defined first here" }],
      },
    );
    return;
  }
  ctx.definitions.set(name.text, { statement, kind: kind.text, name: name.text, used: false });
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
    for (const part of partsOf(ctx, block)) {
      const partWord = part.words[0]?.text ?? "";
      const partKind =
        blockRow(partWord) === null ? (nearKinds(partWord, blocks[kind].parts)[0] ?? "") : partWord;
      const partName = part.words[1]?.text ?? "";
      if (partName === "") continue;
      if (pieces.has(partKind)) declare(ctx, "piece", partName, null, part);
      else if (partKind === "opening") declare(ctx, "opening", partName, null, part);
    }
  }
}

function declarePoints(ctx: Context, block: Block, owner: string): void {
  for (const part of partsOf(ctx, block)) {
    const name = part.words[0]?.text === "point" ? part.words[1]?.text : undefined;
    if (name !== undefined) declare(ctx, "point", name, owner, part);
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
      { related: [{ place: here(ctx, before.span), text: "used first here" }] },
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
  ctx.declared.set(key, { kind, name, owner, span, block });
}
