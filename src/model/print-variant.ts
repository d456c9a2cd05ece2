import { quote } from "../core/quote.js";
import { type BlockKind, blockRow, topKinds } from "../vocabulary/index.js";
import { siblingsOf } from "../vocabulary/siblings.js";
import { writeName } from "./make/points.js";
import { printBlock, printProperties, printSettings, printSilence } from "./print-block.js";
import type { BlockModel, Recipe, Setting, VariantModel } from "./types.js";

/**
 * A variant as text: what its set-up has different from the one it comes from. A value that follows from a `let` is
 * written out beside the `let`, as in the blocks of the recipe, so that it does not depend on it.
 */
export function printVariant(variant: VariantModel, recipe: Recipe): readonly string[] {
  const base = recipe.variants.find((row) => row.title === variant.from)?.recipe ?? recipe;
  const from = variant.from === null ? "" : ` from ${quote(variant.from)}`;
  const kept = variant.keeps ? base.expectations.length : 0;
  const held = new Set(base.holds.map((hold) => hold.written));
  const lines = [
    ...changedLines(base, variant.recipe),
    ...variant.recipe.holds.filter((hold) => !held.has(hold.written)).map((hold) => hold.written),
    ...(variant.keeps ? ["keep expectations"] : []),
    ...variant.recipe.expectations.slice(kept).map((row) => row.written),
  ];
  const head = `variant ${quote(variant.title)}${from}`;
  return lines.length === 0 ? [`${head} {}`] : [`${head} {`, ...lines.map((line) => `  ${line}`), "}"];
}

/** What a recipe has different from another, as the lines of a variant. */
export function changedLines(base: Recipe, other: Recipe): readonly string[] {
  return [
    ...other.lets.flatMap(({ name, written }) => {
      const before = base.lets.find((row) => row.name === name);
      const value = written.slice(`let ${writeName(name)} = `.length);
      return before === undefined || before.written === written ? [] : [`${writeName(name)}: ${value}`];
    }),
    ...single(base.about, other.about),
    ...single(base.room, other.room),
    ...single(base.set, other.set),
    ...listed("", base.subjects, other.subjects),
    ...listed("", base.points, other.points),
    ...listed("", base.lights, other.lights),
    ...single(base.camera, other.camera),
    ...single(base.meter, other.meter),
    ...single(base.intent, other.intent),
    ...settings("tolerances", base.tolerances, other.tolerances),
    ...settings("thresholds", base.thresholds, other.thresholds),
    ...silences(base, other),
  ];
}

const single = (base: BlockModel | null, other: BlockModel | null): readonly string[] =>
  listed("", base === null ? [] : [base], other === null ? [] : [other]);

/** The path of a block inside its owner: its name, or its kind where it has none; both where its name is no name. */
function pathOf(owner: string, block: BlockModel): string {
  const start = owner === "" ? "" : `${owner}.`;
  const row = blockRow(block.block);
  if (block.name === null) return start + block.block;
  if (row?.names !== undefined) return `${start}${block.block}.${block.name}`;
  const name = writeName(block.name);
  const isWord = (topKinds as readonly string[]).includes(block.name) || block.name === block.block;
  return start + (isWord && !name.startsWith("`") ? `\`${name}\`` : name);
}

const headOf = (block: BlockModel): string => `${block.block} ${block.name ?? ""}`;

/** Blocks of one owner. One that is kept stays in its place; what was taken out and put in again stands at the end. */
function listed(owner: string, base: readonly BlockModel[], other: readonly BlockModel[]): readonly string[] {
  const kept = new Map<BlockModel, BlockModel>();
  let last = -1;
  for (const block of other) {
    const index = base.findIndex((row) => headOf(row) === headOf(block));
    if (index <= last) break;
    kept.set(base[index] as BlockModel, block);
    last = index;
  }
  const added = other.slice(kept.size);
  return [
    ...base.filter((row) => !kept.has(row)).map((row) => `remove ${pathOf(owner, row)}`),
    ...[...kept].flatMap(([before, after]) => changedBlock(pathOf(owner, before), before, after)),
    ...(owner === "" ? added.flatMap((block) => printBlock(block, "")) : []),
  ];
}

/** The properties of a block that differ, and the same for the blocks inside it. */
function changedBlock(path: string, before: BlockModel, after: BlockModel): readonly string[] {
  const old = new Map(printProperties(before));
  const now = new Map(printProperties(after));
  const changed = [...now].filter(([name, value]) => old.get(name) !== value);
  const dropped = new Set(changed.flatMap(([name]) => siblingsOf(before.block as BlockKind, name)));
  const gone = [...old.keys()].filter((name) => !now.has(name) && !dropped.has(name));
  const [was, is] = [before.parts as readonly BlockModel[], after.parts as readonly BlockModel[]];
  return [
    ...gone.map((name) => `remove ${path}.${name}`),
    ...changed.map(([name, value]) => `${path}.${name}: ${value}`),
    ...listed(path, was, is),
    ...addedParts(after, was, is),
  ];
}

/** New blocks inside a block, in a block of the same words that holds nothing else. */
function addedParts(
  owner: BlockModel,
  was: readonly BlockModel[],
  is: readonly BlockModel[],
): readonly string[] {
  let last = -1;
  let kept = 0;
  for (const block of is) {
    const index = was.findIndex((row) => headOf(row) === headOf(block));
    if (index <= last) break;
    last = index;
    kept += 1;
  }
  if (kept === is.length) return [];
  const name = owner.name === null ? "" : ` ${writeName(owner.name)}`;
  return [`${owner.block}${name} {`, ...is.slice(kept).flatMap((block) => printBlock(block, "  ")), "}"];
}

function settings(kind: string, base: readonly Setting[], other: readonly Setting[]): readonly string[] {
  const now = new Map(other.map((row) => [row.name, row.written]));
  const before = new Map(base.map((row) => [row.name, row.written]));
  if (base.length === 0) return other.length === 0 ? [] : printSettings(kind, other);
  return [
    ...base.filter((row) => !now.has(row.name)).map((row) => `remove ${kind}.${row.name}`),
    ...other
      .filter((row) => before.get(row.name) !== row.written)
      .map((row) => `${kind}.${row.name}: ${row.written}`),
  ];
}

function silences(base: Recipe, other: Recipe): readonly string[] {
  const [was, is] = [base.silence, other.silence].map((rows) =>
    rows.length === 0 ? [] : printSilence(rows),
  );
  if (was === undefined || is === undefined || was.join("\n") === is.join("\n")) return [];
  return [...(was.length === 0 ? [] : ["remove silence"]), ...is];
}
