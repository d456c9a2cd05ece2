import type { Span } from "../core/span.js";
import { writeName } from "../model/make/points.js";
import type { Block, Define, Path, Property } from "../syntax/ast.js";
import { siblingsOf } from "../vocabulary/siblings.js";
import {
  type Context,
  contextOf,
  type DefineEntry,
  type Owned,
  ownedBy,
  replace,
  report,
} from "./context.js";
import { nearNames, suggestion } from "./suggest.js";

/** A block's own entries joined with those it takes over. */
export interface Expanded {
  readonly entries: readonly Owned[];
  /** False when something it is like or with could not be found; what is missing is then not complained about. */
  readonly complete: boolean;
  /** The modifiers it is used with, in order. */
  readonly companions: readonly DefineEntry[];
}

const textOf = (part: { readonly text: string }): string => part.text;
const nameOf = (property: Property): string => property.path.parts.map(textOf).join(".");
const keyOf = (property: Property): string => `${nameOf(property)} ${property.companion?.text ?? ""}`;

/** The later of two lists of entries wins: a property replaces its like and its siblings, blocks inside add up. */
function override(kind: string, base: readonly Owned[], own: readonly Owned[]): readonly Owned[] {
  const dropped = new Set<string>();
  const replaced = new Set<string>();
  for (const { entry } of own) {
    if (entry.kind !== "property") continue;
    replaced.add(keyOf(entry));
    for (const sibling of siblingsOf(kind, nameOf(entry))) dropped.add(sibling);
  }
  const ownBlocks = new Set<string>();
  for (const { entry } of own)
    if (entry.kind === "block" && entry.over !== true) ownBlocks.add(headOf(entry));
  const kept: Owned[] = [];
  for (const owned of base) {
    const { entry } = owned;
    const stays =
      entry.kind === "property"
        ? !replaced.has(keyOf(entry)) && !dropped.has(nameOf(entry))
        : !ownBlocks.has(headOf(entry));
    if (stays) kept.push(owned);
  }
  return own.reduce(putOver, kept);
}

/** Entries with one more. One that goes over a part of the same words is kept with that part. */
function putOver(entries: readonly Owned[], owned: Owned): readonly Owned[] {
  const { entry } = owned;
  if (entry.kind !== "block" || entry.over !== true) return [...entries, owned];
  const head = headOf(entry);
  return entries.map((part) =>
    part.entry.kind === "block" && headOf(part.entry) === head
      ? { ...part, over: [...(part.over ?? []), ...ownedBy(owned.ctx, entry.entries)] }
      : part,
  );
}

/** What a block holds with what goes over it. */
export const withOver = (
  kind: string,
  entries: readonly Owned[],
  over: readonly Owned[],
): readonly Owned[] => (over.length === 0 ? entries : override(kind, entries, over));

const headOf = (block: Block): string => block.words.map((word) => word.text).join(" ");

const within = (outer: Span, inner: Span): boolean => outer.start <= inner.start && inner.end <= outer.end;

function find(ctx: Context, path: Path, kind: string): DefineEntry | null {
  const name = path.parts.map((part) => part.text).join(".");
  const entry = ctx.definitions.get(name);
  if (entry === undefined) {
    const placed = ctx.declared.get(name);
    const known = [...ctx.definitions.values()]
      .filter((d) => d.kind === kind && !(d.home === null && within(d.statement.span, path.span)))
      .map((d) => writeName(d.name));
    if (ctx.missing.has(name)) return null;
    if (placed !== undefined) report(ctx, "like.placed", path.span, { name, kind });
    else {
      const near = nearNames(name, known);
      report(
        ctx,
        "like.unknown",
        path.span,
        {
          name,
          known: suggestion(near, known, `Nothing is defined; write \`define ${kind} ${name} { ... }\`.`),
        },
        {
          fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, path.span, candidate)),
        },
      );
    }
    return null;
  }
  entry.used = true;
  if (entry.kind !== kind) {
    report(ctx, "like.kind", path.span, { name, other: entry.kind, kind });
    return null;
  }
  return entry;
}

/** Joins a block with what it is `like` and `with`. Circles and unknown names are reported. */
export function expand(ctx: Context, block: Block, kind: string, seen: readonly Define[] = []): Expanded {
  const own = ownedBy(ctx, block.entries);
  let entries: readonly Owned[] = [];
  let complete = true;
  const companions: DefineEntry[] = [];
  if (block.like !== null) {
    const base = find(ctx, block.like, kind);
    if (base === null) complete = false;
    else if (seen.includes(base.statement)) {
      const { name } = base;
      if (!ctx.circles.has(base.statement)) report(ctx, "like.circle", block.like.span, { name });
      for (const other of seen) ctx.circles.add(other);
      return { entries: own, complete: false, companions };
    } else {
      const next = [...seen, base.statement];
      const expanded = expand(contextOf(ctx, base), base.statement.block, kind, next);
      entries = expanded.entries;
      companions.push(...expanded.companions);
      complete = expanded.complete;
    }
  }
  for (const path of block.companions) {
    const modifier = find(ctx, path, "modifier");
    if (modifier === null) {
      complete = false;
      continue;
    }
    companions.push(modifier);
    const expanded = expand(contextOf(ctx, modifier), modifier.statement.block, "modifier", []);
    complete = complete && expanded.complete;
    entries = withModifier(kind, entries, expanded.entries, modifier);
  }
  return { entries: override(kind, entries, own), complete, companions };
}

/**
 * A head with a modifier: the modifier's opening replaces the head's. Where the head is calibrated with this very
 * modifier, that calibration counts, and it holds the modifier's losses already.
 */
function withModifier(
  kind: string,
  head: readonly Owned[],
  modifier: readonly Owned[],
  definition: DefineEntry,
): readonly Owned[] {
  const calibrated = head.some((owned) => isPaired(owned, definition));
  const added = calibrated
    ? modifier.filter(
        ({ entry }) => entry.kind !== "property" || !["loses", "grid_loses"].includes(nameOf(entry)),
      )
    : modifier;
  return override(kind, head, added);
}

/**
 * True for a property that counts with this very modifier. Two files may call different things by one name, so the name
 * is looked up in the file that says it; one that is unknown there is taken by its letters.
 */
function isPaired({ entry, ctx }: Owned, modifier: DefineEntry): boolean {
  if (entry.kind !== "property" || entry.companion === null) return false;
  const meant = ctx.definitions.get(entry.companion.text);
  return meant === undefined
    ? entry.companion.text === modifier.name
    : meant.statement === modifier.statement;
}

const isCalibration = (owned: Owned): owned is Owned<Property> =>
  owned.entry.kind === "property" && nameOf(owned.entry) === "calibration";

/** The calibrations of a light sorted out: the one that counts for its modifiers, and whether one had to be there. */
export function chooseCalibration(
  entries: readonly Owned[],
  companions: readonly DefineEntry[],
): { readonly entries: readonly Owned[]; readonly unpaired: string | null } {
  const calibrations = entries.filter(isCalibration);
  const last = companions[companions.length - 1] ?? null;
  const paired = last === null ? null : (calibrations.find((owned) => isPaired(owned, last)) ?? null);
  const plain = calibrations.find(({ entry }) => entry.companion === null) ?? null;
  const chosen = paired ?? plain;
  const kept = entries.filter((owned) => !isCalibration(owned) || owned === chosen);
  return { entries: kept, unpaired: last !== null && paired === null ? last.name : null };
}
