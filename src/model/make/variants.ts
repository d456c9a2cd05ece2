import { say } from "../../units/make.js";
import type { Quantity } from "../../units/quantity.js";
import type { BlockKind } from "../../vocabulary/index.js";
import type { BlockModel, Expectation, HoldModel, Properties, Recipe, VariantModel } from "../types.js";
import { writeName } from "./points.js";
import { withProperties } from "./statements.js";

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
  return (setUp) => only(setUp, kind, name, (block) => withProperties(kind, block, properties) as BlockModel);
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
      return Object.fromEntries(Object.entries(block).filter(([one]) => one !== property)) as BlockModel;
    });
}

/** Puts a block in: by itself, or as the last part of the block of this kind and name. */
export function addBlock(
  added: BlockModel,
  into: { readonly kind: BlockKind; readonly name: string | null } | null = null,
): Change {
  if (into !== null)
    return (setUp) =>
      only(
        setUp,
        into.kind,
        into.name,
        (owner) => ({ ...owner, parts: [...owner.parts, added] }) as unknown as BlockModel,
      );
  return (setUp) => {
    switch (added.block) {
      case "light":
        return { ...setUp, lights: [...setUp.lights, added] };
      case "subject":
        return { ...setUp, subjects: [...setUp.subjects, added] };
      case "point":
        return { ...setUp, points: [...setUp.points, added] };
      case "about":
      case "room":
      case "set":
      case "camera":
      case "meter":
      case "intent":
        if (setUp[added.block] !== null)
          throw new TypeError(`There is ${describe(added.block, null)} already.`);
        return { ...setUp, [added.block]: added };
      default:
        throw new TypeError(
          `${describe(added.block, added.name)} stands inside another block: say in which.`,
        );
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
  change: (block: BlockModel) => BlockModel | null,
): Recipe {
  let found = 0;
  const walked = <B extends BlockModel>(blocks: readonly B[]): readonly B[] =>
    blocks.flatMap((block): readonly B[] => {
      if (block.block === kind && block.name === name) {
        found += 1;
        const changed = change(block);
        return changed === null ? [] : [changed as B];
      }
      const parts: readonly BlockModel[] = block.parts;
      const after = walked(parts);
      const same = after.length === parts.length && after.every((part, i) => part === parts[i]);
      return [same ? block : ({ ...block, parts: after } as B)];
    });
  const one = <B extends BlockModel>(block: B | null): B | null =>
    block === null ? null : (walked([block])[0] ?? null);
  const changed: Recipe = {
    ...setUp,
    about: one(setUp.about),
    room: one(setUp.room),
    set: one(setUp.set),
    subjects: walked(setUp.subjects),
    points: walked(setUp.points),
    lights: walked(setUp.lights),
    camera: one(setUp.camera),
    meter: one(setUp.meter),
    intent: one(setUp.intent),
  };
  if (found === 1) return changed;
  throw new TypeError(`${found === 0 ? "There is no" : "There is more than one"} ${describe(kind, name)}.`);
}
