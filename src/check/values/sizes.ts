import { pixels, size, volume } from "../../model/make/sizes.js";
import type { PixelsValue, RectangleValue, VolumeValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Length, Quantity } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { valueTypes } from "../../vocabulary/value-types.js";
import { type Context, report } from "../context.js";
import { readBy } from "../quantities.js";
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
  const inner = bare(value);
  if (inner.kind !== "quantity") return refuseType(ctx, row, value);
  const words = valueTypes[row.type].words;
  const read = readBy(ctx, inner, { count, base, name: row.name, words, example: row.example });
  return read?.every((one) => inRange(ctx, row, one, value) !== null) ? read : null;
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
