import { writeNumber } from "../../core/write-number.js";
import type { Value } from "../../syntax/ast.js";
import { type BaseUnit, dimensionWords } from "../../units/dimension.js";
import { exactShutter } from "../../units/nominal.js";
import type { Quantity } from "../../units/quantity.js";
import { findUnit, toBase } from "../../units/spellings.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { constant, isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { sayNumber } from "../say-number.js";
import { bare } from "../words.js";
import { exampleOf, refuseKind } from "./want.js";

/** What a plain quantity must be: its base unit, and how it is called in a message. */
export interface Want {
  readonly name: string;
  readonly unit: BaseUnit;
  readonly example: string;
  /** Least and greatest value, where they are known: a fix keeps to them. */
  readonly range?: readonly [low: number, high: number] | undefined;
}

const fixUnits: Partial<Record<BaseUnit, readonly string[]>> = {
  m: ["m", "cm"],
  deg: ["deg"],
  s: ["s"],
  J: ["Ws"],
  K: ["K"],
  stop: ["stop"],
  mired: ["mired"],
  kg: ["kg"],
  lx: ["lx"],
};

/** Ways to give a plain number the unit that is wanted, the unit of the example first, at most two. */
function unitFixes(want: Want, read: Quantity): readonly string[] {
  const { unit, example, range } = want;
  if (unit === "f") return [`f/${read.written}`];
  if (unit === "ISO") return [`ISO ${read.written}`];
  const shown = findUnit(/^-?[\d./ ]+ ([^\s\d]+)$/.exec(example)?.[1] ?? "");
  const names = new Set([...(shown?.base === unit ? [shown.name] : []), ...(fixUnits[unit] ?? [])]);
  const fitting = [...names].filter((name) => {
    const row = findUnit(name);
    if (row === null || range === undefined) return true;
    const value = toBase(row, read.value);
    return value >= range[0] && value <= range[1];
  });
  return fitting.slice(0, 2).map((name) => `${read.written} ${name}`);
}

/** Reads one quantity of a given dimension. Null after a finding. */
export function readMeasure(ctx: Context, want: Want, value: Value): Quantity | null {
  if (!isExpression(value)) return refuseKind(ctx, want, value, dimensionWords(want.unit));
  const words = dimensionWords(want.unit);
  const read = constant(ctx, value, { words, example: want.example, unit: want.unit });
  return read === null ? null : ofDimension(ctx, want, read, value);
}

/** Checks the dimension of a quantity that has been read. */
export function ofDimension(ctx: Context, want: Want, read: Quantity, value: Value): Quantity | null {
  if (read.unit === want.unit) return read;
  if (read.unit === "1" && !isPerCent(read)) {
    const texts = /^[\d./ -]+$/.test(read.written) ? unitFixes(want, read) : [];
    const certain = texts.length === 1 && want.unit !== "m";
    const fixes = texts.map((text) => replace(ctx, `write \`${text}\``, bare(value).span, text, certain));
    report(
      ctx,
      "unit.missing",
      value.span,
      { name: want.name, written: read.written, words: dimensionWords(want.unit) },
      { fixes },
    );
    return null;
  }
  report(ctx, "unit.wrong", value.span, {
    name: want.name,
    wanted: dimensionWords(want.unit),
    found: isPerCent(read) ? "a share in per cent" : dimensionWords(read.unit),
    example: exampleOf(want),
  });
  return null;
}

/** Checks the range of a property. The value comes back, or null after a finding. */
export function inRange<Q extends Quantity>(ctx: Context, row: PropertyRow, read: Q, value: Value): Q | null {
  if (row.range === undefined || (read.value >= row.range[0] && read.value <= row.range[1])) return read;
  const share = row.type === "fraction" || row.type === "surface" || isPerCent(read);
  const bound = (n: number): string => (share ? `${writeNumber(n * 100)} %` : sayNumber(read.unit, n));
  report(ctx, "value.range", value.span, {
    name: row.name,
    written: read.written,
    low: bound(row.range[0]),
    high: bound(row.range[1]),
  });
  return null;
}

/** A plain quantity of a property, its range checked. */
export function readRowMeasure(
  ctx: Context,
  row: PropertyRow,
  unit: BaseUnit,
  value: Value,
): Quantity | null {
  const read = readMeasure(ctx, { name: row.name, unit, example: row.example, range: row.range }, value);
  return read === null ? null : inRange(ctx, row, read, value);
}

/** A share in per cent. A plain number is refused with a fix, since 20 may mean 20 % or be a slip for 0.2. */
export function readShare(ctx: Context, row: PropertyRow, value: Value): Quantity<"1"> | null {
  const read = readMeasure(ctx, { name: row.name, unit: "1", example: row.example }, value);
  if (read === null) return null;
  if (!isPerCent(read)) {
    const percent = read.value <= 1 ? writeNumber(read.value * 100) : read.written;
    const both = read.value <= 1 ? [percent, read.written] : [read.written];
    report(
      ctx,
      "unit.missing",
      value.span,
      { name: row.name, written: read.written, words: "a share in per cent" },
      {
        fixes: both.map((text) =>
          replace(ctx, `write \`${text} %\``, bare(value).span, `${text} %`, both.length === 1),
        ),
      },
    );
    return null;
  }
  return inRange(ctx, row, read as Quantity<"1">, value);
}

/** True for a number written in per cent. */
export function isPerCent(read: Quantity): boolean {
  return read.unit === "1" && read.written.endsWith("%");
}

/** An exposure time; nominal ones stand for their exact series value. */
export function readShutter(ctx: Context, row: PropertyRow, value: Value): Quantity | null {
  const read = readRowMeasure(ctx, row, "s", value);
  return read === null ? null : { ...read, value: exactShutter(read.value) };
}
