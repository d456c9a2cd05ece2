import { quote } from "../../core/quote.js";
import type { BaseUnit } from "../../units/dimension.js";
import { say } from "../../units/make.js";
import type { Quantity } from "../../units/quantity.js";
import type { BlockKind } from "../../vocabulary/index.js";
import { siblingsOf } from "../../vocabulary/siblings.js";
import type { thresholdTable } from "../../vocabulary/thresholds.js";
import type { toleranceTable } from "../../vocabulary/tolerances.js";
import type { WarningCode, warningTable } from "../../vocabulary/warnings.js";
import { printBlock } from "../print-block.js";
import { valueExpr } from "../result-types.js";
import type { BlockModel, KeptText, PartModel, Properties, Recipe, Setting, Silence } from "../types.js";
import type { ResultType } from "../values.js";
import { block, type RecipeParts, recipe } from "./blocks.js";
import { writeName, writePath } from "./points.js";
import { type Said, saidOf, type TypeOfUnit, type ValueOf } from "./results.js";

type SettingsOf<Rows extends readonly { readonly name: string; readonly unit: Quantity["unit"] }[]> = {
  readonly [N in Rows[number]["name"]]?: Quantity<Extract<Rows[number], { name: N }>["unit"]>;
};

/** How far kinds of measured inputs may be off: `tolerances({ tape: cm(3), meter: stops(0.2) })`. */
export function tolerances(values: SettingsOf<typeof toleranceTable>): readonly Setting[] {
  return settings(values);
}

/** Where warnings begin to speak, by the names of the thresholds. */
export function thresholds(values: SettingsOf<typeof thresholdTable>): readonly Setting[] {
  return settings(values);
}

// The names are those of the vocabulary, which the types have watched.
const settings = (values: object): readonly Setting[] =>
  Object.entries(values as Readonly<Record<string, Quantity | undefined>>).flatMap(([name, q]) =>
    q === undefined ? [] : [{ name, value: q.value, unit: q.unit, written: q.written }],
  );

/** The codes of warnings that may be silenced: all but those about safety. */
export type SilenceableCode = Extract<(typeof warningTable)[number], { safety: false }>["code"] & WarningCode;

/** A warning that is known and accepted, with the reason. */
export function silence(code: SilenceableCode, because: string): Silence {
  return { code, because };
}

/** A `use`: definitions of a kit by their names. What is made like them is written out in the recipe. */
export function use(path: string, ...names: readonly [string, ...string[]]): KeptText {
  return { name: path, written: `use ${names.map(writeName).join(", ")} from ${quote(path)}` };
}

/** A `define` of a block that has a name; `like` makes blocks of it. */
export function define(definition: BlockModel): KeptText {
  if (definition.name === null) throw new TypeError("A definition needs a name.");
  return { name: definition.name, written: `define ${printBlock(definition, "").join("\n")}` };
}

/**
 * A block that has everything of another and its own besides: its properties go before those that say the same, and a
 * part before one of the same kind and name.
 */
export function like<K extends BlockKind>(
  base: BlockModel<K>,
  name: string | null,
  properties: Properties<K>,
  parts: readonly PartModel<K>[] = [],
): BlockModel<K> {
  const before = base as unknown as AnyBlock;
  const own = parts as unknown as readonly AnyBlock[];
  const kept = before.parts.filter(
    (part) => !own.some((one) => one.block === part.block && one.name === part.name),
  );
  const { origins: _origins, ...joined } = withProperties(before.block, before, properties) as AnyBlock;
  return { ...joined, name, parts: [...kept, ...own] } as never;
}

/**
 * Any block without the types of its properties. Spreading the union of all kinds of block, or comparing generic blocks
 * with it, takes the compiler minutes.
 */
export interface AnyBlock {
  readonly block: BlockKind;
  readonly name: string | null;
  readonly parts: readonly AnyBlock[];
  readonly origins?: unknown;
}

/** Properties with others in the place of those that say the same; one that is undefined is left as it was. */
export function withProperties(kind: BlockKind, before: object, properties: object): object {
  const own = Object.entries(properties).filter(([, value]) => value !== undefined);
  const dropped = new Set(own.flatMap(([name]) => siblingsOf(kind, name)));
  return Object.fromEntries([...Object.entries(before).filter(([name]) => !dropped.has(name)), ...own]);
}

/** A `let` made by code. */
export interface Let<T extends ResultType> {
  /** For the recipe's `lets`. */
  readonly kept: KeptText;
  /** For claims, holds and columns, which then say its name. */
  readonly value: Said<T>;
}

/** A `let`: `letValue("gap", cm(12))`. In properties its value stands written out. */
export function letValue<U extends BaseUnit>(name: string, value: Quantity<U>): Let<TypeOfUnit<U>> {
  const expr = valueExpr(value);
  const kept = { name, written: `let ${writeName(name)} = ${say(value)}` };
  const said = { type: expr.type as TypeOfUnit<U>, expr, written: writeName(name), form: "whole" } as const;
  return { kept, value: said };
}

/** A kit: definitions, the `let`s and kits they need, and what there is to say about it. */
export function kit(
  title: string,
  parts: Pick<RecipeParts, "about" | "uses" | "lets" | "definitions">,
): Recipe {
  return { ...recipe(title, parts), kind: "kit" };
}

/** What was measured of the set-up: `measuredSetting("light", "key", { distance: tape(m(1.9)) })`. */
export function measuredSetting<K extends BlockKind>(
  kind: K,
  path: string,
  properties: Properties<K>,
): readonly string[] {
  return printBlock(block(kind, null, properties) as never, "")
    .slice(1, -1)
    .map((line) => `${writePath(path)}.${line.trim()}`);
}

/** What the meter said on the day, and how far it may be off. */
export function measuredReading(
  reading: Said<"reading">,
  value: ValueOf<"f-number" | "exposure" | "ev">,
  tolerance: Quantity<"stop"> | null = null,
): readonly string[] {
  const off = tolerance === null ? "" : ` +- ${tolerance.written}`;
  return [`${reading.written} is ${saidOf<ResultType>(value).written}${off}`];
}

/**
 * A session of a recipe: `of` is its path, `lines` come from `measuredSetting` and `measuredReading`; `variant` is the
 * title of the variant that was built, if it was one.
 */
export function session(
  title: string,
  of: string,
  lines: readonly (readonly string[])[],
  { variant, ...parts }: Pick<RecipeParts, "about"> & { readonly variant?: string } = {},
): Recipe {
  const written = ["measured {", ...lines.flat().map((line) => `  ${line}`), "}"].join("\n");
  const later = lines.length === 0 ? [] : [{ statement: "measured" as const, title: null, written }];
  const made: Recipe = { ...recipe(title, { ...parts, later }), kind: "session", of };
  return variant === undefined ? made : { ...made, ofVariant: variant };
}
