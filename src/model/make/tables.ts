import { quote } from "../../core/quote.js";
import type { Quantity } from "../../units/quantity.js";
import { findUnit } from "../../units/spellings.js";
import { type BlockKind, blocks } from "../../vocabulary/index.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { printValue } from "../print-block.js";
import { shownIn, wordsOf } from "../result-types.js";
import { converted, type End, endOf, quantityEnd, stepped } from "../tables/ends.js";
import { countedSteps, equalSteps, goesInStops } from "../tables/steps.js";
import { targetOf } from "../tables/target.js";
import type { ColumnModel, ListedValue, SweepModel, SweepTarget, TableModel } from "../tables/types.js";
import type { HoldModel, Properties } from "../types.js";
import { writeName, writePath } from "./points.js";
import type { Said } from "./results.js";

/** A sweep with the words in which a recipe says it. */
export interface Sweep {
  readonly model: SweepModel;
  readonly written: string;
}

/** A column with the words in which a recipe says it. */
export interface Column {
  readonly model: ColumnModel;
  readonly written: string;
}

/** What a sweep goes through: values one by one, or steps of a size or of a number from one to another. */
export type Through<V> =
  | readonly V[]
  | { readonly from: V; readonly to: V; readonly step: Quantity }
  | { readonly from: V; readonly to: V; readonly count: number };

type Value<K extends BlockKind, P extends keyof Properties<K>> = NonNullable<Properties<K>[P]>;

/** A property of a light: `sweepLight("key", "distance", { from: tape(m(1)), to: tape(m(4)), step: m(0.5) })`. */
export function sweepLight<P extends keyof Properties<"light"> & string>(
  light: string,
  property: P,
  through: Through<Value<"light", P>>,
): Sweep {
  const row = rowOf("light", property);
  return sweepOf(`${writePath(light)}.${property}`, targetOf("light", light, row), row, through);
}

/** A property of the camera. */
export function sweepCamera<P extends keyof Properties<"camera"> & string>(
  property: P,
  through: Through<Value<"camera", P>>,
): Sweep {
  const row = rowOf("camera", property);
  return sweepOf(`camera.${property}`, targetOf("camera", null, row), row, through);
}

/** Any other property, by the path of its block: `sweepProperty("flat", "set.back", "reflectance", [...])`. */
export function sweepProperty<
  K extends Exclude<BlockKind, "light" | "camera">,
  P extends keyof Properties<K> & string,
>(kind: K, path: string, property: P, through: Through<Value<K, P>>): Sweep {
  return sweepOf(`${writePath(path)}.${property}`, { kind: "text" }, rowOf(kind, property), through);
}

/** A `let` of the recipe. */
export function sweepLet<Q extends Quantity>(name: string, through: Through<Q>): Sweep {
  const said = (value: Q): string => value.written;
  return sweep(writeName(name), { kind: "text" }, said, (value) => quantityEnd(value), through);
}

/** The definition that a block is like, by the path of the block. */
export function sweepLike(path: string, names: readonly string[]): Sweep {
  return sweep(`${writePath(path)}.like`, { kind: "text" }, writeName, null, names);
}

/** Set-ups: the titles of variants, null for the recipe itself. */
export function sweepVariants(titles: readonly (string | null)[]): Sweep {
  const said = (title: string | null): string => (title === null ? "base" : quote(title));
  return sweep("variant", { kind: "variant" }, said, null, titles);
}

function rowOf(kind: BlockKind, property: string): PropertyRow {
  const rows: readonly PropertyRow[] = blocks[kind].properties;
  const row = rows.find(({ name }) => name === property);
  if (row === undefined) throw new TypeError(`\`${kind}\` has no ${property}.`);
  return row;
}

function sweepOf<V>(path: string, target: SweepTarget, row: PropertyRow, through: Through<V>): Sweep {
  const end = stepped.has(row.type) ? (value: V) => endOf(row.type, value, row.name) : null;
  return sweep(path, target, (value) => printValue(row, value), end, through);
}

function sweep<V>(
  path: string,
  target: SweepTarget,
  said: (value: V) => string,
  end: ((value: V) => End | null) | null,
  through: Through<V>,
): Sweep {
  if (isList(through)) {
    const ends = through.map((value) => end?.(value) ?? null);
    const first = ends[0] ?? null;
    const alike = first !== null && ends.every((one) => one?.form === first.form && one.base === first.base);
    const values = through.map(
      (value, i): ListedValue => ({
        written: said(value),
        value: target.kind === "text" ? null : value,
        number: alike ? converted(ends[i] ?? first, first.unit) : null,
      }),
    );
    return {
      model: { path, target, range: { kind: "list", unit: alike ? first.unit : null, values } },
      written: `sweep ${path} over [${values.map(({ written }) => written).join(", ")}]`,
    };
  }
  const [from, to] = [end?.(through.from) ?? null, end?.(through.to) ?? null];
  if (from === null || to === null || from.form !== to.form || from.base !== to.base)
    throw new TypeError(`There are no steps from ${said(through.from)} to ${said(through.to)}.`);
  const last = converted(to, from.unit);
  const head = `sweep ${path} from ${said(through.from)} to ${said(through.to)}`;
  if ("count" in through) {
    if (!Number.isInteger(through.count) || through.count < 1)
      throw new TypeError("A sweep has a whole number of values.");
    const steps = countedSteps(from, last, through.count);
    return {
      model: { path, target, range: { kind: "steps", steps } },
      written: `${head} count ${through.count}`,
    };
  }
  const { step } = through;
  const byStops = goesInStops(from, step.unit);
  if (step.unit !== (byStops ? "stop" : from.base) || !(step.value > 0))
    throw new TypeError(`${step.written} is no step between these values.`);
  const { steps } = equalSteps(from, last, step, byStops);
  return {
    model: { path, target, range: { kind: "steps", steps } },
    written: `${head} step ${step.written}`,
  };
}

const isList = <V>(through: Through<V>): through is readonly V[] => Array.isArray(through);

/** A column: any result, with a title and a unit of its own: `column(size, { unit: "deg", title: "Size" })`. */
export function column(
  value: Said,
  { unit = null, title = null }: { readonly unit?: string | null; readonly title?: string | null } = {},
): Column {
  const row = unit === null ? null : findUnit(unit);
  if (unit !== null && (row === null || row.base !== shownIn[value.type]))
    throw new TypeError(`${wordsOf(value.type)} is not shown in ${unit}.`);
  const as = row === null ? "" : ` as ${row.name}`;
  return {
    model: { title: title ?? value.written, value: value.expr, unit: row?.name ?? null },
    written: `${value.written}${as}${title === null ? "" : ` ${quote(title)}`}`,
  };
}

/** What a table holds besides its sweeps and columns. */
export interface TableOptions {
  readonly note?: string | null;
  readonly holds?: readonly HoldModel[];
  /** Titles of the columns that a worksheet leaves blank. */
  readonly worksheet?: readonly string[];
}

/** A lesson table: one or two sweeps, and the columns it shows. */
export function table(
  title: string,
  sweeps: readonly [Sweep] | readonly [Sweep, Sweep],
  columns: readonly [Column, ...Column[]],
  { note = null, holds = [], worksheet = [] }: TableOptions = {},
): TableModel {
  const lines = [
    ...(note === null ? [] : [`note: ${quote(note)}`]),
    ...sweeps.map(({ written }) => written),
    `show ${columns.map(({ written }) => written).join(", ")}`,
    ...holds.map(({ written }) => written),
    ...(worksheet.length === 0 ? [] : [`worksheet: [${worksheet.map(quote).join(", ")}]`]),
  ];
  return {
    title,
    written: [`table ${quote(title)} {`, ...lines.map((line) => `  ${line}`), "}"].join("\n"),
    note,
    sweeps: sweeps.map(({ model }) => model),
    columns: columns.map(({ model }) => model),
    holds,
    worksheet,
  };
}
