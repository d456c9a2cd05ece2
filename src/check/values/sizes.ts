import { pixels, size, volume } from "../../model/make/sizes.js";
import type { PixelsValue, RectangleValue, VolumeValue } from "../../model/values.js";
import type { Amount, Quantity as Node, Value } from "../../syntax/ast.js";
import { plusMinus } from "../../units/make.js";
import type { Length, Quantity } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { valueTypes } from "../../vocabulary/value-types.js";
import { constant } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { readBy } from "../quantities.js";
import { withTolerance } from "../tolerance.js";
import { bare } from "../words.js";
import { inRange } from "./measure.js";
import { exampleOf, refuseType } from "./want.js";

function by(
  ctx: Context,
  row: PropertyRow,
  value: Value,
  count: number,
  base: "m" | "1",
): readonly Quantity[] | null {
  const words = valueTypes[row.type].words;
  if (base === "1" && bare(value).kind === "toleranced") return refuseType(ctx, row, value);
  const read = readSides(ctx, { count, base, name: row.name, words, example: row.example }, value);
  if (read === "other") return refuseType(ctx, row, value);
  return read?.every((one) => inRange(ctx, row, one, value) !== null) ? read : null;
}

/**
 * Numbers joined by "by", with a tolerance behind the last that counts for each; `other` for what is no such value,
 * null after a finding.
 */
export function readSides(
  ctx: Context,
  want: Parameters<typeof readBy>[2],
  value: Value,
): readonly Quantity[] | "other" | null {
  const inner = bare(value);
  if (inner.kind === "quantity") return readBy(ctx, inner, want);
  if (inner.kind !== "toleranced") return "other";
  const sides = bare(inner.value);
  const behind = bare(inner.tolerance);
  if (sides.kind === "quantity" && behind.kind === "quantity" && behind.joined === "by") {
    refuseTolerancePerSide(ctx, sides, behind, value);
    return null;
  }
  if (sides.kind !== "quantity") return "other";
  const read = readBy(ctx, sides, want);
  const tolerance = constant(ctx, inner.tolerance, {
    words: "a tolerance",
    example: `${want.example} +- 1 cm`,
  });
  if (read === null || tolerance === null) return null;
  const least = read.reduce((a, b) => (a.value < b.value ? a : b));
  const checked = withTolerance(ctx, least, tolerance, inner.tolerance.span);
  return checked.plusMinus === undefined ? null : read.map((side) => plusMinus(side, tolerance));
}

/** `1.2 m +- 1 cm x 2 m`: the tolerance belongs behind the last number. */
function refuseTolerancePerSide(ctx: Context, sides: Node, behind: Node, value: Value): void {
  const said = ({ written, unit }: Amount): string => (unit === null ? written : `${written} ${unit.text}`);
  const [tolerance, ...rest] = behind.amounts;
  if (tolerance === undefined) return;
  const all = [...sides.amounts, ...rest];
  const last = all[all.length - 1]?.unit ?? null;
  const text = `${all.map((side) => (last !== null && side.unit?.text === last.text ? said({ ...side, unit: null }) : said(side))).join(" x ")}${last === null ? "" : ` ${last.text}`} +- ${said(tolerance)}`;
  report(
    ctx,
    "value.tolerance-side",
    value.span,
    {},
    { fixes: [replace(ctx, `write \`${text}\``, value.span, text)] },
  );
}

/** `60 x 90 cm` */
export function readRectangle(ctx: Context, row: PropertyRow, value: Value): RectangleValue | null {
  const read = by(ctx, row, value, 2, "m");
  const [width, height] = (read ?? []) as readonly Length[];
  return width === undefined || height === undefined ? null : size(width, height);
}

/** `5 x 7 x 2.8 m` */
export function readVolume(ctx: Context, row: PropertyRow, value: Value): VolumeValue | null {
  const read = by(ctx, row, value, 3, "m");
  const [width, depth, height] = (read ?? []) as readonly Length[];
  return width === undefined || depth === undefined || height === undefined
    ? null
    : volume(width, depth, height);
}

/** `6000 x 4000`, whole numbers. */
export function readPixels(ctx: Context, row: PropertyRow, value: Value): PixelsValue | null {
  const read = by(ctx, row, value, 2, "1");
  const [width, height] = read ?? [];
  if (width === undefined || height === undefined) return null;
  if (!Number.isInteger(width.value) || !Number.isInteger(height.value)) {
    report(ctx, "value.type", value.span, {
      name: row.name,
      wanted: "whole numbers of pixels",
      found: "fractions",
      example: exampleOf(row),
    });
    return null;
  }
  return pixels(width.value, height.value);
}
