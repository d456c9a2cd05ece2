import { say } from "../../units/make.js";
import type { Quantity } from "../../units/quantity.js";
import type { BlockKind } from "../../vocabulary/index.js";
import type { BlockModel, Expectation, HoldModel, Properties, Recipe, VariantModel } from "../types.js";
import { writeName } from "./points.js";
import { type AnyBlock, withProperties } from "./statements.js";

/** What a variant does to a set-up. Any function from a set-up to another is one. */
export type Change = (setUp: Recipe) => Recipe;

/** What a variant comes from, keeps and asks for. */
export interface VariantOptions {
  /** The title of the variant it is a variant of; left out, the recipe itself. */
  readonly from?: string;
  /** Whether the expectations of what it comes from hold for it too. */
  readonly keepExpectations?: boolean;
  readonly expectations?: readonly Expectation[];
  readonly holds?: readonly HoldModel[];
}

/**
 * A recipe with one more variant: `withVariant(made, "Farther out", [change("light", "key", { distance: tape(m(4)) })])`.
 * What the recipe gets later does not change its variants.
 */
export function withVariant(
  recipe: Recipe,
  title: string,
  changes: readonly Change[],
  { from, keepExpectations = false, expectations = [], holds = [] }: VariantOptions = {},
): Recipe {
  if (recipe.variants.some((row) => row.title === title))
    throw new TypeError(`There is a variant "${title}" already.`);
  const base = from === undefined ? recipe : recipe.variants.find((row) => row.title === from)?.recipe;
  if (base === undefined) throw new TypeError(`There is no variant "${from}" to come from.`);
  const start: Recipe = { ...base, uses: [], definitions: [], variants: [], tables: [], later: [] };
  const changed = changes.reduce((setUp, one) => one(setUp), start);
  const replaced = new Set(holds.map(dialsOf));
  const kept = [
    ...(keepExpectations ? base.expectations : []),
    ...base.holds.filter((one) => !replaced.has(dialsOf(one))),
  ];
  for (const { name, written } of changed.lets)
    if (base.lets.some((row) => row.name === name && row.written !== written)) free(name, kept);
  const variant: VariantModel = {
    title,
    from: from ?? null,
    keeps: keepExpectations,
    recipe: {
      ...changed,
      expectations: [...(keepExpectations ? base.expectations : []), ...expectations],
      holds: [...base.holds.filter((one) => !replaced.has(dialsOf(one))), ...holds],
    },
  };
  return { ...recipe, variants: [...recipe.variants, variant] };
}

/**
 * A model has the values of its `let`s worked out, so one cannot change under a statement that says its name.
 * @throws {TypeError} where one does.
 */
function free(name: string, kept: readonly { readonly written: string }[]): void {
  const word = writeName(name).replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");
  const says = new RegExp(`(?<![\\p{L}\\p{M}\\p{N}_\`])${word}(?![\\p{L}\\p{M}\\p{N}_\`]|\\s*:)`, "u");
  const bound = kept.find(({ written }) => says.test(written));
  if (bound === undefined) return;
  throw new TypeError(
    `\`${bound.written}\` says \`${name}\`: leave it out of the variant and say it there anew.`,
  );
}

/** One hold that turns the same dials takes the place of another. */
const dialsOf = ({ by }: HoldModel): string =>
  by.map(({ light, property }) => `${light}.${property}`).join(" ");

/** Sets properties of a block; those that say the same in another way go. */
export function change<K extends BlockKind>(kind: K, name: string | null, properties: Properties<K>): Change {
  return (setUp) => only(setUp, kind, name, (block) => withProperties(kind, block, properties) as AnyBlock);
}

/** Takes a block away, wherever it stands. */
export function removeBlock(kind: BlockKind, name: string | null = null): Change {
  return (setUp) => only(setUp, kind, name, () => null);
}

/** Takes a property away. */
export function removeProperty<K extends BlockKind>(
  kind: K,
  name: string | null,
  property: keyof Properties<K> & string,
): Change {
  return (setUp) =>
    only(setUp, kind, name, (block) => {
      if (!Object.hasOwn(block, property))
        throw new TypeError(`${describe(kind, name)} has no ${property} to take away.`);
      return Object.fromEntries(
        Object.entries(block).filter(([one]) => one !== property),
      ) as unknown as AnyBlock;
    });
}

/** Puts a block in: by itself, or as the last part of the block of this kind and name. */
export function addBlock(
  added: BlockModel,
  into: { readonly kind: BlockKind; readonly name: string | null } | null = null,
): Change {
  const part = added as unknown as AnyBlock;
  if (into !== null)
    return (setUp) =>
      only(setUp, into.kind, into.name, (owner) => ({ ...owner, parts: [...owner.parts, part] }));
  return (setUp) => {
    const { block: kind, name } = part;
    switch (kind) {
      case "light":
        return { ...setUp, lights: [...setUp.lights, added as never] };
      case "subject":
        return { ...setUp, subjects: [...setUp.subjects, added as never] };
      case "point":
        return { ...setUp, points: [...setUp.points, added as never] };
      case "about":
      case "room":
      case "set":
      case "camera":
      case "meter":
      case "intent":
        if (setUp[kind] !== null) throw new TypeError(`There is ${describe(kind, null)} already.`);
        return { ...setUp, [kind]: part as never };
      default:
        throw new TypeError(`${describe(kind, name)} stands inside another block: say in which.`);
    }
  };
}

/** Gives a `let` another value. What was worked out from it in blocks made by code stays as it is. */
export function changeLet(name: string, value: Quantity): Change {
  return (setUp) => {
    if (!setUp.lets.some((row) => row.name === name)) throw new TypeError(`There is no \`let\` ${name}.`);
    const written = `let ${writeName(name)} = ${say(value)}`;
    return { ...setUp, lets: setUp.lets.map((row) => (row.name === name ? { name, written } : row)) };
  };
}

const describe = (kind: BlockKind, name: string | null): string =>
  name === null ? `a \`${kind}\`` : `\`${kind} ${name}\``;

/** A set-up with one block changed, or taken away where the answer is null. There has to be exactly one. */
function only(
  setUp: Recipe,
  kind: BlockKind,
  name: string | null,
  change: (block: AnyBlock) => AnyBlock | null,
): Recipe {
  let found = 0;
  const walked = (blocks: readonly AnyBlock[]): readonly AnyBlock[] =>
    blocks.flatMap((block): readonly AnyBlock[] => {
      if (block.block === kind && block.name === name) {
        found += 1;
        const changed = change(block);
        return changed === null ? [] : [changed];
      }
      const parts = walked(block.parts);
      const same = parts.length === block.parts.length && parts.every((part, i) => part === block.parts[i]);
      return [same ? block : { ...block, parts }];
    });
  const all = (blocks: readonly unknown[]): never => walked(blocks as readonly AnyBlock[]) as never;
  const one = (block: unknown): never =>
    (block === null ? null : (walked([block as AnyBlock])[0] ?? null)) as never;
  const changed: Recipe = {
    ...setUp,
    about: one(setUp.about),
    room: one(setUp.room),
    set: one(setUp.set),
    subjects: all(setUp.subjects),
    points: all(setUp.points),
    lights: all(setUp.lights),
    camera: one(setUp.camera),
    meter: one(setUp.meter),
    intent: one(setUp.intent),
  };
  if (found === 1) return changed;
  throw new TypeError(`${found === 0 ? "There is no" : "There is more than one"} ${describe(kind, name)}.`);
}
